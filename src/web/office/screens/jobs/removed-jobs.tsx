import type { JobHead } from '../../../../wire/jobs.ts';
import { Button } from '../../../parts/button.tsx';
import { writeMoment } from '../../state/write-moment.ts';
import styles from './jobs.module.css';

/** Jobs that were taken out of the list; nothing of them is deleted. */
export function RemovedJobs({
  jobs,
  onRestore,
}: {
  readonly jobs: readonly JobHead[];
  readonly onRestore: (job: JobHead) => void;
}) {
  return (
    <details class={styles.removed}>
      <summary>{jobs.length === 1 ? '1 job was removed' : `${jobs.length} jobs were removed`}</summary>
      <ul>
        {jobs.map((job) => (
          <li key={job.id} class={styles.gone}>
            <span>
              {job.number} <strong>{job.name}</strong>
            </span>
            <span class={styles.saved}>saved last {writeMoment(job.savedAt)}</span>
            <Button name={`Put back ${job.name}`} onPress={() => onRestore(job)}>
              Put back
            </Button>
          </li>
        ))}
      </ul>
    </details>
  );
}
