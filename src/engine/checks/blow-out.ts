import { coverAlong, findEdgeRows, findSharpCorner } from './edge-row.ts';
import { viewEdge } from './edge-view.ts';
import { keyMembers } from './members.ts';
import { roundForText, writeMessage } from './messages.ts';
import type { BlowOutRow, EdgeRow, PreparedAnchorage } from './prepared.ts';
import type { Report } from './report.ts';
import { nameMembers, type Run } from './run.ts';
import { findDesign, loadRatio } from './verdict.ts';

function findRows(p: PreparedAnchorage, members: readonly number[]): readonly BlowOutRow[] {
  const key = keyMembers(members, p.count);
  const known = p.cache.blowOutRows.get(key);
  if (known !== undefined) return known;
  const { blowOut } = p.edition;
  const { embedment } = p.group.insert;
  const rows: BlowOutRow[] = [];
  for (const side of p.region.sides) {
    const view = viewEdge(p, side);
    if (view === null) continue;
    // Rows behind the front row, if near enough themselves, count too: each can blow out under its own load.
    const near = members.filter((i) => blowOut.isNear(view.distance[i]!, embedment));
    for (const row of findEdgeRows(view, near, blowOut.chain)) rows.push(prepareRow(p, row));
  }
  p.cache.blowOutRows.set(key, rows);
  return rows;
}

/** What does not depend on the load: the body's sides and what it resists. */
function prepareRow(p: PreparedAnchorage, row: EdgeRow): BlowOutRow {
  const { concrete, insert, member } = p.group;
  const c1 = row.edge;
  const { body } = p.edition.blowOut;
  const resistance = p.edition.blowOut.resist({
    strength: concrete.strength,
    cracked: concrete.cracked,
    edge: c1,
    corner: row.corner,
    bearingArea: p.bearingArea,
    cover: (reach) => coverAlong(row, reach),
    depthBehind: member.thickness - insert.embedment,
    count: row.front.length,
    meanSpacing: row.meanSpacing,
    outerSpacing: row.meanSpacing * (row.front.length - 1),
    lightweightFactor: concrete.lightweightFactor,
  });
  return { row, edgeUsed: c1, sharp: findSharpCorner(row, body * c1), resistance };
}

/** Side-face blow-out: one row of inserts an edge that is near. EN 1992-4, 7.2.1.8. */
export function checkBlowOut(run: Run): void {
  const { p, tensioned, report } = run;
  const head = { mode: 'blow-out', inserts: [], clause: p.edition.clauses.blowOut } as const;
  if (tensioned.length === 0) {
    report?.skip(head, writeMessage('no-tension'));
    return;
  }
  const { reach } = p.edition.blowOut;
  const rows = findRows(p, tensioned);
  if (rows.length === 0)
    report?.skip(
      head,
      writeMessage('blow-out-far', { factor: reach, value: roundForText(reach * p.group.insert.embedment) }),
    );
  if (rows.length > 0 && !p.group.insert.isFullHead) run.tally.refuse(writeMessage('partial-head-blow-out'));
  for (const body of rows) checkRow(run, body);
}

function checkRow(run: Run, body: BlowOutRow): void {
  const { p, actions, report } = run;
  const { row, sharp, resistance } = body;
  const safety = p.safety['blow-out'];
  let force = 0;
  let moment = 0;
  for (const i of row.front) {
    force += actions[i]!.N;
    moment += actions[i]!.N * row.view.along[i]!;
  }
  const eccentricity = Math.abs(moment / force - row.centre);
  if (sharp !== null) run.tally.refuse(sharp);
  if (report !== null) reportRow(run, report, body);
  const characteristic = resistance(eccentricity, report);
  if (run.hasAction) {
    const ratio = loadRatio(force, findDesign(p, characteristic, safety));
    run.tally.addConcreteTension(ratio, 'blow-out');
  }
  if (report !== null) p.edition.concreteSafety('blow-out', p.group, report);
  report?.close(characteristic, safety, run.hasAction ? force : null);
}

function reportRow(run: Run, report: Report, body: BlowOutRow): void {
  const { p } = run;
  const { row, edgeUsed: c1, sharp } = body;
  const { side } = row.view;
  report.open({
    mode: 'blow-out',
    inserts: nameMembers(run, row.front),
    clause: p.edition.clauses.blowOut,
    edge: side,
    edgeUsed: c1,
    direction: Math.atan2(side.ny, side.nx),
  });
  if (sharp !== null) report.note(sharp);
  report.quantity('c_1', c1, 'mm', 'smallest distance of the row to the edge');
  p.edition.bearingArea(p.group.insert, report);
}
