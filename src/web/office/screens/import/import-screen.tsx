import { useEffect, useMemo } from 'preact/hooks';
import { ChooseFiles, FileDrop } from '../../../parts/files.tsx';
import { Empty, Notice } from '../../../parts/notice.tsx';
import { Page } from '../../../parts/page.tsx';
import type { JobSession } from '../../state/session.ts';
import { FileStrip } from './file-strip.tsx';
import { Found } from './found.tsx';
import styles from './import.module.css';
import { importFor } from './import-work.ts';
import { PutRight } from './put-right.tsx';

/** What can be read. */
const ACCEPT = '.json,.csv';

/** Reads a job from files that a person has: shows what was found, what is wrong and where, and lets it be put right in place. */
export function ImportScreen({ into }: { readonly into: JobSession | null }) {
  const work = useMemo(() => importFor(into?.id ?? null), [into]);
  useEffect(() => void work.resume(), [work]);
  const files = work.files.value;
  const reading = work.reading.value;
  const failure = work.failure.value;
  const take = (given: readonly File[]) => void work.take(given);
  return (
    <Page
      title="Files of a job"
      lead={
        into === null
          ? 'A job file (JSON), or the schedules of a job (CSV): panels, inserts, connections, catalogue, loads, pours.'
          : 'Files that take the place of what this job holds, as one edit that can be undone.'
      }
      actions={
        <ChooseFiles accept={ACCEPT} kind={files.length === 0 ? 'main' : 'plain'} onFiles={take}>
          {files.length === 0 ? 'Choose files' : 'More files'}
        </ChooseFiles>
      }
    >
      <FileDrop words="Let go: the files are read here" onFiles={take} />
      {failure !== null && <Notice kind="fault">{failure}</Notice>}
      {files.length === 0 ? (
        <Empty title="No file is here yet">
          <p>
            Drop one job file, or all schedules of a job together: panels.csv, inserts.csv, connections.csv and
            catalogue.csv are needed; loads.csv, pours.csv and job.json go with them where you have them.
          </p>
          <p>Commas, semicolons or tabs between columns, decimal points or commas: each is recognised.</p>
        </Empty>
      ) : (
        <>
          <FileStrip work={work} />
          {reading === null ? (
            <p class={styles.faint} aria-busy="true">
              Reading …
            </p>
          ) : reading.ok ? (
            <Found work={work} reading={reading} into={into} />
          ) : (
            <PutRight work={work} reading={reading} />
          )}
        </>
      )}
    </Page>
  );
}
