import { useEffect, useState } from 'preact/hooks';
import type { JobHead } from '../../../../wire/jobs.ts';
import { call } from '../../../parts/call.ts';
import { useYard } from '../../../pieces/yard.ts';
import { Answer } from '../../parts/answer.tsx';
import { BigKey } from '../../parts/big-key.tsx';
import styles from './start-screen.module.css';

interface JobChoice {
  readonly id: string;
  readonly name: string;
  readonly more: string;
}

/** Jobs of the server, or those that are on this device where it does not answer. */
async function listChoices(
  listJobs: () => Promise<readonly { readonly id: string; readonly name: string }[]>,
): Promise<{ readonly isServerThere: boolean; readonly jobs: readonly JobChoice[] }> {
  const [called, here] = await Promise.all([
    call<{ readonly jobs: readonly JobHead[] }>('GET', '/api/jobs'),
    listJobs(),
  ]);
  if (called.kind !== 'answered')
    return { isServerThere: false, jobs: here.map((job) => ({ ...job, more: 'on this device' })) };
  const isHere = new Set(here.map(({ id }) => id));
  return {
    isServerThere: true,
    jobs: called.value.jobs.map(({ id, name, panels, issued }) => ({
      id,
      name,
      more: [
        `${panels} panels`,
        issued === null ? 'never issued' : `issued last: ${issued}`,
        ...(isHere.has(id) ? ['on this device'] : []),
      ].join(' · '),
    })),
  };
}

/** Which job is worked on; it is taken onto this device with its drawings, people and records. */
export function ChooseJob({ onTaken, onBack }: { readonly onTaken: () => void; readonly onBack: (() => void) | null }) {
  const { device } = useYard();
  const [choices, setChoices] = useState<Awaited<ReturnType<typeof listChoices>> | null>(null);
  const [taking, setTaking] = useState<string | null>(null);
  const [fault, setFault] = useState<string | null>(null);
  const load = () => void listChoices(() => device.listJobs()).then(setChoices);
  useEffect(load, [device]);
  const take = async ({ id, name }: JobChoice) => {
    setTaking(name);
    setFault(null);
    const isTaken = await device.takeJob(id);
    setTaking(null);
    if (!isTaken) {
      setFault(`${name} could not be taken: the server does not answer, and it was never on this device.`);
      return;
    }
    // The browser asks the person at most once; what it says is told below.
    void device.askToKeep();
    onTaken();
  };
  if (choices === null) return <p aria-busy="true">Asking the server for its jobs …</p>;
  return (
    <>
      {fault !== null && (
        <Answer kind="wrong" words="Not taken">
          <p>{fault}</p>
        </Answer>
      )}
      {!choices.isServerThere && (
        <Answer kind="unsure" words="The server does not answer">
          <p>These jobs are on this device. Others can be taken when the server is there.</p>
        </Answer>
      )}
      {choices.jobs.length === 0 && (
        <Answer kind="plain" words={choices.isServerThere ? 'There is no job yet' : 'No job is on this device'}>
          <p>
            {choices.isServerThere
              ? 'Jobs are made in the office; issue one for construction, then look again.'
              : 'Bring the tablet to where the server is, and take the job along from there.'}
          </p>
        </Answer>
      )}
      {taking !== null && <p aria-busy="true">Taking {taking} onto this device …</p>}
      <div class={styles.jobs}>
        {choices.jobs.map((job) => (
          <BigKey key={job.id} isDisabled={taking !== null} more={job.more} onPress={() => void take(job)}>
            {job.name}
          </BigKey>
        ))}
      </div>
      <div class={styles.row}>
        <BigKey onPress={load}>Look again</BigKey>
        {onBack !== null && <BigKey onPress={onBack}>Back</BigKey>}
      </div>
    </>
  );
}
