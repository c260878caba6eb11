import type { RowLoad } from './edge-load.ts';
import { roundForText, writeMessage } from './messages.ts';
import type { EdgeRow, ShearRow } from './prepared.ts';
import type { Report, RowHead } from './report.ts';
import { nameMembers, type Run } from './run.ts';

/** The body of an edge failure reaches this multiple of c1 to each side and into the depth (EN 1992-4, 7.2.2.5; ACI 318, 17.7.2.1). */
export const BODY = 1.5;

/** What an edge row says about itself before its numbers; `part` names the part of an inclined shear. */
export function describeHead(run: Run, row: EdgeRow, edgeUsed: number | null, part?: string): RowHead {
  const { side } = row.view;
  return {
    mode: 'concrete-edge',
    inserts: nameMembers(run, row.front),
    clause: run.p.edition.clauses.edge,
    edge: side,
    edgeUsed,
    direction: Math.atan2(side.ny, side.nx),
    ...(part === undefined ? {} : { part }),
  };
}

/** Writes down how an edge row came about: its front, c1, the body, the load. */
export function reportRow(
  run: Run,
  report: Report,
  body: ShearRow,
  load: RowLoad,
  eccentricity: number,
  isTorsionPair: boolean,
): void {
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
  if (row.front.length > 1) report.quantity('e_V', eccentricity, 'mm', 'resultant to centroid along the edge');
}
