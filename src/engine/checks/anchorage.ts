import type { Region } from '../geometry/region.ts';
import { findEdition } from '../standards/editions.ts';
import type { AnchorageGroup, GroupActions, InsertAction } from './anchorage-group.ts';
import { checkBlowOut } from './blow-out.ts';
import { checkConcreteCone } from './concrete-cone.ts';
import { checkConcreteEdges, checkSide, skipWithoutEdge } from './concrete-edge.ts';
import { checkInteraction } from './interaction.ts';
import { roundForText, writeMessage } from './messages.ts';
import { prepareAnchorage } from './prepare.ts';
import type { PreparedAnchorage } from './prepared.ts';
import { checkPryOut } from './pry-out.ts';
import { checkPullOut } from './pull-out.ts';
import { Report } from './report.ts';
import type { AnchorageResult, GoverningMode, InteractionRow, Verdict } from './result.ts';
import { type Run, startRun, Tally } from './run.ts';
import { checkSplitting } from './splitting.ts';
import { checkSteelShear, checkSteelTension } from './steel.ts';
import { decideVerdict } from './verdict.ts';

/** The numbers of a check: largest ratio, what gave it, and the verdict. */
export interface AnchorageNumbers {
  readonly ratio: number;
  readonly mode: GoverningMode | null;
  readonly verdict: Verdict | null;
  /** Why it can never be a pass; empty when all is covered. */
  readonly uncovered: readonly string[];
}

/**
 * Finds everything about a group that does not depend on the load.
 * @param face the region of another group in the same outline and openings, to save finding it again; null: found here
 * @throws AnchorageError, GeometryError where the group cannot be computed
 */
export function prepare(group: AnchorageGroup, face: Region | null = null): PreparedAnchorage {
  return prepareAnchorage(group, findEdition(group.standard), face);
}

/**
 * Checks one load combination: numbers only, for whole jobs, choosing and dragging.
 * @throws AnchorageError where the actions do not match the positions
 */
export function checkAnchorage(p: PreparedAnchorage, actions: GroupActions): AnchorageNumbers {
  const tally = new Tally();
  runAll(startRun(p, actions, true, tally, null), null);
  const uncovered = tally.uncovered.length === 0 ? p.uncovered : [...p.uncovered, ...tally.uncovered];
  return { ratio: tally.ratio, mode: tally.mode, verdict: decide(p, tally, true), uncovered };
}

/**
 * The same check with every row and factor, and with every step when `keepsSteps` is set.
 * @throws AnchorageError where the actions do not match the positions
 */
export function explainAnchorage(p: PreparedAnchorage, actions: GroupActions, keepsSteps: boolean): AnchorageResult {
  const tally = new Tally();
  const report = new Report(keepsSteps, p.edition.design);
  const interaction: InteractionRow[] = [];
  runAll(startRun(p, actions, true, tally, report), interaction);
  const governing = tally.mode === null ? null : { mode: tally.mode, ratio: tally.ratio };
  return finish(p, tally, report, interaction, governing, true);
}

/** Resistances alone, without an action: equal tension, and shear toward each edge in turn. Ratios are null. */
export function findResistances(p: PreparedAnchorage, keepsSteps: boolean): AnchorageResult {
  const tally = new Tally();
  const report = new Report(keepsSteps, p.edition.design);
  const runEqual = (action: InsertAction): Run =>
    startRun(p, { inserts: p.group.positions.map(() => action), compression: null }, false, tally, report);
  checkTension(runEqual({ N: 1, Vx: 0, Vy: 0 }));
  const pushed = runEqual({ N: 0, Vx: 1, Vy: 0 });
  checkSteelShear(pushed);
  checkPryOut(pushed);
  const before = report.rows.length;
  for (const side of p.region.sides) checkSide(runEqual({ N: 0, Vx: side.nx, Vy: side.ny }), side);
  if (report.rows.length === before) skipWithoutEdge(pushed);
  return finish(p, tally, report, [], null, false);
}

/**
 * Resistance of a group of cast-in inserts in one call: every failure mode under the actions, or resistances alone where
 * `actions` is null.
 * @throws AnchorageError, GeometryError where the group cannot be computed or the actions do not match it
 */
export function anchorage(group: AnchorageGroup, actions: GroupActions | null, keepsSteps = false): AnchorageResult {
  const prepared = prepare(group);
  return actions === null ? findResistances(prepared, keepsSteps) : explainAnchorage(prepared, actions, keepsSteps);
}

function checkTension(run: Run): void {
  checkSteelTension(run);
  checkConcreteCone(run);
  checkPullOut(run);
  checkBlowOut(run);
  checkSplitting(run);
}

function runAll(run: Run, interaction: InteractionRow[] | null): void {
  refuseCompressed(run);
  checkTension(run);
  checkSteelShear(run);
  checkPryOut(run);
  checkConcreteEdges(run);
  checkInteraction(run, interaction);
}

function refuseCompressed({ actions, p, tally }: Run): void {
  for (let i = 0; i < actions.length; i++) {
    const { N } = actions[i]!;
    if (N >= 0) continue;
    const insert = p.group.positions[i]!.id;
    tally.refuse(writeMessage('compressed-insert', { insert, value: roundForText(-N / 1000, 2) }));
  }
}

function decide(p: PreparedAnchorage, tally: Tally, hasAction: boolean): Verdict | null {
  const isCovered = p.uncovered.length === 0 && tally.uncovered.length === 0;
  return decideVerdict(hasAction ? tally.ratio : null, isCovered);
}

function finish(
  p: PreparedAnchorage,
  tally: Tally,
  report: Report,
  interaction: readonly InteractionRow[],
  governing: AnchorageResult['governing'],
  hasAction: boolean,
): AnchorageResult {
  const notes = p.hasBentPart ? [writeMessage('lever-arm-interaction')] : [];
  return {
    document: p.edition.document,
    rows: report.rows,
    interaction,
    governing,
    verdict: decide(p, tally, hasAction),
    uncovered: [...p.uncovered, ...tally.uncovered],
    notes,
  };
}
