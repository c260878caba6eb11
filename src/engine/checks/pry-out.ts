import { visibleAreaWithin } from '../geometry/clip.ts';
import type { Point } from '../geometry/point.ts';
import { askCone, findCones, openProjection, reportProjection } from './concrete-cone.ts';
import { roundForText, writeMessage } from './messages.ts';
import type { Cone, PreparedAnchorage, Projection } from './prepared.ts';
import { collectAxes, findEccentricity, SQUARE_REACH } from './projection.ts';
import { areOpposite, type Run } from './run.ts';
import { findDesign, loadRatio } from './verdict.ts';

/**
 * Pry-out: k8 times the cone resistance of the inserts that carry shear, a row a cluster; with shears in opposite directions
 * each insert alone, with a virtual edge at half the spacing. EN 1992-4, 7.2.2.4.
 */
export function checkPryOut(run: Run): void {
  const { p, sheared, report } = run;
  if (sheared.length === 0) {
    report?.skip({ mode: 'pry-out', inserts: [], clause: p.edition.clauses.pryOut }, writeMessage('no-shear'));
    return;
  }
  if (hasOpposites(run)) for (const i of sheared) checkAlone(run, i);
  else for (const cone of findCones(p, sheared)) checkCluster(run, cone);
}

function hasOpposites({ actions, sheared }: Run): boolean {
  for (const i of sheared) for (const j of sheared) if (i < j && areOpposite(actions[i]!, actions[j]!)) return true;
  return false;
}

function finish(run: Run, cone: number, force: number): void {
  const { p, report } = run;
  const { hangers, hairpins, pryOutFactor, insert } = p.group;
  const safety = p.safety['pry-out'];
  if (report !== null) p.edition.pryOutFactor(insert.embedment, pryOutFactor, report);
  const hasBars = hangers.length + hairpins.length > 0;
  const characteristic = p.edition.pryOut(cone, p.pryOutFactor, hasBars, report);
  if (run.hasAction) run.tally.addConcreteShear(loadRatio(force, findDesign(p, characteristic, safety)), 'pry-out');
  if (report !== null) p.edition.concreteSafety('pry-out', p.group, report);
  report?.close(characteristic, safety, run.hasAction ? force : null);
}

function checkCluster(run: Run, { projection: cone, resistance }: Cone): void {
  const { p, actions, report } = run;
  let sumX = 0;
  let sumY = 0;
  let moment = 0;
  let sum = 0;
  let momentX = 0;
  let momentY = 0;
  for (const i of cone.members) {
    const { Vx, Vy, V } = actions[i]!;
    const x = p.xs[i]! - cone.centroidX;
    const y = p.ys[i]! - cone.centroidY;
    sumX += Vx;
    sumY += Vy;
    moment += x * Vy - y * Vx;
    sum += V;
    momentX += V * x;
    momentY += V * y;
  }
  const force = Math.sqrt(sumX * sumX + sumY * sumY);
  // Two readings of "eccentric", the worse counts: how far the line of the resultant passes the centroid, and how unequal the
  // shears are, which the line does not show where they lie behind each other.
  const arm = force > 0 ? moment / (force * force) : 0;
  const ofLine = findEccentricity(cone, arm * sumY, -arm * sumX);
  const ofShares = findEccentricity(cone, momentX / sum, momentY / sum);
  const eccentricity = ofShares.loss > ofLine.loss ? ofShares : ofLine;
  if (report !== null) {
    const { insert } = p.group;
    openProjection(run, report, 'pry-out', p.edition.clauses.pryOut, cone, eccentricity);
    reportProjection(run, report, cone, eccentricity, p.edition.coneReach * insert.embedment);
  }
  const load = { eccentricity1: eccentricity.e1, eccentricity2: eccentricity.e2, compressionArm: null };
  finish(run, resistance(load, report), force);
}

/** One insert with virtual edges halfway to its neighbours; they cut its square and count in psi_s (the safe reading). */
function checkAlone(run: Run, i: number): void {
  const { p, actions, sheared, report } = run;
  const own = findCones(p, [i])[0]!.projection;
  const x = p.xs[i]!;
  const y = p.ys[i]!;
  let edge = own.edge;
  let nearest = Number.POSITIVE_INFINITY;
  let area = own.area;
  let axis = own.axes[0] ?? { ux: 1, uy: 0 };
  const neighbours = sheared.filter((j) => j !== i && Math.hypot(p.xs[j]! - x, p.ys[j]! - y) < 2 * own.criticalEdge);
  if (neighbours.length > 0) {
    for (const j of neighbours) {
      const spacing = Math.hypot(p.xs[j]! - x, p.ys[j]! - y);
      edge = Math.min(edge, spacing / 2);
      nearest = Math.min(nearest, spacing);
    }
    area = Number.POSITIVE_INFINITY;
    // What is cut off decides the direction anew: along any edge in reach, or the line to a neighbour.
    const reach = SQUARE_REACH * p.edition.coneReach * p.group.insert.embedment;
    const lines = neighbours.map((j) => {
      const length = Math.hypot(p.xs[j]! - x, p.ys[j]! - y);
      return { ux: (p.xs[j]! - x) / length, uy: (p.ys[j]! - y) / length };
    });
    for (const candidate of [...collectAxes(p, [i], reach), ...lines]) {
      const cut = visibleAreaWithin(p.region, x, y, cutSquare(p, i, neighbours, own.criticalEdge, candidate));
      if (cut < area) {
        area = cut;
        axis = candidate;
      }
    }
  }
  const cone: Projection = { ...own, edge, area, axes: [axis] };
  if (report !== null) {
    const { insert } = p.group;
    openProjection(run, report, 'pry-out', p.edition.clauses.pryOut, cone, axis);
    report.note(writeMessage('opposite-shears'));
    if (neighbours.length > 0)
      report.quantity(
        'c_virtual',
        nearest / 2,
        'mm',
        `half of ${roundForText(nearest, 2)} mm to the nearest insert in shear`,
      );
    reportProjection(run, report, cone, { e1: 0, e2: 0, ...axis }, p.edition.coneReach * insert.embedment);
  }
  const force = actions[i]!.V;
  const load = { eccentricity1: 0, eccentricity2: 0, compressionArm: null };
  finish(run, askCone(p, cone)(load, report), force);
}

/** The square around an insert cut by the perpendicular bisectors to its neighbours; one through a corner leaves it twice. */
function cutSquare(
  p: PreparedAnchorage,
  i: number,
  neighbours: readonly number[],
  half: number,
  { ux, uy }: { readonly ux: number; readonly uy: number },
): Point[] {
  const x = p.xs[i]!;
  const y = p.ys[i]!;
  let polygon: Point[] = [
    [-half, -half],
    [half, -half],
    [half, half],
    [-half, half],
  ].map(([u, v]) => [x + u! * ux - v! * uy, y + u! * uy + v! * ux] as const);
  for (const j of neighbours) {
    const dx = p.xs[j]! - x;
    const dy = p.ys[j]! - y;
    const limit = (dx * dx + dy * dy) / 2;
    const depth = ([px, py]: Point) => limit - (px - x) * dx - (py - y) * dy;
    const cut: Point[] = [];
    for (const [k, a] of polygon.entries()) {
      const b = polygon[(k + 1) % polygon.length]!;
      const [da, db] = [depth(a), depth(b)];
      if (da >= 0) cut.push(a);
      if (da >= 0 !== db >= 0) {
        const t = da / (da - db);
        cut.push([a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])]);
      }
    }
    polygon = cut;
  }
  return polygon;
}
