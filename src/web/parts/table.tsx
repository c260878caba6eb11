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
  stacks = false,
}: {
  /** Read aloud. */
  readonly caption: string;
  readonly columns: readonly Column<T>[];
  readonly rows: readonly T[];
  readonly keyOf: (row: T) => string;
  /** Where it changes from row to row, a line names it. */
  readonly groupOf?: (row: T) => string;
  /** On a narrow screen the cells of a row stand under each other: for words that nobody may miss because they lie to the side. */
  readonly stacks?: boolean;
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
  // What is no longer laid out as a table is read aloud as one all the same.
  const role = <Role extends string>(name: Role) => (stacks ? { role: name } : {});
  const classOf = ({ kind }: Column<T>) => (kind === undefined ? undefined : styles[kind]);
  return (
    <section ref={frame} class={styles.frame} aria-label={caption}>
      <table class={stacks ? `${styles.table} ${styles.stacks}` : styles.table} {...role('table')}>
        <caption class="aloud">{caption}</caption>
        <thead {...role('rowgroup')}>
          <tr {...role('row')}>
            {columns.map((column) => (
              <th key={column.head} scope="col" class={classOf(column)} {...role('columnheader')}>
                {column.head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody {...role('rowgroup')}>
          {rows.map((row, k) => {
            const group = groupOf?.(row);
            const before = rows[k - 1];
            const isNew = group !== undefined && (before === undefined || groupOf?.(before) !== group);
            return [
              isNew ? (
                <tr key={`group ${group}`} class={styles.group} {...role('row')}>
                  <th colSpan={columns.length} scope="colgroup" {...role('columnheader')}>
                    {group}
                  </th>
                </tr>
              ) : null,
              <tr key={keyOf(row)} {...role('row')}>
                {columns.map((column) =>
                  column.isName === true ? (
                    <th key={column.head} scope="row" class={classOf(column)} {...role('rowheader')}>
                      {column.cell(row)}
                    </th>
                  ) : (
                    <td key={column.head} class={classOf(column)} {...role('cell')}>
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
