import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { useLocation } from 'wouter-preact';
import type { JobHead } from '../../../../wire/jobs.ts';
import { Button } from '../../../parts/button.tsx';
import { tellCall } from '../../../parts/call.ts';
import { FileDrop } from '../../../parts/files.tsx';
import { Empty, Notice } from '../../../parts/notice.tsx';
import { Page } from '../../../parts/page.tsx';
import { OutsideShell } from '../../shell/outside-shell.tsx';
import { addresses } from '../../state/addresses.ts';
import { useCommands } from '../../state/commands.ts';
import { tell } from '../../state/messages.ts';
import { calls } from '../../state/office-calls.ts';
import { importFor } from '../import/import-work.ts';
import { JobList } from './job-list.tsx';
import { NewJobDialog } from './new-job-dialog.tsx';
import { RemovedJobs } from './removed-jobs.tsx';

/** What the server has, as far as it answered. */
interface Listed {
  readonly jobs: readonly JobHead[];
  readonly removed: readonly JobHead[];
}

/** All jobs: the first thing that is seen. */
export function JobsScreen() {
  const [, go] = useLocation();
  const listed = useSignal<Listed | null>(null);
  const failed = useSignal<string | null>(null);
  const isMaking = useSignal(false);
  const load = async () => {
    const [jobs, removed] = await Promise.all([calls.listJobs(), calls.listJobs(true)]);
    failed.value = tellCall(jobs) ?? tellCall(removed);
    if (jobs.kind === 'answered' && removed.kind === 'answered')
      listed.value = { jobs: jobs.value.jobs, removed: removed.value.jobs };
  };
  useEffect(() => {
    const again = () => void load();
    again();
    addEventListener('focus', again);
    return () => removeEventListener('focus', again);
  }, []);
  const make = () => {
    isMaking.value = true;
  };
  useCommands('Jobs', [{ name: 'New job', key: 'N', run: make }]);
  const restore = async ({ id, name }: JobHead) => {
    const called = await calls.restoreJob(id);
    if (called.kind === 'answered') tell('good', `${name} is back in the list.`);
    else tell('fault', tellCall(called) ?? '');
    await load();
  };
  const remove = async (job: JobHead) => {
    const called = await calls.removeJob(job.id);
    if (called.kind === 'answered')
      tell('note', `${job.name} is out of the list. Nothing of it is deleted.`, {
        text: 'Undo',
        run: () => void restore(job),
      });
    else tell('fault', tellCall(called) ?? '');
    await load();
  };
  const take = (files: readonly File[]) => {
    void importFor(null).take(files);
    go(addresses.readFiles());
  };
  const { value } = listed;
  return (
    <OutsideShell>
      <FileDrop words="Let go: one job file, or the CSV schedules of one job" onFiles={take} />
      <Page
        title="Jobs"
        lead="Each job: its panels, their inserts and connections, and every revision that was issued of it. Files of a job can be dropped anywhere here."
        actions={
          <>
            <Button onPress={() => go(addresses.readFiles())}>Read from files</Button>
            <Button kind="main" shortcut="N" name="New job" onPress={make}>
              New job
            </Button>
          </>
        }
      >
        {failed.value !== null && (
          <Notice kind="fault">
            <p>{failed.value}</p>
            <Button onPress={() => void load()}>Try again</Button>
          </Notice>
        )}
        {value === null ? (
          failed.value === null && <p aria-busy="true">Looking …</p>
        ) : value.jobs.length === 0 ? (
          <Empty title="There is no job yet">
            <p>Begin one with its first panel, or read one from the schedules that you have.</p>
          </Empty>
        ) : (
          <JobList jobs={value.jobs} onRemove={(job) => void remove(job)} />
        )}
        {value !== null && value.removed.length > 0 && (
          <RemovedJobs jobs={value.removed} onRestore={(job) => void restore(job)} />
        )}
      </Page>
      {isMaking.value && (
        <NewJobDialog
          onClose={() => {
            isMaking.value = false;
          }}
          onMade={(id) => go(addresses.panels(id))}
        />
      )}
    </OutsideShell>
  );
}
