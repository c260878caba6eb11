import type { Side } from '../geometry/region.ts';
import { coverAlong, findEdgeRows, findSharpCorner } from './edge-row.ts';
import { viewEdge } from './edge-view.ts';
import { keyMembers } from './members.ts';
import { roundForText, writeMessage } from './messages.ts';
import type { EdgeRow, PreparedAnchorage, ShearRow, ShearSide } from './prepared.ts';
import type { Report, RowHead } from './report.ts';
import { areOpposite, nameMembers, type Run } from './run.ts';
import { checkHairpins } from './supplementary-bars.ts';
import { loadRatio } from './verdict.ts';

/** Inserts of an edge row closer than this multiple of c1 act together (7.2.2.5). */
const ROW_CHAIN = 3;

/** The body of an edge failure reaches this multiple of c1 to each side and into the depth (7.2.2.5). */
const BODY = 1.5;

/** Rows of inserts along each side, in the order of the sides; found once for each set of inserts. */
function findSides(p: PreparedAnchorage, members: readonly number[]): readonly ShearSide[] {
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
  const reinforcement = findReinforcement(p, row.edge);
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
  });
  const sharp = findSharpCorner(row, BODY * edgeUsed);
  return { row, edgeUsed, length, height, sharp, resistance, reinforcementNote: reinforcement.note };
}

/** Load of one row: components toward the edge and along it, and how unequal they are. */
interface RowLoad {
  readonly toward: number;
  readonly along: number;
  readonly eccentricity: number;
  /** Both parts together. */
  readonly force: number;
}

/** A part of the row's shear below this share of all of it is rounding of a turned load. */
const NO_PART = 1e-12;

/**
 * Load of a row. Toward the edge: the larger of the sum over all inserts of the row and the sum of the front inserts'
 * positive parts; a part away from the edge is dropped. Along the edge: the front inserts' own, by size, since shears that
 * turn against each other break the edge all the same. The eccentricity comes from each front insert's part in the
 * direction of the row's resultant.
 */
function findLoad(run: Run, row: EdgeRow): RowLoad {
  const { actions } = run;
  const { nx, ny, ux, uy } = row.view.side;
  let sum = 0;
  let positive = 0;
  let along = 0;
  let least = 0;
  for (const i of row.all) {
    const { Vx, Vy, V } = actions[i]!;
    sum += Vx * nx + Vy * ny;
    least += NO_PART * V;
  }
  for (const i of row.front) {
    positive += Math.max(0, actions[i]!.Vx * nx + actions[i]!.Vy * ny);
    along += Math.abs(actions[i]!.Vx * ux + actions[i]!.Vy * uy);
  }
  const larger = Math.max(0, sum, positive);
  const toward = larger > least ? larger : 0;
  if (along <= least) along = 0;
  let weight = 0;
  let moment = 0;
  for (const i of row.front) {
    const { Vx, Vy } = actions[i]!;
    const share = Math.max(0, Vx * nx + Vy * ny) * toward + Math.abs(Vx * ux + Vy * uy) * along;
    weight += share;
    moment += share * row.view.along[i]!;
  }
  const eccentricity = weight > 0 ? Math.abs(moment / weight - row.centre) : 0;
  return { toward, along, eccentricity, force: Math.sqrt(toward * toward + along * along) };
}

/** Edge failure in shear: one row of inserts an edge, toward every edge in sight. EN 1992-4, 7.2.2.5. */
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
  const { embedment, shaftDiameter } = p.group.insert;
  const value = roundForText(p.edition.edgeLimit(embedment, shaftDiameter));
  const head = { mode: 'concrete-edge', inserts: [], clause: p.edition.clauses.edge } as const;
  report?.skip(head, writeMessage('no-edge-near', { value }));
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
    if (load.force <= largest) continue;
    largest = load.force;
    preparedBehind[k] ??= prepareRow(run.p, behind[k]!);
    checkRow(run, preparedBehind[k]!, load, front.length + 1);
  }
}

