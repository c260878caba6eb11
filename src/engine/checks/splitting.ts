import { openProjection, reportProjection } from './concrete-cone.ts';
import { chainByDistance, keyMembers } from './members.ts';
import { roundForText, writeMessage } from './messages.ts';
import type { Cone, PreparedAnchorage } from './prepared.ts';
import { findEccentricity, projectSquares } from './projection.ts';
import { type Run, sumTension } from './run.ts';
import { findDesign, loadRatio } from './verdict.ts';

/** Clusters of inserts whose squares of 2 c_cr,sp overlap; found once for each set of inserts. */
function findClusters(
  p: PreparedAnchorage,
  rules: NonNullable<PreparedAnchorage['edition']['splitting']>,
  members: readonly number[],
  { criticalEdge, minimumThickness }: NonNullable<PreparedAnchorage['group']['splitting']>,
): readonly Cone[] {
  const key = keyMembers(members, p.count);
  const known = p.cache.splitting.get(key);
  if (known !== undefined) return known;
  const { concrete, insert, reinforcement, member } = p.group;
  const found = chainByDistance(members, p.xs, p.ys, 2 * criticalEdge).map((chain) => {
    const projection = projectSquares(p, chain.members, chain.longestLink, criticalEdge);
    const resistance = rules.resist({
      strength: concrete.strength,
      cracked: concrete.cracked,
      embedment: insert.embedment * projection.reduction,
      area: projection.area,
      criticalEdge: projection.criticalEdge,
      edge: projection.edge,
      denseSurface: reinforcement.denseSurface,
      lightweightFactor: concrete.lightweightFactor,
      thickness: member.thickness,
      minimumThickness,
      pullOut: p.pullOut.characteristic,
    });
    return { projection, resistance };
  });
  p.cache.splitting.set(key, found);
  return found;
}

/** The same by the group's own product values; none where the edition or the product gives none. */
export function findSplittingClusters(p: PreparedAnchorage, members: readonly number[]): readonly Cone[] {
  const { splitting } = p.group;
  return p.edition.splitting === null || splitting === null
    ? []
    : findClusters(p, p.edition.splitting, members, splitting);
}

/**
 * Splitting under load. Not needed where cracked values are used and reinforcement limits the crack width, or where edges
 * are at least c_cr,sp (a group: 1.2 c_cr,sp) away and the member is at least h_min thick; where it is needed and the product
 * document gives no values, the answer is "not covered". EN 1992-4, 7.2.1.7.
 */
export function checkSplitting(run: Run): void {
  const { p, tensioned, report } = run;
  const { concrete, reinforcement, splitting, member } = p.group;
  const head = { mode: 'splitting', inserts: [], clause: p.edition.clauses.splitting } as const;
  if (tensioned.length === 0) {
    report?.skip(head, writeMessage('no-tension'));
    return;
  }
  if (p.edition.splitting === null) {
    report?.skip(head, writeMessage('splitting-by-distances'));
    return;
  }
  if (concrete.cracked && reinforcement.limitsCrackWidth) {
    report?.skip(head, writeMessage('splitting-released'));
    return;
  }
  if (splitting === null) {
    const edge = Math.min(...tensioned.map((i) => p.near[i]![0]?.distance ?? Number.POSITIVE_INFINITY));
    const reason = writeMessage('splitting-unknown', {
      edge: Number.isFinite(edge) ? `${roundForText(edge)} mm` : 'none near',
      thickness: roundForText(member.thickness),
    });
    run.tally.refuse(reason);
    report?.skip(head, reason);
    return;
  }
  const farEnough = (tensioned.length > 1 ? p.edition.splitting.groupEdge : 1) * splitting.criticalEdge;
  const isFar = tensioned.every((i) => (p.near[i]![0]?.distance ?? Number.POSITIVE_INFINITY) >= farEnough);
  if (isFar && member.thickness >= splitting.minimumThickness) {
    report?.skip(head, writeMessage('splitting-far', { value: roundForText(farEnough) }));
    return;
  }
  if (member.thickness < splitting.minimumThickness)
    run.tally.refuse(
      writeMessage('splitting-thin', { value: roundForText(member.thickness), low: splitting.minimumThickness }),
    );
  for (const cluster of findClusters(p, p.edition.splitting, tensioned, splitting))
    checkCluster(run, cluster, splitting.criticalEdge);
}

function checkCluster(run: Run, { projection, resistance }: Cone, fullCriticalEdge: number): void {
  const { p, report } = run;
  const safety = p.safety.splitting;
  const { force, x, y } = sumTension(run, projection.members);
  const eccentricity = findEccentricity(projection, x - projection.centroidX, y - projection.centroidY);
  if (report !== null) {
    openProjection(run, report, 'splitting', p.edition.clauses.splitting, projection, eccentricity);
    reportProjection(run, report, projection, eccentricity, fullCriticalEdge);
    report.quantity('N_Rk_p', p.pullOut.characteristic, 'N', 'pull-out of one insert, see there');
  }
  const load = { eccentricity1: eccentricity.e1, eccentricity2: eccentricity.e2, compressionArm: null };
  const characteristic = resistance(load, report);
  const ratio = loadRatio(force, findDesign(p, characteristic, safety));
  if (run.hasAction) run.tally.addConcreteTension(ratio, 'splitting');
  if (report !== null) p.edition.concreteSafety('splitting', p.group, report);
  report?.close(characteristic, safety, run.hasAction ? force : null);
}
