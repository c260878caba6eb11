import type { JobIndex } from '../../job/job-index.ts';
import type { PanelSetOut } from '../set-out/set-out.ts';
import { findJobParts, type JobParts, type PourParts } from './job-parts.ts';
import { findLookAlikes, type LookAlike } from './look-alikes.ts';
import { findNeeds, type KindNeed, type PourNeed } from './needs.ts';
import type { PartKind } from './part-kind.ts';
import { type OrderLine, type Reconciliation, reconcile } from './reconcile.ts';
import { findMistyped, findSharedIds, listUncertain, type StockLine } from './stock.ts';
import type { PanelParts } from './take-off.ts';

/** What is asked: a pour, a panel, a panel of a pour, or the whole job. */
export interface PartsScope {
  readonly pour: string | null;
  readonly panel: string | null;
}

/** What the yard keeps beside the job. */
export interface YardLists {
  /** Null: not given. */
  readonly stock: readonly StockLine[] | null;
  readonly orders: readonly OrderLine[] | null;
  /** YYYY-MM-DD; pours before this day count as cast. */
  readonly today: string;
}

/** A panel as one pour casts it; pour null: no pour does. */
export interface Casting {
  readonly pour: string | null;
  readonly bed: string | null;
  readonly serials: readonly string[];
  readonly setOut: PanelSetOut;
  readonly parts: PanelParts;
}

/** A kind that one pour comes short of. */
export interface Shortage {
  readonly kind: PartKind;
  readonly need: PourNeed;
}

/** The parts of what was asked, and all that is to be said of them. */
export interface PartsAnswer {
  readonly scope: PartsScope;
  readonly today: string;
  readonly parts: JobParts;
  /** The pours that were asked for; none for a panel. */
  readonly pours: readonly PourParts[];
  readonly castings: readonly Casting[];
  /** Of the whole job, whatever was asked. */
  readonly needs: readonly KindNeed[];
  readonly counts: Reconciliation;
  readonly shortages: readonly Shortage[];
  readonly lookAlikes: readonly LookAlike[];
  /** What must be decided before the counts are complete. */
  readonly open: readonly string[];
  /** What cannot be made or counted as it stands. */
  readonly errors: readonly string[];
  readonly notes: readonly string[];
  /** `short`: something is short, does not agree or cannot be made; `open`: nothing is, but something is not decided. */
  readonly state: 'complete' | 'short' | 'open';
}

function listCastings({ pours, unplanned }: JobParts, { pour, panel }: PartsScope): readonly Casting[] {
  const planned = pours.flatMap(({ plan, panels }) =>
    panels.map((one): Casting => ({ pour: plan.pour.id, bed: plan.bed.name, ...one })),
  );
  const others = unplanned.map((one): Casting => ({ pour: null, bed: null, serials: [], ...one }));
  return [...planned, ...others].filter(
    (one) => (pour === null || one.pour === pour) && (panel === null || one.parts.mark === panel),
  );
}

/** Look-alikes that meet in a panel or on the bench of a pour; each pair once. */
function findAllLookAlikes(castings: readonly Casting[]): readonly LookAlike[] {
  const benches = new Map<string, PanelSetOut[]>();
  for (const { pour, setOut } of castings) {
    // What no pour casts meets on no bench: each panel by itself.
    const bench = JSON.stringify(pour === null ? [null, setOut.panel.mark] : [pour]);
    benches.set(bench, [...(benches.get(bench) ?? []), setOut]);
  }
  const pairs = new Map<string, LookAlike>();
  for (const found of [...benches.values()].flatMap(findLookAlikes)) {
    const name = JSON.stringify(found.ids);
    const panels = [...new Set([...(pairs.get(name)?.panels ?? []), ...found.panels])];
    pairs.set(name, { ...found, panels });
  }
  return [...pairs.values()];
}

function listErrors(castings: readonly Casting[], kinds: readonly PartKind[]): readonly string[] {
  const ofPanels = castings.flatMap(({ setOut }) =>
    setOut.problems
      .filter(({ severity }) => severity === 'error')
      .map(({ panel, insert, text }) => `panel ${panel}${insert === null ? '' : `, insert ${insert}`}: ${text}`),
  );
  const shared = findSharedIds(kinds.map(({ id }) => id)).map(
    (id) => `${id} is the id of two kinds of part, so that no list can tell them apart: give one another id`,
  );
  return [...new Set([...ofPanels, ...shared])];
}

function listNotes(index: JobIndex, kinds: readonly PartKind[], { stock, today }: YardLists): readonly string[] {
  if (stock === null) return [];
  // A yard's stock holds more than one job takes: only what looks like a slip of the pen is told.
  const known = new Set([...kinds.map(({ id }) => id), ...index.items.keys(), ...index.parts.keys()]);
  const mistyped = findMistyped(
    stock.map(({ id }) => id),
    known,
  );
  return [
    ...listUncertain(stock, today),
    ...mistyped.map(({ id, meant }) => `${id} in the stock is no part of this job; did you mean ${meant}?`),
  ];
}

/** What is short at a pour though enough of it is on order. */
function listLate(needs: readonly KindNeed[]): readonly string[] {
  return needs.flatMap(({ kind, stock, toOrder, byPour }) => {
    const short = byPour.find((need) => need.short > 0);
    if (stock === null || toOrder > 0 || short === undefined) return [];
    return [`${kind.id}: enough is on order, but not sure to be there by pour ${short.pour}; have it brought forward`];
  });
}

/** Whether counts of drawing, schedule and order agree, as far as they are there. */
function isAgreed({ rows, holes, foreign }: Reconciliation): boolean {
  return rows.every(({ differences }) => differences.length === 0) && holes.length + foreign.length === 0;
}

/** Counts the parts of a job and sets them against what the yard has and has ordered. */
export function answerParts(index: JobIndex, scope: PartsScope, lists: YardLists): PartsAnswer {
  const parts = findJobParts(index);
  const castings = listCastings(parts, scope);
  const needs = findNeeds(index, parts, lists.stock, lists.today);
  const counts = reconcile(index, parts, lists.orders);
  const kinds = needs.map(({ kind }) => kind);
  const pours = parts.pours.filter(({ plan: { pour } }) => scope.pour === null || pour.id === scope.pour);
  const ofPours = scope.panel === null ? pours : [];
  const all = needs.flatMap(({ kind, byPour }) => byPour.map((need) => ({ kind, need })));
  const shortages = ofPours.flatMap(({ plan }) =>
    all.filter(({ need }) => need.pour === plan.pour.id && need.short > 0),
  );
  const isWhole = scope.pour === null && scope.panel === null;
  const mustOrder = isWhole && needs.some(({ stock, toOrder }) => stock !== null && toOrder > 0);
  const errors = listErrors(castings, kinds);
  const open = castings.flatMap(({ parts: { mark, open: points } }) =>
    points.map(({ text }) => `panel ${mark}, ${text}`),
  );
  const isShort = mustOrder || shortages.length > 0 || errors.length > 0 || (isWhole && !isAgreed(counts));
  return {
    scope,
    today: lists.today,
    parts,
    pours: ofPours,
    castings,
    needs,
    counts,
    shortages,
    lookAlikes: findAllLookAlikes(castings),
    open: [...new Set(open)],
    errors,
    notes: [...listNotes(index, kinds, lists), ...listLate(needs)],
    state: isShort ? 'short' : open.length > 0 ? 'open' : 'complete',
  };
}
