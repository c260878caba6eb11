import { describeType } from '../../../../drawing/sheets/words.ts';
import type { Person } from '../../../../records/person.ts';
import styles from './sheet.module.css';
import {
  columnsOf,
  isLengthText,
  readSightKey,
  type SheetCell,
  type SheetRow,
  type Step,
  stepFrom,
} from './sheet-cells.ts';
import { SHEET_PARTS, type SheetDraft, type SheetPart } from './sheet-draft.ts';
import { SheetHead } from './sheet-head.tsx';

const TITLES: Readonly<Record<SheetPart, string>> = {
  'stage 1': '1 – before the cage',
  'stage 2': '2 – before the pour',
  screed: '3 – after screeding',
};

export interface SheetGridProps {
  readonly rows: readonly SheetRow[];
  readonly draft: SheetDraft;
  readonly people: readonly Person[];
  /** Boxes that something is wrong with. */
  readonly faults: ReadonlySet<string>;
  readonly onCell: (name: string, text: string) => void;
  readonly onDraft: (draft: SheetDraft) => void;
  readonly goTo: (name: string) => void;
  /** After the last box. */
  readonly onEnd: () => void;
}

const ARROWS: Readonly<Record<string, Step>> = {
  ArrowUp: 'up',
  ArrowDown: 'down',
  ArrowLeft: 'before',
  ArrowRight: 'next',
  Enter: 'next',
};

/** An arrow sideways leaves a box of digits only where the caret can go no further. */
function leaves(input: HTMLInputElement, key: string): boolean {
  if (key === 'ArrowLeft') return input.selectionEnd === 0 || input.selectionStart !== input.selectionEnd;
  if (key === 'ArrowRight') return input.selectionEnd === input.value.length;
  return true;
}

/** The boxes of the sheet in its own order, as a grid for the keyboard. What should be there is not shown: what is on the paper counts. */
export function SheetGrid({ rows, draft, people, faults, onCell, onDraft, goTo, onEnd }: SheetGridProps) {
  const text = (name: string) => draft.cells[name] ?? '';
  const step = (name: string, way: Step) => {
    const next = stepFrom(rows, name, way);
    if (next !== null) goTo(next);
    else if (way === 'next') onEnd();
  };
  const press = (
    row: SheetRow,
    cell: SheetCell,
    event: KeyboardEvent & { readonly currentTarget: HTMLInputElement },
  ) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const way = ARROWS[event.key];
    if (way !== undefined && leaves(event.currentTarget, event.key)) {
      event.preventDefault();
      return step(cell.name, way);
    }
    if (event.key === 'Backspace' && text(cell.name) === '') {
      event.preventDefault();
      return step(cell.name, 'before');
    }
    if (cell.kind === 'length' || event.key.length > 1) return;
    // Nothing but an answer goes into a box of yes or no.
    event.preventDefault();
    const answer = readSightKey(event.key);
    if (answer === null) return;
    if (answer !== 'all') {
      onCell(cell.name, answer);
      return step(cell.name, 'next');
    }
    const sights = row.cells.filter(({ kind }) => kind === 'sight');
    const cells = { ...draft.cells, ...Object.fromEntries(sights.map(({ name }) => [name, 'y'])) };
    onDraft({ ...draft, cells });
    step(sights.at(-1)?.name ?? cell.name, 'next');
  };
  const box = (row: SheetRow, cell: SheetCell) => (
    <input
      type="text"
      class={cell.kind === 'sight' ? styles.sight : styles.length}
      data-cell={cell.name}
      data-answer={cell.kind === 'sight' ? text(cell.name) : undefined}
      aria-label={cell.says}
      aria-invalid={faults.has(cell.name)}
      inputMode={cell.kind === 'length' ? 'decimal' : 'text'}
      autocomplete="off"
      value={text(cell.name)}
      onKeyDown={(event) => press(row, cell, event)}
      onFocus={({ currentTarget }) => currentTarget.select()}
      onInput={({ currentTarget }) => {
        const typed = currentTarget.value.replace(',', '.').replace('−', '-');
        const fits = cell.kind === 'length' ? isLengthText(typed) : /^[yn]?$/.test(typed);
        if (fits) onCell(cell.name, typed);
        // What does not fit goes out of the field again.
        else currentTarget.value = text(cell.name);
      }}
    />
  );
  const form = rows.filter(({ part }) => part === 'form');
  return (
    <>
      <fieldset class={styles.form}>
        <legend>0 – the form itself</legend>
        {form.map((row) =>
          row.cells.map((cell) => (
            <div key={cell.name} class={styles.measure}>
              <span aria-hidden="true">{cell.says.replace('form, ', '')}</span>
              {box(row, cell)}
            </div>
          )),
        )}
      </fieldset>
      {SHEET_PARTS.map((part) => {
        const own = rows.filter((row) => row.part === part);
        if (own.length === 0) return null;
        return (
          <section key={part} class={styles.part}>
            <h2>{TITLES[part]}</h2>
            {part !== 'stage 1' && <SheetHead draft={draft} part={part} people={people} onChange={onDraft} />}
            <table class={styles.grid}>
              <thead>
                <tr>
                  <th scope="col">no.</th>
                  <th scope="col">insert</th>
                  {columnsOf(part).map((column) => (
                    <th key={column} scope="col" class={styles.column}>
                      {column === 'level ok' ? 'level' : column}
                    </th>
                  ))}
                </tr>
              </thead>
              <tbody>
                {own.map((row) => (
                  <tr key={row.item?.castIn.key}>
                    <th scope="row">{row.item?.number}</th>
                    <td class={styles.kind}>{row.item === null ? '' : describeType(row.item)}</td>
                    {row.cells.map((cell) => (
                      <td key={cell.name}>{box(row, cell)}</td>
                    ))}
                  </tr>
                ))}
              </tbody>
            </table>
          </section>
        );
      })}
    </>
  );
}
