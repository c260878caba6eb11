import type { Signal } from '@preact/signals';
import type { SetOutView } from '../../../../worker/set-out-view.ts';
import type { Asked } from '../../../state/use-asked.ts';
import type { PanelDesk } from '../desk/panel-desk.ts';
import { BarsTable } from './bars-table.tsx';
import { FormTable } from './form-table.tsx';
import { InsertsTable } from './inserts-table.tsx';
import { OutlineTable } from './outline-table.tsx';
import { SectionTable } from './section-table.tsx';
import styles from './tables.module.css';

const TABS = [
  { id: 'inserts', name: 'Inserts', Content: InsertsTable },
  { id: 'form', name: 'In the form', Content: FormTable },
  { id: 'outline', name: 'Outline and openings', Content: OutlineTable },
  { id: 'section', name: 'Section and edges', Content: SectionTable },
  { id: 'bars', name: 'Bars', Content: BarsTable },
] as const;

export type TabId = (typeof TABS)[number]['id'];

/** Everything of the panel as tables with fields, below the drawing. */
export function Tables({
  desk,
  open,
  setOut,
}: {
  readonly desk: PanelDesk;
  readonly open: Signal<TabId>;
  readonly setOut: Asked<SetOutView>;
}) {
  const at = TABS.findIndex(({ id }) => id === open.value);
  const { Content } = TABS[at]!;
  const step = (by: number) => {
    const next = TABS[(at + by + TABS.length) % TABS.length]!;
    open.value = next.id;
    document.getElementById(`tab-${next.id}`)?.focus();
  };
  return (
    <section class={styles.tables} aria-label="Tables of the panel">
      <div class={`${styles.tabs} not-printed`} role="tablist" aria-label="Tables of the panel">
        {TABS.map(({ id, name }) => (
          <button
            key={id}
            type="button"
            role="tab"
            id={`tab-${id}`}
            class={styles.tab}
            aria-selected={open.value === id}
            aria-controls="tab-content"
            tabIndex={open.value === id ? 0 : -1}
            onClick={({ currentTarget }) => {
              open.value = id;
              // The tables begin below what is in sight.
              currentTarget.scrollIntoView({ block: 'center' });
            }}
            onKeyDown={(event) => {
              if (event.key === 'ArrowRight') step(1);
              else if (event.key === 'ArrowLeft') step(-1);
              else return;
              event.preventDefault();
            }}
          >
            {name}
          </button>
        ))}
      </div>
      <div id="tab-content" role="tabpanel" aria-labelledby={`tab-${open.value}`} class={styles.content}>
        <Content desk={desk} setOut={setOut} />
      </div>
    </section>
  );
}
