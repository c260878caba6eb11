import type { Side } from '../geometry/region.ts';
import type { EdgeLoad, ResistanceUnder } from '../standards/edition.ts';
import { findLoad, type RowLoad } from './edge-load.ts';
import { checkParts } from './edge-parts.ts';
import { BODY, describeHead, reportRow } from './edge-report.ts';
import { coverAlong, findEdgeRows, findSharpCorner } from './edge-row.ts';
import { viewEdge } from './edge-view.ts';
import { keyMembers } from './members.ts';
import { roundForText, writeMessage } from './messages.ts';
import type { EdgeRow, PreparedAnchorage, ShearRow, ShearSide } from './prepared.ts';
import { isAtMost } from './rounding.ts';
import { areOpposite, type Run } from './run.ts';
import { checkHairpins } from './supplementary-bars.ts';
import { findDesign, loadRatio } from './verdict.ts';

/** Inserts of an edge row closer than this multiple of c1 act together (7.2.2.5). */
const ROW_CHAIN = 3;

/** Rows of inserts along each side, in the order of the sides; found once for each set of inserts. */
export function findSides(p: PreparedAnchorage, members: readonly number[]): readonly ShearSide[] {
  const key = keyMembers(members, p.count);
  const known = p.cache.shearSides.get(key);
  if (known !== undefined) return known;
  const found = p.region.sides.map((side): ShearSide => {
    const view = viewEdge(p, side);
    const rows = view === null ? [] : findEdgeRows(view, members, ROW_CHAIN);
    return {
      front: rows.filter(({ isBehind }) => !isBehind).map((row) => prepareRow(p, row)),
      behind: rows.filter(({ isBehind }) => isBehind),
      preparedBehind: [],
    };
  });
  p.cache.shearSides.set(key, found);
  return found;
}

/** What does not depend on the load: c1, the body's sides and what it resists. */
function prepareRow(p: PreparedAnchorage, row: EdgeRow): ShearRow {
  const { concrete, insert, member } = p.group;
  const edgeUsed = reduceEdge(p, row);
  const length = coverAlong(row, BODY * edgeUsed);
  const height = Math.min(member.thickness, BODY * edgeUsed);
  const reinforcement = p.edition.edgeReinforcement(p.group, row.edge);
  const resistance = p.edition.concreteEdge({
    diameter: insert.shaftDiameter,
    embedment: insert.embedment,
    strength: concrete.strength,
    cracked: concrete.cracked,
    edge: edgeUsed,
    area: length * height,
    corner: row.corner,
    thickness: member.thickness,
    reinforcementFactor: reinforcement.factor,
    lightweightFactor: concrete.lightweightFactor,
  });
  const sharp = findSharpCorner(row, BODY * edgeUsed);
  return { row, edgeUsed, length, height, sharp, resistance, reinforcementNote: reinforcement.note };
}

/** Edge failure in shear: one row of inserts an edge, toward every edge in sight. EN 1992-4, 7.2.2.5; ACI 318, 17.7.2. */
export function checkConcreteEdges(run: Run): void {
  const { p, sheared, report } = run;
  if (sheared.length === 0) {
    report?.skip({ mode: 'concrete-edge', inserts: [], clause: p.edition.clauses.edge }, writeMessage('no-shear'));
    return;
  }
  const before = report?.rows.length;
  for (const side of findSides(p, sheared)) checkRows(run, side);
  if (report?.rows.length === before) skipWithoutEdge(run);
}

/** Says that no edge is near. */
export function skipWithoutEdge({ p, report }: Run): void {
  const head = { mode: 'concrete-edge', inserts: [], clause: p.edition.clauses.edge } as const;
  report?.skip(
    head,
    Number.isFinite(p.edgeLimit)
      ? writeMessage('no-edge-near', { value: roundForText(p.edgeLimit) })
      : writeMessage('no-edge'),
  );
}

/** Edge failure toward one side only. */
export function checkSide(run: Run, side: Side): void {
  checkRows(run, findSides(run.p, run.sheared)[side.index]!);
}

/** The rows along one side; a row behind another only where it carries more by itself than the largest row before it. */
function checkRows(run: Run, { front, behind, preparedBehind }: ShearSide): void {
  let largest = 0;
  for (const body of front) {
    const load = findLoad(run, body.row);
    largest = Math.max(largest, load.force);
    checkRow(run, body, load, front.length);
  }
  if (!run.hasAction) return;
  for (let k = 0; k < behind.length; k++) {
    const load = findLoad(run, behind[k]!);
    if (isAtMost(load.force, largest)) continue;
    largest = load.force;
    preparedBehind[k] ??= prepareRow(run.p, behind[k]!);
    checkRow(run, preparedBehind[k]!, load, front.length + 1);
  }
}

function checkRow(run: Run, body: ShearRow, load: RowLoad, rowCount: number): void {
  const { p, report } = run;
  const { row } = body;
  const isFar = row.edge > p.edgeLimit;
  if (isFar || load.force === 0) {
    if (report === null) return;
    const reason = isFar
      ? writeMessage('far-edge', { value: roundForText(row.edge), limit: roundForText(p.edgeLimit) })
      : writeMessage('away-from-edge');
    report.skip(describeHead(run, row, null), reason);
    return;
  }
  if (body.sharp !== null) run.tally.refuse(body.sharp);
  const { resistance } = body;
  if (resistance.kind === 'parts') checkParts(run, body, resistance, load);
  else checkResultant(run, body, resistance.resist, load, rowCount);
}

function checkResultant(
  run: Run,
  body: ShearRow,
  resist: ResistanceUnder<EdgeLoad>,
  load: RowLoad,
  rowCount: number,
): void {
  const { p, report } = run;
  const { row } = body;
  const { eccentricity, toward, along, force } = load;
  const safety = p.safety['concrete-edge'];
  const isTorsionPair = isPairInTorsion(run, row);
  if (report !== null) {
    report.open(describeHead(run, row, body.edgeUsed));
    reportRow(run, report, body, load, eccentricity, isTorsionPair);
  }
  const characteristic = resist({ eccentricity, toward, along, isTorsionPair }, report);
  const ratio = loadRatio(force, findDesign(p, characteristic, safety));
  const bars = run.hasAction ? checkHairpins(run, row, rowCount, force, ratio) : null;
  if (run.hasAction && bars === null) run.tally.addConcreteShear(ratio, 'concrete-edge');
  if (report === null) return;
  if (bars !== null) report.note(writeMessage('replaced-by-bars', { ratio: roundForText(ratio, 2) }));
  p.edition.concreteSafety('concrete-edge', p.group, report);
  report.close(characteristic, safety, run.hasAction ? force : null, bars === null);
  bars?.report(report);
}

/** c1, or c1' in a member both thin and narrow. */
function reduceEdge(p: PreparedAnchorage, row: EdgeRow): number {
  const { thickness } = p.group.member;
  const reach = BODY * row.edge;
  if (!(row.farCorner < reach && thickness < reach)) return row.edge;
  // The rule is for inserts between two corners; beyond one, c1 is kept, the lower resistance.
  if (row.front.some((i) => row.view.place[i] === 'beyond')) return row.edge;
  return p.edition.reduceEdge(row.farCorner, thickness, row.largestSpacing, row.edge, null);
}

/** Two inserts, turned by torsion against each other, both in this row: their bodies overlap. */
function isPairInTorsion(run: Run, row: EdgeRow): boolean {
  if (row.front.length !== 2 || run.sheared.length !== 2 || !run.p.edition.weakensTorsionPairs) return false;
  return areOpposite(run.actions[row.front[0]!]!, run.actions[row.front[1]!]!);
}
