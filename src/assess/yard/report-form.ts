import type { FactRecord, RecordOf } from '../../records/record.ts';
import type { FormCheck } from '../set-out/set-out.ts';
import { findDecision } from './find-decision.ts';
import { type FormMeasure, listFormMeasures } from './form-measures.ts';
import type { PiecePlan } from './piece-plan.ts';
import type { FormReport, YardContext } from './piece-report.ts';
import { ofKind, type PieceSlots, recordsOf } from './piece-slots.ts';
import type { SeenIndex } from './seen-index.ts';

/** A length as taped: of several that did not know of each other the one farthest from what it should be. */
interface Taped {
  readonly measure: FormMeasure;
  readonly value: number;
}

/** The two diagonals may differ by so many times what a side may be off; so may one line across from its length. */
const DIAGONAL = 2;

/** Ends the sentence about a racked form: nothing taped from it can be right. */
const SQUARE_FIRST = "the form's fault: square it before anything is measured from it";

function off({ measure, value }: Taped): number {
  return value - measure.nominal;
}

/** Whole mm where it is whole, else a place behind the point. */
function show(length: number): string {
  return String(Number(length.toFixed(1)));
}

function tooMuch(taped: Taped, allowed: number, words: readonly [more: string, less: string], where: string): string {
  const by = off(taped);
  return `the form is ${show(Math.abs(by))} mm too ${by > 0 ? words[0] : words[1]}${where}: ${show(taped.value)} mm taped, ${taped.measure.nominal} wanted, ± ${show(allowed)} allowed`;
}

function judgeSides(taped: readonly Taped[], tolerance: number): string[] {
  return taped.flatMap((one) => {
    if (Math.abs(off(one)) <= tolerance) return [];
    if (one.measure.kind === 'length') return [tooMuch(one, tolerance, ['long', 'short'], '')];
    if (one.measure.kind === 'width') return [tooMuch(one, tolerance, ['wide', 'narrow'], '')];
    return [tooMuch(one, tolerance, ['long', 'short'], ` from ${one.measure.what}`)];
  });
}

/** Diagonals of a rectangle are held against each other, lines across any other outline against what they should be. */
function judgeDiagonals(form: FormCheck, taped: readonly Taped[], areSidesRight: boolean): string[] {
  const allowed = DIAGONAL * form.tolerance;
  const [a, b] = taped;
  if (form.isRectangle && a !== undefined && b !== undefined) {
    const apart = Math.abs(a.value - b.value);
    if (apart > allowed)
      return [
        `the form is racked: its diagonals differ by ${show(apart)} mm, ${show(allowed)} allowed: ${SQUARE_FIRST}`,
      ];
    const long = [a, b].filter((one) => Math.abs(off(one)) > allowed);
    if (long.length === 0 || !areSidesRight) return [];
    return [
      `its diagonals are ${show(Math.abs(off(long[0]!)))} mm ${off(long[0]!) > 0 ? 'longer' : 'shorter'} than its sides allow: tape all four again`,
    ];
  }
  return taped.flatMap((one) => {
    const by = off(one);
    if (Math.abs(by) <= allowed) return [];
    const what = `${one.measure.what} is ${show(Math.abs(by))} mm too ${by > 0 ? 'long' : 'short'}, ± ${show(allowed)} allowed`;
    return [areSidesRight ? `the form is racked: ${what}, its sides are right: ${SQUARE_FIRST}` : what];
  });
}

/**
 * What is wrong with a form by what was taped on it. Sides first: only where they are right does a diagonal say that the form is racked.
 * @param depthTolerance of the panel's thickness, either way [mm]
 * @param read gives a taped length by what it is [mm]; null: not taped
 */
