import { useEffect, useRef } from 'preact/hooks';
import { Link, useLocation } from 'wouter-preact';
import { Button } from '../../parts/button.tsx';
import { addresses } from '../state/addresses.ts';
import type { Office } from '../state/office.ts';
import styles from './head.module.css';
import { ProductSign } from './product-sign.tsx';

/** Screens of a job in the order of the work. `also`: addresses that belong to the first one's screen. */
function listScreens(job: string) {
  return [
    {
      name: 'Panels',
      to: addresses.panels(job),
      also: [`/job/${job}/panel/`, `/job/${job}/connection/`, addresses.readFilesInto(job)],
    },
    { name: 'Details', to: addresses.details(job), also: [] },
    { name: 'Catalogue', to: addresses.catalogue(job), also: [] },
    { name: 'Rules', to: addresses.rules(job), also: [] },
    { name: 'Pours', to: addresses.pours(job), also: [] },
    { name: 'Parts', to: addresses.parts(job), also: [] },
    { name: 'Yard', to: addresses.yard(job), also: [] },
    { name: 'Learned', to: addresses.learned(job), also: [] },
    { name: 'Revisions', to: addresses.revisions(job), also: [addresses.transmittal(job)] },
  ];
}

/** The row above every screen of a job. */
export function Head({
  office: { session },
  onFind,
  onKeys,
}: {
  readonly office: Office;
  readonly onFind: () => void;
  readonly onKeys: () => void;
}) {
  const [location] = useLocation();
  const { done, undone } = session.history.stacks.value;
  const screens = useRef<HTMLElement>(null);
  // On a narrow screen the row is longer than there is room for.
  useEffect(() => {
    const row = screens.current;
    const here = row?.querySelector<HTMLElement>('[aria-current]');
    if (row !== null && here)
      row.scrollLeft = here.offsetLeft + here.offsetWidth / 2 - row.offsetLeft - row.clientWidth / 2;
  }, [location]);
  const last = done.at(-1);
  const next = undone.at(-1);
  return (
    <header class={`${styles.head} not-printed`}>
      <Link class={styles.home} href={addresses.jobs()} aria-label="Onepour: all jobs">
        <ProductSign />
        <span class={styles.name}>Onepour</span>
      </Link>
      <nav ref={screens} class={styles.screens} aria-label="Screens of the job">
        {listScreens(session.id).map(({ name, to, also }) => {
          const isHere = location.startsWith(to) || also.some((start) => location.startsWith(start));
          return (
            <Link key={name} class={styles.screen} href={to} aria-current={isHere ? 'page' : undefined}>
              {name}
            </Link>
          );
        })}
      </nav>
      <div class={styles.tools}>
        <Button
          kind="quiet"
          name={last === undefined ? 'Undo' : `Undo: ${last.label}`}
          shortcut="Ctrl+Z"
          isDisabled={last === undefined}
          onPress={() => session.undo()}
        >
          <svg viewBox="0 0 16 16" class={styles.icon} aria-hidden="true">
            <path d="M6 3L2.5 6.5L6 10M3 6.5h6.5a3.5 3.5 0 0 1 0 7H6" />
          </svg>
        </Button>
        <Button
          kind="quiet"
          name={next === undefined ? 'Redo' : `Redo: ${next.label.replace(/^(Undone: )+/, '')}`}
          shortcut="Ctrl+Shift+Z"
          isDisabled={next === undefined}
          onPress={() => session.redo()}
        >
          <svg viewBox="0 0 16 16" class={styles.icon} aria-hidden="true">
            <path d="M10 3l3.5 3.5L10 10M13 6.5H6.5a3.5 3.5 0 0 0 0 7H10" />
          </svg>
        </Button>
        <Button kind="quiet" name="Find a panel, connection or insert type" shortcut="Ctrl+K" onPress={onFind}>
          <svg viewBox="0 0 16 16" class={styles.icon} aria-hidden="true">
            <path d="M6.5 11a4.5 4.5 0 1 0 0-9a4.5 4.5 0 0 0 0 9M10 10l4 4" />
          </svg>
        </Button>
        <Button kind="quiet" name="Keys" shortcut="?" onPress={onKeys}>
          ?
        </Button>
      </div>
    </header>
  );
}
