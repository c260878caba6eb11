import { useSignal } from '@preact/signals';
import { useLocation } from 'wouter-preact';
import { compareJobs } from '../../../job/difference/compare-jobs.ts';
import { describeDifference } from '../../../job/difference/describe-difference.ts';
import { summariseDifference } from '../../../job/difference/summarise-difference.ts';
import { Button } from '../../parts/button.tsx';
import { tellCall } from '../../parts/call.ts';
import { Dialog } from '../../parts/dialog.tsx';
import { Notice } from '../../parts/notice.tsx';
import { addresses } from '../state/addresses.ts';
import type { Conflict } from '../state/conflict.ts';
import { calls } from '../state/office-calls.ts';
import type { JobSession } from '../state/session.ts';
import { writeMoment } from '../state/write-moment.ts';
import styles from './conflict-dialog.module.css';

/** Where the own version is. */
function tellWhere({ kept, why }: Conflict): string {
  if (kept === 'on the server') return 'is kept on the server, under Revisions';
  if (kept === 'as a file') return 'is saved as a file';
  return why === null ? 'is on this device and is being kept on the server' : 'is on this device only';
}

/** Two people, or two windows, went on from the same state. Nothing is lost whatever is chosen here; so Escape chooses nothing. */
export function ConflictDialog({ session, conflict }: { readonly session: JobSession; readonly conflict: Conflict }) {
  const [, go] = useLocation();
  const isBusy = useSignal(false);
  const failed = useSignal<string | null>(null);
  const { theirs, mine, kept, why, isEarlier } = conflict;
  const difference = compareJobs(theirs.file, mine);
  const lines = describeDifference(difference);
  const act = async (what: () => Promise<void>) => {
    isBusy.value = true;
    try {
      await what();
    } finally {
      isBusy.value = false;
    }
  };
  const takeBoth = async () => {
    const { project } = mine.job;
    const name = `${project.name} (own version)`;
    const called = await calls.createJob({ ...mine, job: { ...mine.job, project: { ...project, name } } });
    if (called.kind !== 'answered') {
      failed.value = tellCall(called);
      return;
    }
    await session.takeTheirs();
    go(addresses.panels(called.value.id));
  };
  return (
    <Dialog
      title="Edited here and elsewhere"
      isWide
      onClose={null}
      foot={
        <>
          <Button isDisabled={isBusy.value} onPress={() => void act(() => session.takeTheirs())}>
            Go on with theirs
          </Button>
          <Button isDisabled={isBusy.value} onPress={() => void act(() => session.takeMine())}>
            Go on with mine
          </Button>
          <Button isDisabled={isBusy.value} onPress={() => void act(takeBoth)}>
            Keep both as two jobs
          </Button>
        </>
      }
    >
      <p>
        {isEarlier
          ? 'The server has an earlier state of the job than the one that this window went on from.'
          : 'While edits were made in this window, the job was edited in another one.'}{' '}
        Both versions stay: theirs is the job as the server has it, saved {writeMoment(theirs.savedAt)}; yours{' '}
        {tellWhere(conflict)}.
      </p>
      {why !== null && kept === null && (
        <Notice kind="fault" title="The server does not keep your version, so nothing is decided yet">
          <p>{why}</p>
          <Button isDisabled={isBusy.value} onPress={() => session.saveMineAsFile()}>
            Save mine as a file
          </Button>
        </Notice>
      )}
      {failed.value !== null && <Notice kind="fault">{failed.value}</Notice>}
      <h3>What yours has other than theirs</h3>
      <p>{summariseDifference(difference)}</p>
      <ul class={styles.lines}>
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </Dialog>
  );
}
