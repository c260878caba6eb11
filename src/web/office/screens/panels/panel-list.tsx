import { useRef } from 'preact/hooks';
import type { ConnectionAnswer } from '../../../../assess/connection-answer.ts';
import type { PanelStatus } from '../../../../assess/panel-status.ts';
import { useWide } from '../../../parts/use-wide.ts';
import { useVirtualRows } from '../../../parts/virtual-rows.ts';
import { PanelRow } from './panel-row.tsx';
import styles from './panels.module.css';

/** Heights of a row [px], as the styles have them: beside each other, or stacked on a narrow screen. */
const ROW_HEIGHT = { wide: 92, narrow: 228 };

/** The panels, a row each; what is out of sight is not drawn. */
export function PanelList({
  job,
  rows,
  answers,
  onMore,
}: {
  readonly job: string;
  readonly rows: readonly PanelStatus[];
  readonly answers: ReadonlyMap<string, ConnectionAnswer>;
  readonly onMore: (mark: string) => void;
}) {
  const list = useRef<HTMLUListElement>(null);
  const isWide = useWide();
  const virtual = useVirtualRows({
    count: rows.length,
    rowHeight: isWide ? ROW_HEIGHT.wide : ROW_HEIGHT.narrow,
    scroller: () => document.getElementById('screen'),
    list,
  });
  const step = (from: EventTarget | null, by: number) => {
    const links = [...(list.current?.querySelectorAll<HTMLAnchorElement>('a[data-panel]') ?? [])];
    const at = from instanceof HTMLAnchorElement ? links.indexOf(from) : -1;
    const next = links[at + by];
    if (at < 0 || next === undefined) return false;
    next.focus();
    return true;
  };
  return (
    <div>
      <div class={styles.captions} aria-hidden="true">
        <span />
        <span>Panel</span>
        <span>Connections by state</span>
        <span>Highest ratio</span>
        <span>Next</span>
        <span />
      </div>
      <ul
        ref={list}
        class={styles.list}
        style={{ paddingTop: `${virtual.before}px`, paddingBottom: `${virtual.after}px` }}
        aria-label="Panels"
        onKeyDown={(event) => {
          const by = event.key === 'ArrowDown' ? 1 : event.key === 'ArrowUp' ? -1 : 0;
          if (by !== 0 && step(event.target, by)) event.preventDefault();
        }}
      >
        {virtual.rows.map((k) => {
          const row = rows[k];
          return row === undefined ? null : (
            <PanelRow
              key={row.panel.key}
              job={job}
              status={row}
              answers={answers}
              place={k + 1}
              count={rows.length}
              onMore={onMore}
            />
          );
        })}
      </ul>
    </div>
  );
}
