import { useSignal } from '@preact/signals';
import { places } from '../../../pieces/places.ts';
import { useYard } from '../../../pieces/yard.ts';
import { BigKey, BigLink } from '../../parts/big-key.tsx';
import { NewerPage } from '../../parts/newer-page.tsx';
import { YardFrame } from '../../shell/yard-frame.tsx';
import { nameRoles } from '../../state/name-roles.ts';
import { ChooseJob } from './choose-job.tsx';
import { ChoosePerson } from './choose-person.tsx';
import { OfflineState } from './offline-state.tsx';
import styles from './start-screen.module.css';

/** Which job, and who works on it: the two things that every record says. */
export function StartScreen() {
  const { device, context } = useYard();
  const job = device.job.value;
  const person = device.person.value;
  const isChoosing = useSignal(false);
  const isChoosingPerson = useSignal(false);
  if (job === null || isChoosing.value)
    return (
      <YardFrame title="Which job?" back={null}>
        <ChooseJob
          onTaken={() => (isChoosing.value = false)}
          onBack={job === null ? null : () => (isChoosing.value = false)}
        />
      </YardFrame>
    );
  const isReady = context.value !== null && person !== null;
  return (
    <YardFrame
      title={job.name}
      back={null}
      keys={
        <>
          <BigKey kind="quiet" onPress={() => (isChoosing.value = true)}>
            Another job
          </BigKey>
          {person !== null && (
            <BigKey onPress={() => (isChoosingPerson.value = !isChoosingPerson.value)}>Somebody else</BigKey>
          )}
          {isReady && (
            <BigLink kind="main" isTall to={places.pours()}>
              Go to the pours
            </BigLink>
          )}
        </>
      }
    >
      <NewerPage />
      <RevisionInForce />
      {person === null || isChoosingPerson.value ? (
        <ChoosePerson onChosen={() => (isChoosingPerson.value = false)} />
      ) : (
        <section class={styles.part}>
          <h2>You are</h2>
          <p class={styles.person}>{person.name ?? 'name erased'}</p>
          <p>{nameRoles(person.roles)}</p>
        </section>
      )}
      <OfflineState />
    </YardFrame>
  );
}

function RevisionInForce() {
  const { device } = useYard();
  const job = device.job.value;
  if (job === null) return null;
  const { inForce, revisions } = job;
  if (inForce !== null)
    return (
      <p class={styles.revision}>
        <strong>{inForce.letter}</strong> is the revision in force, for construction.
      </p>
    );
  const last = revisions.at(-1);
  return (
    <section class={styles.none} role="status">
      <h2>Nothing may be poured: no revision is for construction</h2>
      <p>
        {last === undefined
          ? 'No revision of this job was ever issued.'
          : `The last one, ${last.letter}, is ${last.status}.`}{' '}
        In the office: open the job, Revisions, issue it with the status “for construction”. It comes here by itself.
      </p>
    </section>
  );
}
