import { hasHiddenPart } from '../geometry/visible-polygon.ts';
import type { ClauseName, ConeLoad, ResistanceUnder } from '../standards/edition.ts';
import { describeArea } from './describe-area.ts';
import { chainByDistance, keyMembers } from './members.ts';
import { roundForText, writeMessage } from './messages.ts';
import type { Cone, PreparedAnchorage, Projection } from './prepared.ts';
import { findEccentricity, projectSquares } from './projection.ts';
import type { Report } from './report.ts';
import type { Mode } from './result.ts';
import { nameMembers, type Run, sumTension } from './run.ts';
import { checkHangers } from './supplementary-bars.ts';
import { findDesign, loadRatio } from './verdict.ts';

/** Compression counts through psi_M only where it is at least this share of the tension (7.2.1.4). */
const COMPRESSION_SHARE = 0.8;

/** An eccentricity below this share of c_cr,N is rounding. */
const NO_ECCENTRICITY = 1e-9;

/** What the cone of a cluster resists. */
export function askCone({ edition, group }: PreparedAnchorage, projection: Projection): ResistanceUnder<ConeLoad> {
  const { concrete, insert, reinforcement } = group;
  return edition.concreteCone({
    strength: concrete.strength,
    cracked: concrete.cracked,
    embedment: insert.embedment * projection.reduction,
    area: projection.area,
    criticalEdge: projection.criticalEdge,
    edge: projection.edge,
    denseSurface: reinforcement.denseSurface,
    lightweightFactor: concrete.lightweightFactor,
  });
}

/** Clusters of inserts whose squares overlap, projected; found once for each set of inserts. */
export function findCones(p: PreparedAnchorage, members: readonly number[]): readonly Cone[] {
  const key = keyMembers(members, p.count);
  const known = p.cache.cones.get(key);
  if (known !== undefined) return known;
  const criticalEdge = p.edition.coneReach * p.group.insert.embedment;
  const cones = chainByDistance(members, p.xs, p.ys, 2 * criticalEdge).map((chain) => {
    const projection = projectSquares(p, chain.members, chain.longestLink, criticalEdge);
    return { projection, resistance: askCone(p, projection) };
  });
  p.cache.cones.set(key, cones);
  return cones;
}

/** Opens the row of a cluster: its inserts, the embedment that counts and the direction of its squares. */
export function openProjection(
  run: Run,
  report: Report,
  mode: Mode,
  clause: ClauseName,
  projection: Projection,
  { ux, uy }: { readonly ux: number; readonly uy: number },
): void {
  report.open({
    mode,
    inserts: nameMembers(run, projection.members),
    clause,
    embedmentUsed: run.p.group.insert.embedment * projection.reduction,
    direction: Math.atan2(uy, ux),
  });
}

/** Writes down how a projection came about: edges, embedment, squares, area, eccentricity. */
export function reportProjection(
  run: Run,
  report: Report,
  projection: Projection,
  eccentricity: { readonly e1: number; readonly e2: number; readonly ux: number; readonly uy: number },
  fullCriticalEdge: number,
): void {
  const { p } = run;
  if (projection.reduction < 1) {
    const from = p.group.insert.embedment;
    p.edition.reduceEmbedment(projection.largestEdge, projection.largestSpacing, fullCriticalEdge, from, report);
    report.note(
      writeMessage('three-edges', { from: roundForText(from), to: roundForText(from * projection.reduction) }),
    );
  }
  report.quantity('c_cr_N', projection.criticalEdge, 'mm', 'half the side of each square');
  if (projection.edge < projection.criticalEdge)
    report.quantity('c', projection.edge, 'mm', 'smallest distance to an edge in sight');
  const { ux, uy } = eccentricity;
  report.quantity('A_c_N', projection.area, 'mm2', () => describeArea(p, projection, ux, uy));
  // A quarter turn of a square is no turn.
  const degrees = (Math.atan2(uy, ux) * 180) / Math.PI;
  const angle = roundForText(degrees - 90 * Math.round(degrees / 90)) + 0;
  if (p.near.some((list) => list.length > 0) || projection.members.length > 1)
    report.note(writeMessage('spacing-over-three', { angle }));
  if (p.region.hasReentrantCorner) {
    const half = projection.criticalEdge;
    const box = { minU: -half, maxU: half, minV: -half, maxV: half };
    if (projection.members.some((i) => hasHiddenPart(p.region, p.xs[i]!, p.ys[i]!, ux, uy, box)))
      report.note(writeMessage('shadow'));
  }
  if (projection.members.length > 1) {
    report.quantity('e_N_1', eccentricity.e1, 'mm', 'resultant to centroid along the first axis of the squares');
    report.quantity('e_N_2', eccentricity.e2, 'mm', 'resultant to centroid along the second axis of the squares');
    if (Math.min(eccentricity.e1, eccentricity.e2) > NO_ECCENTRICITY * projection.criticalEdge)
      report.note(writeMessage('eccentricity-axes'));
  }
}

/** Concrete cone: one row a cluster of tensioned inserts. EN 1992-4, 7.2.1.4. */
export function checkConcreteCone(run: Run): void {
  const { p, tensioned, report } = run;
  if (tensioned.length === 0) {
    report?.skip({ mode: 'concrete-cone', inserts: [], clause: p.edition.clauses.cone }, writeMessage('no-tension'));
    return;
  }
  const cones = findCones(p, tensioned);
  for (const { projection, resistance } of cones) checkCluster(run, projection, resistance, cones.length);
}

function checkCluster(run: Run, cone: Projection, resistance: ResistanceUnder<ConeLoad>, clusterCount: number): void {
  const { p, report } = run;
  const { force, x, y } = sumTension(run, cone.members);
  const eccentricity = findEccentricity(cone, x - cone.centroidX, y - cone.centroidY);
  const compressionArm = findCompressionArm(run, cone, x, y);
  const safety = p.safety['concrete-cone'];
  const fullCriticalEdge = p.edition.coneReach * p.group.insert.embedment;
  if (report !== null) {
    openProjection(run, report, 'concrete-cone', p.edition.clauses.cone, cone, eccentricity);
    reportProjection(run, report, cone, eccentricity, fullCriticalEdge);
  }
  const load = { eccentricity1: eccentricity.e1, eccentricity2: eccentricity.e2, compressionArm };
  const characteristic = resistance(load, report);
  const ratio = loadRatio(force, findDesign(p, characteristic, safety));
  const bars = run.hasAction ? checkHangers(run, clusterCount, force, ratio) : null;
  if (run.hasAction && bars === null) run.tally.addConcreteTension(ratio, 'concrete-cone');
  if (report === null) return;
  p.edition.concreteSafety('concrete-cone', p.group, report);
  if (bars !== null) report.note(writeMessage('replaced-by-bars', { ratio: roundForText(ratio, 2) }));
  report.close(characteristic, safety, run.hasAction ? force : null, bars === null);
  bars?.report(report);
}

/** Lever arm to a compression that psi_M may count: strong enough, near enough, and no edge within reach. */
function findCompressionArm(run: Run, cone: Projection, x: number, y: number): number | null {
  const { compression, actions, p } = run;
  if (compression === null || cone.edge < Number.POSITIVE_INFINITY) return null;
  const total = actions.reduce((sum, { N }) => sum + Math.max(0, N), 0);
  const arm = Math.hypot(compression.at[0] - x, compression.at[1] - y);
  const isNear = arm < p.edition.coneReach * p.group.insert.embedment;
  return isNear && compression.force >= COMPRESSION_SHARE * total ? arm : null;
}
