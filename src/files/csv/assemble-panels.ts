import { isRecord } from '../../job/json-record.ts';
import { type Assembly, copyFromRest, fillKey } from './assembly.ts';
import { insertSchedule, panelSchedule } from './columns.ts';
import { type Draft, fillRecord } from './records.ts';
import { REST_FILE } from './rest.ts';
import { type Row, type Table, tableFault } from './table.ts';

/** Panels from panels.csv and job.json, with the concretes that they name or bring. */
export function assemblePanels(table: Table, assembly: Assembly): { panels: Draft[]; concretes: unknown[] } {
  const { rest, sources, faults } = assembly;
  const concretes: unknown[] = [...rest.concretes];
  if (table.rows.length === 0) {
    faults.push(
      tableFault(table.file, 2, null, '', 'at least one panel', 'there is no panel; expected at least one row'),
    );
    sources.silence(['job', 'panels']);
  }
  for (let i = 0; i < concretes.length; i++) {
    sources.add(['job', 'concretes', i], { file: REST_FILE, path: ['concretes', i] });
  }
  const made = new Set<string>();
  const panels = table.rows.map((row, i) => {
    const path = ['job', 'panels', i];
    const draft = fillRecord(panelSchedule, row, path, sources);
    fillKey(draft, `panel ${draft.mark}`, assembly);
    addOutline(draft, row, path, assembly);
    const strength = row.cells.get('strength_MPa');
    if ((strength === undefined) === (draft.concrete === undefined)) {
      const text =
        strength === undefined
          ? 'neither strength_MPa nor concrete is given'
          : 'both strength_MPa and concrete are given';
      if (!row.wrong.has('strength_MPa'))
        faults.push(
          tableFault(
            table.file,
            row.number,
            'strength_MPa',
            String(strength ?? ''),
            'one of the two',
            `${text}; expected one of the two`,
          ),
        );
      sources.silence([...path, 'concrete']);
    } else if (typeof strength === 'number') {
      draft.concrete = `${strength} MPa`;
      if (!made.has(draft.concrete as string)) {
        // safe: set as a text just above
        made.add(draft.concrete as string); // safe: as above
        sources.add(['job', 'concretes', concretes.length], {
          file: table.file,
          row: row.number,
          column: 'strength_MPa',
        });
        concretes.push({ id: draft.concrete, strength28_MPa: strength });
      }
    }
    const more = typeof draft.mark === 'string' ? rest.panels[draft.mark] : undefined;
    for (const key of ['zones', 'edges', 'reinforcement'] as const) {
      copyFromRest(draft, key, more?.[key], path, ['panels', String(draft.mark)], sources);
    }
    return draft;
  });
  // Without any, each panel's own strength is already reported, or there is no panel.
  if (concretes.length === 0) sources.silence(['job', 'concretes']);
  return { panels, concretes };
}

/** The outline from its corners, or a rectangle from length and height. */
function addOutline(draft: Draft, row: Row, path: readonly (string | number)[], { sources, faults }: Assembly): void {
  const length = row.cells.get('length_mm');
  const height = row.cells.get('height_mm');
  const isRectangle = length !== undefined || height !== undefined;
  if (draft.outline_mm !== undefined) {
    if (!isRectangle) return;
    const column = length === undefined ? 'height_mm' : 'length_mm';
    faults.push(
      tableFault(
        panelSchedule.file,
        row.number,
        column,
        String(length ?? height),
        'an outline, or length and height',
        'the panel has an outline as well; expected one of the two',
      ),
    );
  } else if (typeof length === 'number' && typeof height === 'number') {
    draft.outline_mm = [
      [0, 0],
      [length, 0],
      [length, height],
      [0, height],
    ];
    sources.add([...path, 'outline_mm'], { file: panelSchedule.file, row: row.number, column: 'length_mm' });
  } else {
    sources.silence([...path, 'outline_mm']);
    if (['outline_mm', 'length_mm', 'height_mm'].some((column) => row.wrong.has(column))) return;
    const column = length === undefined ? 'length_mm' : 'height_mm';
    const text = 'the size of the panel is not given; expected length_mm and height_mm, or outline_mm';
    const expected = 'length and height, or an outline';
    faults.push(tableFault(panelSchedule.file, row.number, column, '', expected, text));
  }
}

/** Gives the room of a cast-in item its kind: round from a diameter, a box from width and height. */
function nameSize(draft: Draft, row: Row, path: readonly (string | number)[], { sources, faults }: Assembly): void {
  if (!isRecord(draft.size)) return;
  const isRound = draft.size.diameter_mm !== undefined;
  draft.size = { kind: isRound ? 'round' : 'box', ...draft.size };
  const extra = ['width_mm', 'height_mm'].filter((key) => isRound && row.cells.has(`size_${key}`));
  for (const key of extra) {
    sources.silence([...path, 'size', key]);
    const column = `size_${key}`;
    const text = 'a diameter is given as well; expected a diameter, or width and height';
    faults.push(
      tableFault(insertSchedule.file, row.number, column, String(row.cells.get(column)), 'an empty cell', text),
    );
  }
}

/** Cast-in items from inserts.csv. */
export function assembleCastIns(table: Table, assembly: Assembly): Draft[] {
  return table.rows.map((row, i) => {
    const path = ['job', 'castIns', i];
    const draft = fillRecord(insertSchedule, row, path, assembly.sources);
    fillKey(draft, `insert ${JSON.stringify([draft.panel, draft.id])}`, assembly);
    nameSize(draft, row, path, assembly);
    return draft;
  });
}
