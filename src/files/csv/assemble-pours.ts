import { type Assembly, copyFromRest } from './assembly.ts';
import { pieceColumns, pourColumns, pourSchedule } from './columns.ts';
import { type Draft, fillRecord } from './records.ts';
import { type Row, type Table, tableFault } from './table.ts';

/** What a row says of its pour otherwise than the pour's first row. */
function checkAlike(first: Row, row: Row, { faults }: Assembly): void {
  for (const { name } of pourColumns) {
    const said = first.cells.get(name);
    const found = row.cells.get(name);
    if (said === found || first.wrong.has(name) || row.wrong.has(name)) continue;
    const show = (value: unknown) => (value === undefined ? 'nothing' : String(value));
    const text = `${show(found)} here, but ${show(said)} in row ${first.number} of the same pour; expected the same in all rows of a pour`;
    faults.push(tableFault(pourSchedule.file, row.number, name, String(found ?? ''), show(said), text));
  }
}

/** Pours from pours.csv, one row a piece: rows with one name are one pour. Remarks are in job.json. */
export function assemblePours(table: Table, assembly: Assembly): Draft[] {
  const { file } = pourSchedule;
  const groups = new Map<unknown, Row[]>();
  for (const row of table.rows) {
    const id = row.cells.get('pour');
    const group = groups.get(id);
    if (group === undefined) groups.set(id, [row]);
    else group.push(row);
  }
  return [...groups.values()].map((rows, i) => {
    const path = ['job', 'pours', i];
    const first = rows[0]!; // a group has the row that made it
    const draft = fillRecord({ file, columns: pourColumns }, first, path, assembly.sources);
    for (const row of rows.slice(1)) checkAlike(first, row, assembly);
    draft.pieces = rows.map((row, k) =>
      fillRecord({ file, columns: pieceColumns }, row, [...path, 'pieces', k], assembly.sources),
    );
    const more = typeof draft.id === 'string' ? assembly.rest.pours[draft.id] : undefined;
    copyFromRest(draft, 'remarks', more?.remarks, path, ['pours', String(draft.id)], assembly.sources);
    return draft;
  });
}