export function judgeForm(
  form: FormCheck,
  depthTolerance: number,
  read: (measure: FormMeasure) => number | null,
): { readonly findings: readonly string[]; readonly missing: readonly string[] } {
  const measures = listFormMeasures(form);
  const taped = measures.flatMap((measure): Taped[] => {
    const value = read(measure);
    return value === null ? [] : [{ measure, value }];
  });
  const of = (...kinds: readonly FormMeasure['kind'][]) => taped.filter(({ measure }) => kinds.includes(measure.kind));
  const sides = judgeSides(of('length', 'width', 'side'), form.tolerance);
  const depths = of('depth')
    .filter((one) => Math.abs(off(one)) > depthTolerance)
    .map((one) => tooMuch(one, depthTolerance, ['deep', 'shallow'], ` at ${one.measure.what}`));
  return {
    findings: [...judgeDiagonals(form, of('diagonal'), sides.length === 0), ...sides, ...depths],
    missing: measures.filter((measure) => !taped.some((one) => one.measure === measure)).map(({ what }) => what),
  };
}

/** The value farthest from what it should be, of those that no later record replaced. */
function readWorst(records: readonly RecordOf<'form-checked'>[], seen: SeenIndex, { what, nominal }: FormMeasure) {
  const having = records.filter(({ body }) => body.measures.some((one) => one.what === what));
  const values = seen
    .standing(having)
    .flatMap(({ body }) => body.measures.filter((one) => one.what === what).map(({ measured_mm }) => measured_mm));
  return values.reduce<number | null>(
    (worst, value) => (worst === null || Math.abs(value - nominal) > Math.abs(worst - nominal) ? value : worst),
    null,
  );
}

/** What can be decided where nothing is out. */
const NOTHING = { extent: null, about: [], decision: null, withoutRight: [] } as const;

/** A form with what flags need beyond its report. */
export interface FormFinding extends FormReport {
  /** Acceptances by people who may not. */
  readonly withoutRight: readonly FactRecord[];
}

/**
 * The check of the form itself, which opens all others: whatever is taped from a form that is out inherits its fault. No limits for it are set for QA, so
 * that only a design engineer can take it as it is.
 */
export function reportForm(context: YardContext, plan: PiecePlan, slots: PieceSlots, seen: SeenIndex): FormFinding {
  const depthTolerance = context.index.file.library.rules.tolerances.thickness_mm;
  const slot = slots.of(null, 'form');
  const all = ofKind(recordsOf(slot), 'form-checked');
  const now = all.filter(({ checkKey }) => checkKey === plan.formKey);
  if (now.length === 0) {
    const letters = [...new Set(all.map(({ revision }) => revision?.letter ?? 'none'))].join(', ');
    return {
      state: all.length === 0 ? 'open' : 'open again',
      findings: all.length === 0 ? [] : [`the form was checked by revision ${letters}, when it was to be another`],
      slot,
      ...NOTHING,
    };
  }
  const { findings, missing } = judgeForm(plan.setOut.form, depthTolerance, (measure) => readWorst(now, seen, measure));
  const latest = slot?.latest.filter(({ checkKey }) => checkKey === plan.formKey) ?? [];
  if (slot?.isConflict === true && latest.length > 1)
    return {
      state: 'conflict',
      findings: ['the form was checked twice, by people who did not know of each other: settle it', ...findings],
      slot,
      ...NOTHING,
    };
  const untaped = missing.length === 0 ? [] : [`not taped: ${missing.join(', ')}`];
  if (findings.length === 0)
    return { state: missing.length === 0 ? 'good' : 'open', findings: untaped, slot, ...NOTHING };
  const extent = 'beyond the limits';
  const decided = findDecision(context, slots, seen, null, plan.formKey, now, extent);
  const decision = {
    extent,
    about: seen.standing(now),
    decision: decided.record,
    withoutRight: decided.withoutRight,
  } as const;
  if (!decided.isAccepted) return { state: 'out', findings, slot, ...decision };
  return { state: missing.length === 0 ? 'accepted' : 'open', findings: [...untaped, ...findings], slot, ...decision };
}
