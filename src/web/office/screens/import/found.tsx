import { useSignal } from '@preact/signals';
import { useLocation } from 'wouter-preact';
import type { JobReading } from '../../../../files/job-reading.ts';
import type { JobFile } from '../../../../job/documents/job-file.ts';
import { takeState } from '../../../../job/edit/take-state.ts';
import { Button } from '../../../parts/button.tsx';
import { tellCall } from '../../../parts/call.ts';
import { Notice } from '../../../parts/notice.tsx';
import { askJobWorker } from '../../../parts/worker-client.ts';
import { addresses } from '../../state/addresses.ts';
import { tell } from '../../state/messages.ts';
import { calls } from '../../state/office-calls.ts';
import type { JobSession } from '../../state/session.ts';
import { useAsked } from '../../state/use-asked.ts';
import styles from './import.module.css';
import type { ImportWork } from './import-work.ts';

function listCounts({ job, library }: JobFile): readonly (readonly [number, string, string])[] {
  return [
    [job.panels.length, 'panel', 'panels'],
    [job.castIns.length, 'cast-in item', 'cast-in items'],
    [job.connections.length, 'connection', 'connections'],
    [library.catalogue.items.length, 'type in the catalogue', 'types in the catalogue'],
    [job.pours.length, 'pour', 'pours'],
  ];
}

/** A sound job was read: what is in it, what was assumed, and the next step. */
export function Found({
  work,
  reading,
  into,
}: {
  readonly work: ImportWork;
  readonly reading: JobReading & { readonly ok: true };
  readonly into: JobSession | null;
}) {
  const [, go] = useLocation();
  const failed = useSignal<string | null>(null);
  const isBusy = useSignal(false);
  const { file, assumptions } = reading;
  const { name, number } = file.job.project;
  const makeJob = async () => {
    isBusy.value = true;
    const called = await calls.createJob(file);
    isBusy.value = false;
    failed.value = tellCall(called);
    if (called.kind !== 'answered') return;
    work.clear();
    go(addresses.panels(called.value.id));
  };
  const takeIn = (session: JobSession) => {
    const names = work.files.value.map((one) => one.name).join(', ');
    failed.value = session.commit(`Read from files: ${names}`.slice(0, 400), (draft) => takeState(draft, file));
    if (failed.value !== null) return;
    work.clear();
    tell('good', 'The job is as the files say.', { text: 'Undo', run: () => session.undo() });
    go(addresses.panels(session.id));
  };
  return (
    <section class={styles.found} aria-label="What was found">
      <h2>{number === null ? name : `${number} ${name}`}</h2>
      <ul class={styles.counts}>
        {listCounts(file).map(([count, one, many]) => (
          <li key={many}>
            <strong>{count}</strong> {count === 1 ? one : many}
          </li>
        ))}
      </ul>
      <p>
        Checked by {file.library.rules.standard}. No fault was found in reading; whether each connection holds is
        computed when the job is open.
      </p>
      {assumptions.length > 0 && (
        <div>
          <h3>Taken where the files say nothing</h3>
          <ul class={styles.assumptions}>
            {assumptions.map((text) => (
              <li key={text}>{text}</li>
            ))}
          </ul>
        </div>
      )}
      {into !== null && <AgainstJob job={into} file={file} />}
      {failed.value !== null && <Notice kind="fault">{failed.value}</Notice>}
      <div class={styles.buttons}>
        {into !== null && (
          <Button kind="main" isDisabled={work.isStale.value} onPress={() => takeIn(into)}>
            Take it into this job
          </Button>
        )}
        <Button
          kind={into === null ? 'main' : 'plain'}
          isDisabled={isBusy.value || work.isStale.value}
          onPress={() => void makeJob()}
        >
          {into === null ? 'Make a job of it' : 'Make a job of its own of it'}
        </Button>
        <Button kind="quiet" onPress={() => work.clear()}>
          Leave it
        </Button>
      </div>
    </section>
  );
}

/** In what the files differ from the open job. */
function AgainstJob({ job, file }: { readonly job: JobSession; readonly file: JobFile }) {
  const asked = useAsked(
    () => askJobWorker((worker) => worker.compare(job.id, { kind: 'draft' }, { kind: 'file', file })),
    [file],
  );
  return (
    <p>
      <strong>Against the job as it stands:</strong> {asked.value?.summary ?? asked.why ?? '…'}
    </p>
  );
}
