import { useSignal } from '@preact/signals';
import type { ConnectionAnswer } from '../../../../assess/connection-answer.ts';
import { Button } from '../../../parts/button.tsx';
import { Dialog } from '../../../parts/dialog.tsx';
import { download, fileNameOf } from '../../../parts/download.ts';
import { Notice } from '../../../parts/notice.tsx';
import { askJobWorker } from '../../../parts/worker-client.ts';
import type { JobSession } from '../../state/session.ts';
import { tellError } from '../../state/use-asked.ts';
import styles from './export-dialog.module.css';

const CSV = 'text/csv';

/** The job as files. */
export function ExportDialog({
  session,
  answers,
  onClose,
}: {
  readonly session: JobSession;
  readonly answers: ReadonlyMap<string, ConnectionAnswer>;
  readonly onClose: () => void;
}) {
  const failed = useSignal<string | null>(null);
  const schedules = useSignal<readonly (readonly [string, string])[] | null>(null);
  const { job } = session.file;
  const name = fileNameOf(
    `${job.project.number ?? job.project.name}${job.revision === null ? '' : `-${job.revision.letter}`}`,
  );
  const missing = job.connections.filter(({ key }) => !answers.has(key)).length;
  const attempt = async (what: () => Promise<void>) => {
    try {
      await what();
      failed.value = null;
    } catch (error) {
      failed.value = tellError(error);
    }
  };
  const saveJob = () =>
    attempt(async () =>
      download(`${name}.json`, await askJobWorker((worker) => worker.writeJob()), 'application/json'),
    );
  const writeAll = () =>
    attempt(async () => {
      schedules.value = await askJobWorker((worker) => worker.writeSchedules());
    });
  const saveResults = () =>
    attempt(async () => {
      const found = job.connections.flatMap(({ key }) => answers.get(key) ?? []);
      download(`${name}-results.csv`, await askJobWorker((worker) => worker.writeResults(found)), CSV);
    });
  return (
    <Dialog title="Export" onClose={onClose}>
      {failed.value !== null && <Notice kind="fault">{failed.value}</Notice>}
      <section class={styles.part}>
        <h3>The whole job in one file</h3>
        <p>JSON, with its library: opens anywhere and gives the same answers.</p>
        <Button kind="main" onPress={() => void saveJob()}>
          {name}.json
        </Button>
      </section>
      <section class={styles.part}>
        <h3>Schedules for a spreadsheet</h3>
        <p>
          CSV, a file each, to go on in a spreadsheet and to be read in again. Keep them together in a folder of their
          own.
        </p>
        {schedules.value === null ? (
          <Button onPress={() => void writeAll()}>Write the schedules</Button>
        ) : (
          <div class={styles.files}>
            {schedules.value.map(([file, text]) => (
              <Button key={file} onPress={() => download(file, text, file.endsWith('.csv') ? CSV : 'application/json')}>
                {file}
              </Button>
            ))}
            <Button
              kind="main"
              onPress={() => {
                for (const [file, text] of schedules.value ?? []) download(file, text, CSV);
              }}
            >
              All {schedules.value.length} files
            </Button>
          </div>
        )}
      </section>
      <section class={styles.part}>
        <h3>Results of every connection</h3>
        <p>CSV: state, ratio, what governs, combination, inserts, reasons. Results of today, never read back.</p>
        <Button isDisabled={missing > 0} onPress={() => void saveResults()}>
          {missing > 0 ? `${missing} being computed …` : `${name}-results.csv`}
        </Button>
      </section>
    </Dialog>
  );
}
