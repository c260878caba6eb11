import { useSignal } from '@preact/signals';
import { useEffect, useMemo, useRef } from 'preact/hooks';
import type { Grid } from '../../../../files/csv/grid.ts';
import type { Fault } from '../../../../job/fault.ts';
import { CheckField } from '../../../parts/field.tsx';
import { useVirtualRows } from '../../../parts/virtual-rows.ts';
import styles from './cell-table.module.css';
import type { ImportWork } from './import-work.ts';

/** Height of a row [px]; the styles keep to it. */
const ROW_HEIGHT = 40;

/** Faults by the row and the place of the column in it; -1: the row as a whole. */
function placeFaults(faults: readonly Fault[], heading: readonly string[]): ReadonlyMap<string, Fault> {
  const placed = new Map<string, Fault>();
  for (const fault of faults) {
    const { row = 1, column } = fault;
    const place = column === undefined ? -1 : heading.indexOf(column);
    const key = `${row} ${place}`;
    if (!placed.has(key)) placed.set(key, fault);
  }
  return placed;
}

/** A schedule as cells: what is wrong is marked by shape and words, and can be typed anew. */
export function CellTable({
  work,
  name,
  grid,
  faults,
  current,
  onFault,
}: {
  readonly work: ImportWork;
  readonly name: string;
  readonly grid: Grid;
  readonly faults: readonly Fault[];
  readonly current: Fault;
  readonly onFault: (fault: Fault) => void;
}) {
  const isWhole = useSignal(false);
  const scroller = useRef<HTMLDivElement>(null);
  const body = useRef<HTMLTableSectionElement>(null);
  const heading = grid.rows[0] ?? [];
  const width = Math.max(...grid.rows.map((row) => row.length));
  const placed = useMemo(() => placeFaults(faults, heading), [faults, heading]);
  // From the reading, not from what is typed: a row stays while it is being put right.
  const wrong = useMemo(
    () => [...new Set(faults.map(({ row = 1 }) => row))].sort((a, b) => a - b).filter((row) => row > 1),
    [faults],
  );
  const numbers = isWhole.value || wrong.length === 0 ? grid.rows.slice(1).map((_, k) => k + 2) : wrong;
  const { rows, before, after, show } = useVirtualRows({
    count: numbers.length,
    rowHeight: ROW_HEIGHT,
    scroller: () => scroller.current,
    list: body,
  });
  const currentCell = `${current.row ?? 1} ${current.column === undefined ? 0 : Math.max(0, heading.indexOf(current.column))}`;
  useEffect(() => {
    const k = numbers.indexOf(current.row ?? 1);
    if (k >= 0) show(k);
    const focus = () => {
      const cell = scroller.current?.querySelector<HTMLInputElement>(`[data-cell="${currentCell}"]`);
      cell?.focus({ preventScroll: false });
      cell?.select();
    };
    // The row may have to be drawn first.
    const frame = requestAnimationFrame(() => requestAnimationFrame(focus));
    return () => cancelAnimationFrame(frame);
  }, [current]);

  const cell = (number: number, column: number, text: string) => {
    const fault = placed.get(`${number} ${column}`);
    const what = number === 1 ? `heading ${column + 1}` : `row ${number}, ${heading[column] ?? `cell ${column + 1}`}`;
    return (
      <div class={fault === undefined ? styles.cell : styles.wrong}>
        <input
          data-cell={`${number} ${column}`}
          value={text}
          aria-label={fault === undefined ? what : `${what}, wrong: expected ${fault.expected}`}
          aria-invalid={fault !== undefined}
          title={fault?.message}
          onFocus={() => fault !== undefined && fault !== current && onFault(fault)}
          onInput={(event) => work.typeCell(name, number - 1, column, event.currentTarget.value)}
        />
      </div>
    );
  };
  const columns = Array.from({ length: width }, (_, k) => k);
  return (
    <div class={styles.frame}>
      <div class={styles.head}>
        <h2>{name}</h2>
        {wrong.length > 0 && (
          <CheckField
            label={`All ${grid.rows.length - 1} rows`}
            isOn={isWhole.value}
            onChange={(isOn) => {
              isWhole.value = isOn;
            }}
          />
        )}
      </div>
      <div class={styles.scroller} ref={scroller}>
        <table class={styles.table} aria-label={`Cells of ${name}`}>
          <thead>
            <tr>
              <th scope="col">Row</th>
              {columns.map((k) => (
                <th key={k} scope="col">
                  {cell(1, k, heading[k] ?? '')}
                </th>
              ))}
            </tr>
          </thead>
          <tbody ref={body}>
            {before > 0 && <tr style={{ height: `${before}px` }} />}
            {rows.map((row) => {
              const number = numbers[row] ?? 2;
              const cells = grid.rows[number - 1] ?? [];
              const fault = placed.get(`${number} -1`);
              return (
                <tr key={number}>
                  <th scope="row" class={fault === undefined ? '' : styles.wrongRow} title={fault?.message}>
                    {number}
                    {fault !== undefined && <span class="aloud">, wrong: expected {fault.expected}</span>}
                  </th>
                  {columns.map((k) => (
                    <td key={k}>{cell(number, k, cells[k] ?? '')}</td>
                  ))}
                </tr>
              );
            })}
            {after > 0 && <tr style={{ height: `${after}px` }} />}
          </tbody>
        </table>
      </div>
    </div>
  );
}
