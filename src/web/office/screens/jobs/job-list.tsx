import { Link } from 'wouter-preact';
import type { JobHead } from '../../../../wire/jobs.ts';
import { Button } from '../../../parts/button.tsx';
import { addresses } from '../../state/addresses.ts';
import { writeMoment } from '../../state/write-moment.ts';
import styles from './jobs.module.css';

const count = (number: number, one: string) => `${number} ${one}${number === 1 ? '' : 's'}`;

/** What is issued, and under which letter the draft goes on. */
function tellRevision({ revision, issued }: JobHead): string {
  if (issued === null)
    return revision === null ? 'nothing issued' : `${revision.letter} ${revision.status}, not issued here`;
  const draft = revision === null || revision.letter === issued ? '' : `; draft of ${revision.letter}`;
  return `${issued} issued${draft}`;
}

/** Jobs, saved last first. */
export function JobList({
  jobs,
  onRemove,
}: {
  readonly jobs: readonly JobHead[];
  readonly onRemove: (job: JobHead) => void;
}) {
  return (
    <ul aria-label="Jobs">
      {jobs.map((job) => (
        <li key={job.id} class={styles.job}>
          <Link class={styles.open} href={addresses.panels(job.id)}>
            <span class={styles.number}>{job.number ?? ''}</span>
            <strong class={styles.name}>{job.name}</strong>
            <span class={styles.size}>
              {count(job.panels, 'panel')}, {count(job.connections, 'connection')}
            </span>
            <span class={styles.revision}>{tellRevision(job)}</span>
            <span class={styles.saved}>saved {writeMoment(job.savedAt)}</span>
          </Link>
          <Button kind="quiet" name={`Remove ${job.name}`} onPress={() => onRemove(job)}>
            Remove
          </Button>
        </li>
      ))}
    </ul>
  );
}
