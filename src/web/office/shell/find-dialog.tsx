import { useSignal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import { useLocation } from 'wouter-preact';
import type { JobFile } from '../../../job/documents/job-file.ts';
import { Dialog } from '../../parts/dialog.tsx';
import { addresses } from '../state/addresses.ts';
import type { JobSession } from '../state/session.ts';
import styles from './find-dialog.module.css';

interface Found {
  readonly kind: string;
  readonly name: string;
  readonly more: string;
  readonly to: string;
}

/** As many as are shown at once. */
const SHOWN = 12;

function list(job: string, { job: { panels, connections, pours }, library }: JobFile): readonly Found[] {
  return [
    ...panels.map(({ mark }) => ({ kind: 'panel', name: mark, more: '', to: addresses.panel(job, mark) })),
    ...connections.map(({ mark, panel }) => ({
      kind: 'connection',
      name: mark,
      more: `on ${panel}`,
      to: addresses.connection(job, mark),
    })),
    ...pours.map(({ id, date }) => ({ kind: 'pour', name: id, more: date, to: addresses.pour(job, id) })),
    ...library.catalogue.items.map(({ id, name }) => ({
      kind: 'insert type',
      name: id,
      more: name,
      to: addresses.catalogueItem(job, id),
    })),
  ];
}

/** Goes to anything in the job by its name. */
export function FindDialog({ session, onClose }: { readonly session: JobSession; readonly onClose: () => void }) {
  const [, go] = useLocation();
  const typed = useSignal('');
  const at = useSignal(0);
  const input = useRef<HTMLInputElement>(null);
  useEffect(() => input.current?.focus(), []);
  const words = typed.value.trim().toLowerCase();
  const all = list(session.id, session.file).filter(({ kind, name, more }) =>
    `${name} ${kind} ${more}`.toLowerCase().includes(words),
  );
  // What begins with what was typed comes first.
  const found = [
    ...all.filter(({ name }) => name.toLowerCase().startsWith(words)),
    ...all.filter(({ name }) => !name.toLowerCase().startsWith(words)),
  ].slice(0, SHOWN);
  const open = (one: Found | undefined) => {
    if (one === undefined) return;
    onClose();
    go(one.to);
  };
  const step = (by: number) => {
    at.value = Math.max(0, Math.min(found.length - 1, at.value + by));
  };
  return (
    <Dialog title="Find" onClose={onClose}>
      <input
        ref={input}
        class={styles.input}
        type="text"
        autocomplete="off"
        role="combobox"
        aria-label="Panel, connection, pour or insert type"
        aria-expanded="true"
        aria-controls="found"
        aria-activedescendant={`found-${at.value}`}
        placeholder="P04, C12, M16 …"
        value={typed.value}
        onInput={(event) => {
          typed.value = event.currentTarget.value;
          at.value = 0;
        }}
        onKeyDown={(event) => {
          if (event.key === 'ArrowDown') step(1);
          else if (event.key === 'ArrowUp') step(-1);
          else if (event.key === 'Enter') open(found[at.value]);
          else return;
          event.preventDefault();
        }}
      />
      <div id="found" role="listbox" aria-label="Found">
        {found.map((one, k) => (
          <div
            key={one.to}
            id={`found-${k}`}
            role="option"
            tabIndex={-1}
            aria-selected={k === at.value}
            class={styles.found}
            onClick={() => open(one)}
            onKeyDown={(event) => event.key === 'Enter' && open(one)}
          >
            <strong>{one.name}</strong>
            <span>{one.more}</span>
            <span class={styles.kind}>{one.kind}</span>
          </div>
        ))}
        {found.length === 0 && <p>Nothing in this job has that name. Try a part of a mark, such as P0.</p>}
      </div>
    </Dialog>
  );
}