function checkRow(run: Run, body: ShearRow, load: RowLoad, rowCount: number): void {
  const { force } = load;
  const { p, report } = run;
  const { row } = body;
  const { insert, partialFactors } = p.group;
  const limit = p.edition.edgeLimit(insert.embedment, insert.shaftDiameter);
  if (row.edge > limit || force === 0) {
    if (report === null) return;
    const reason =
      row.edge > limit
        ? writeMessage('far-edge', { value: roundForText(row.edge), limit: roundForText(limit) })
        : writeMessage('away-from-edge');
    report.skip(describeHead(run, row, null), reason);
    return;
  }
  if (body.sharp !== null) run.tally.refuse(body.sharp);
  const isTorsionPair = isPairInTorsion(run, row);
  if (report !== null) {
    report.open(describeHead(run, row, body.edgeUsed));
    reportRow(run, report, body, load, isTorsionPair);
  }
  const { eccentricity, toward, along } = load;
  const characteristic = body.resistance({ eccentricity, toward, along, isTorsionPair }, report);
  const ratio = loadRatio(force, p.edition.designResistance(characteristic, partialFactors.concrete));
  const bars = run.hasAction ? checkHairpins(run, row, rowCount, force, ratio) : null;
  if (run.hasAction && bars === null) run.tally.addConcreteShear(ratio, 'concrete-edge');
  if (report === null) return;
  if (bars !== null) report.note(writeMessage('replaced-by-bars', { ratio: roundForText(ratio, 2) }));
  report.close(characteristic, partialFactors.concrete, run.hasAction ? force : null, bars === null);
  bars?.report(report);
}

function describeHead(run: Run, row: EdgeRow, edgeUsed: number | null): RowHead {
  const { side } = row.view;
  return {
    mode: 'concrete-edge',
    inserts: nameMembers(run, row.front),
    clause: run.p.edition.clauses.edge,
    edge: side,
    edgeUsed,
    direction: Math.atan2(side.ny, side.nx),
  };
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
  if (row.front.length !== 2 || run.sheared.length !== 2) return false;
  return areOpposite(run.actions[row.front[0]!]!, run.actions[row.front[1]!]!);
}

/** Whether stirrups and bars along the edge count, and why or why not. */
function findReinforcement(
  { group, edition }: PreparedAnchorage,
  edge: number,
): { readonly factor: number; readonly note: string | null } {
  const { edge: kind, stirrupSpacing } = group.reinforcement;
  if (kind !== 'bar-and-stirrups') return { factor: 1, note: null };
  if (!group.concrete.cracked) return { factor: 1, note: writeMessage('bar-stirrups-uncracked') };
  const limit = Math.min(100, 2 * edge);
  if (stirrupSpacing === null)
    return {
      factor: edition.stirrupFactor,
      note: writeMessage('bar-stirrups-stated', { limit: roundForText(limit) }),
    };
  if (stirrupSpacing <= limit) return { factor: edition.stirrupFactor, note: null };
  const values = { value: stirrupSpacing, limit: roundForText(limit) };
  return { factor: 1, note: writeMessage('bar-stirrups-spacing', values) };
}

function reportRow(run: Run, report: Report, body: ShearRow, load: RowLoad, isTorsionPair: boolean): void {
  const { edition, group } = run.p;
  const { row, edgeUsed: c1, length, height } = body;
  if (body.sharp !== null) report.note(body.sharp);
  if (row.front.some((i) => row.view.place[i] === 'beside')) report.note(writeMessage('side-goes-on'));
  if (row.front.some((i) => row.view.place[i] === 'beyond')) report.note(writeMessage('beyond-corner'));
  if (row.isBehind) report.note(writeMessage('row-behind'));
  if (isTorsionPair) report.note(writeMessage('torsion-pair'));
  if (row.front.length > 1 || row.all.length > row.front.length)
    report.note(writeMessage('front-row', { value: roundForText(row.edge) }));
  report.quantity('c_1', row.edge, 'mm', 'smallest distance of the front row to the edge');
  if (c1 < row.edge) {
    edition.reduceEdge(row.farCorner, group.member.thickness, row.largestSpacing, row.edge, report);
    report.note(writeMessage('thin-and-narrow', { from: roundForText(row.edge), to: roundForText(c1) }));
    report.quantity('c_1', c1, 'mm', 'c_1,red: stands for c_1 from here on');
  }
  if (body.reinforcementNote !== null) report.note(body.reinforcementNote);
  if (row.corner < BODY * c1) report.quantity('c_2', row.corner, 'mm', 'distance of the row to the nearest corner');
  report.quantity(
    'A_c_V',
    length * height,
    'mm2',
    () =>
      `${roundForText(length, 4)} mm along the edge x ${roundForText(height, 4)} mm deep (1.5 c_1, at most the thickness)`,
  );
  if (run.hasAction) {
    report.quantity('V_toward', load.toward, 'N', 'part of the shear toward the edge');
    report.quantity('V_along', load.along, 'N', 'part of the shear along the edge');
  }
  if (row.front.length > 1) report.quantity('e_V', load.eccentricity, 'mm', 'resultant to centroid along the edge');
}
