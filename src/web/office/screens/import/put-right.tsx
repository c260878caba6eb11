import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { JobReading } from '../../../../files/job-reading.ts';
import type { Fault } from '../../../../job/fault.ts';
import { Button } from '../../../parts/button.tsx';
import { Notice } from '../../../parts/notice.tsx';
import { Sign } from '../../../parts/signs.tsx';
import { useCommands } from '../../state/commands.ts';
import { CellTable } from './cell-table.tsx';
import styles from './import.module.css';
import type { ImportWork } from './import-work.ts';
import { TextEditor } from './text-editor.tsx';

/** Where a fault stands, in a few words. */
function placeOf({ file, row, column, path }: Fault): string {
  const place = [
    ...(file === '' ? [] : [file]),
    ...(row === undefined ? [] : [`row ${row}`]),
    ...(column === undefined ? [] : [`column ${column}`]),
    ...(row === undefined && path !== '' ? [path] : []),
  ];
  return place.length === 0 ? 'the files' : place.join(', ');
}

/** What is wrong, without the place in front. */
function sayFault({ message }: Fault): string {
  const colon = message.indexOf(': ');
  return colon < 0 ? message : message.slice(colon + 2);
}

/** Faults one by one, each with the file that it is in, to be put right where it stands. */
export function PutRight({
  work,
  reading,
}: {
  readonly work: ImportWork;
  readonly reading: JobReading & { readonly ok: false };
}) {
  const at = useSignal(0);
  const { faults } = reading;
  useEffect(() => {
    at.value = 0;
  }, [reading]);
  const fault = faults[Math.min(at.value, faults.length - 1)];
  const step = (by: number) => {
    at.value = (at.value + by + faults.length) % faults.length;
  };
  useCommands('Faults of files', [
    { name: 'Next fault', key: 'F8', isEverywhere: true, run: () => step(1) },
    { name: 'Fault before', key: 'Shift+F8', isEverywhere: true, run: () => step(-1) },
    { name: 'Read again', key: 'Ctrl+Enter', isEverywhere: true, run: () => void work.readAgain() },
  ]);
  if (fault === undefined) return null;
  const isStale = work.isStale.value;
  const file = work.files.value.find(({ name }) => name === fault.file || name.toLowerCase() === fault.file);
  const again = (
    <Button
      kind={isStale ? 'main' : 'plain'}
      shortcut="Ctrl+Enter"
      name="Read again"
      onPress={() => void work.readAgain()}
    >
      Read again
    </Button>
  );
  return (
    <section class={styles.putRight} aria-label="What is wrong">
      <div class={styles.walk}>
        <div class={styles.now} role="status">
          <strong>
            Fault {at.value + 1} of {faults.length}
            {reading.isCutShort === true ? ' so far' : ''}
          </strong>
          <span class="aloud">: {placeOf(fault)}</span>
        </div>
        <div class={styles.buttons}>
          <Button shortcut="Shift+F8" name="Fault before" onPress={() => step(-1)}>
            <Sign name="before" /> before
          </Button>
          <Button shortcut="F8" name="Next fault" onPress={() => step(1)}>
            next <Sign name="next" />
          </Button>
          {again}
        </div>
      </div>
      <Notice kind="fault" title={placeOf(fault)}>
        <p>{sayFault(fault)}</p>
        <dl class={styles.facts}>
          <dt>Written</dt>
          <dd>{fault.value === '' ? 'nothing' : fault.value}</dd>
          <dt>Expected</dt>
          <dd>{fault.expected}</dd>
        </dl>
      </Notice>
      {isStale && <p class={styles.stale}>Typed since it was read: read again to see what is left.</p>}
      {reading.isCutShort === true && (
        <p class={styles.faint}>
          Headings, rows or files are missing or cannot be told apart, so what depends on them was not looked at yet.
        </p>
      )}
      {file === undefined ? null : file.grid === null ? (
        <TextEditor key={file.name} work={work} file={file} />
      ) : (
        <CellTable
          key={file.name}
          work={work}
          name={file.name}
          grid={file.grid}
          faults={faults.filter((one) => one.file === fault.file)}
          current={fault}
          onFault={(one) => {
            at.value = faults.indexOf(one);
          }}
        />
      )}
      <h2>All faults</h2>
      <ol class={styles.all}>
        {faults.map((one, k) => (
          <li key={one.message}>
            <button
              type="button"
              class={styles.fault}
              aria-current={k === at.value ? 'true' : undefined}
              onClick={() => {
                at.value = k;
              }}
            >
              <strong>{placeOf(one)}</strong>
              <span>{sayFault(one)}</span>
            </button>
          </li>
        ))}
      </ol>
    </section>
  );
}
