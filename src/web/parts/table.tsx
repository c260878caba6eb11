import type { ComponentChildren } from 'preact';
import { useLayoutEffect, useRef } from 'preact/hooks';
import styles from './table.module.css';

/** A column of a table: its head, and what stands in a cell. */
export interface Column<T> {
  readonly head: string;
  readonly cell: (row: T) => ComponentChildren;
  /** Numbers stand to the right; `wide`: words that want room; `short`: on one line. */
  readonly kind?: 'number' | 'wide' | 'short';
  /** Names its row. */
  readonly isName?: boolean;
}

/** Rows under heads; on a narrow screen the table moves sideways in its frame. */
export function Table<T>({
  caption,
  columns,
  rows,
  keyOf,
  groupOf,
}: {
  /** Read aloud. */
  readonly caption: string;
  readonly columns: readonly Column<T>[];
  readonly rows: readonly T[];
  readonly keyOf: (row: T) => string;
  /** Where it changes from row to row, a line names it. */
  readonly groupOf?: (row: T) => string;
}) {
  const frame = useRef<HTMLElement>(null);
  // What moves sideways must be reached by keyboard; what does not needs no stop.
  useLayoutEffect(() => {
    const box = frame.current;
    if (box === null) return;
    const follow = new ResizeObserver(() => {
      if (box.scrollWidth > box.clientWidth) box.tabIndex = 0;
      else box.removeAttribute('tabindex');
    });
    follow.observe(box);
    return () => follow.disconnect();
  }, []);
  const classOf = ({ kind }: Column<T>) => (kind === undefined ? undefined : styles[kind]);
  return (
    <section ref={frame} class={styles.frame} aria-label={caption}>
      <table class={styles.table}>
        <caption class="aloud">{caption}</caption>
        <thead>
          <tr>
            {columns.map((column) => (
              <th key={column.head} scope="col" class={classOf(column)}>
                {column.head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row, k) => {
            const group = groupOf?.(row);
            const before = rows[k - 1];
            const isNew = group !== undefined && (before === undefined || groupOf?.(before) !== group);
            return [
              isNew ? (
                <tr key={`group ${group}`} class={styles.group}>
                  <th colSpan={columns.length} scope="colgroup">
                    {group}
                  </th>
                </tr>
              ) : null,
              <tr key={keyOf(row)}>
                {columns.map((column) =>
                  column.isName === true ? (
                    <th key={column.head} scope="row" class={classOf(column)}>
                      {column.cell(row)}
                    </th>
                  ) : (
                    <td key={column.head} class={classOf(column)}>
                      {column.cell(row)}
                    </td>
                  ),
                )}
              </tr>,
            ];
          })}
        </tbody>
      </table>
    </section>
  );
}
