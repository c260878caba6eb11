import type { Issued } from '../../../../wire/revisions.ts';
import { Button } from '../../../parts/button.tsx';
import { tellCall } from '../../../parts/call.ts';
import { writeDay } from '../../../parts/day-field.tsx';
import { download, fileNameOf } from '../../../parts/download.ts';
import { tell } from '../../state/messages.ts';
import { calls } from '../../state/office-calls.ts';
import type { JobSession } from '../../state/session.ts';
import { writeMoment } from '../../state/write-moment.ts';
import { Difference } from './difference.tsx';
import styles from './revisions.module.css';

/** As many digits as go onto a sheet. */
const DIGITS = 12;

/** Issued revisions, the latest first, each with what it changed. */
export function IssuedList({ session, issued }: { readonly session: JobSession; readonly issued: readonly Issued[] }) {
  const save = async (letter: string) => {
    const called = await calls.openRevision(session.id, letter);
    if (called.kind !== 'answered') {
      tell('fault', tellCall(called) ?? '');
      return;
    }
    const { file } = called.value;
    const name = fileNameOf(`${file.job.project.number ?? file.job.project.name}-${letter}`);
    download(`${name}.json`, `${JSON.stringify(file, null, 2)}\n`, 'application/json');
  };
  return (
    <ol class={styles.issued}>
      {issued
        .map((one, k) => {
          const before = issued[k - 1];
          return (
            <li key={one.letter} class={styles.one}>
              <div class={styles.letter}>{one.letter}</div>
              <div class={styles.body}>
                <h3>
                  <span class="aloud">Revision {one.letter}: </span>
                  {one.status}, {writeDay(one.date)}
                </h3>
                {one.note !== null && <p>{one.note}</p>}
                {before === undefined ? (
                  <p class={styles.summary}>The first revision.</p>
                ) : (
                  <Difference
                    job={session.id}
                    before={{ kind: 'revision', letter: before.letter }}
                    after={{ kind: 'revision', letter: one.letter }}
                    on={[before.letter, one.letter]}
                  />
                )}
                <p class={styles.faint}>
                  Issued {writeMoment(one.issuedAt)}; fingerprint{' '}
                  <span class={styles.fingerprint}>{one.fingerprint.slice(0, DIGITS)}</span>
                </p>
                <p class={styles.faint}>
                  {one.recipients.length === 0
                    ? 'No recipient is named.'
                    : `To ${one.recipients.map(({ name, firm, how }) => `${name}${firm === null ? '' : `, ${firm}`} (${how})`).join('; ')}`}
                </p>
              </div>
              <div class="not-printed">
                <Button name={`Revision ${one.letter} as a job file`} onPress={() => void save(one.letter)}>
                  Job file
                </Button>
              </div>
            </li>
          );
        })
        .reverse()}
    </ol>
  );
}
