import { useLocation } from 'wouter-preact';
import type { JobFile } from '../../../../job/documents/job-file.ts';
import type { KeptHead } from '../../../../wire/kept.ts';
import { Button } from '../../../parts/button.tsx';
import { type Called, tellCall } from '../../../parts/call.ts';
import { Notice } from '../../../parts/notice.tsx';
import { Section } from '../../../parts/page.tsx';
import { addresses } from '../../state/addresses.ts';
import { tell } from '../../state/messages.ts';
import { calls } from '../../state/office-calls.ts';
import type { JobSession } from '../../state/session.ts';
import { useAsked } from '../../state/use-asked.ts';
import { writeMoment } from '../../state/write-moment.ts';
import { Difference } from './difference.tsx';
import styles from './revisions.module.css';

/** What was answered; throws with words for the person where nothing was. */
function take<T>(called: Called<T>): T {
  if (called.kind === 'answered') return called.value;
  throw new Error(tellCall(called) ?? '');
}

/** A name that tells the job from the one that it was kept beside. */
function rename(file: JobFile, kept: KeptHead): JobFile {
  const { project } = file.job;
  const name = `${project.name} (kept ${kept.keptAt.slice(0, 10)})`;
  return { ...file, job: { ...file.job, project: { ...project, name } } };
}

/** The other versions of conflicts, kept whole; nothing where there was none. */
export function KeptList({ session }: { readonly session: JobSession }) {
  const [, go] = useLocation();
  const { value, why } = useAsked(
    async () => take(await calls.listKept(session.id)).kept,
    [session.id, session.conflict.value],
  );
  if (why !== null) return <Notice kind="fault">{why}</Notice>;
  if (value === null || value.length === 0) return null;
  const makeJob = async (kept: KeptHead) => {
    try {
      const { file } = take(await calls.openKept(session.id, kept.id));
      const made = take(await calls.createJob(rename(file, kept)));
      go(addresses.panels(made.id));
    } catch (error) {
      tell('fault', error instanceof Error ? error.message : String(error));
    }
  };
  return (
    <Section
      title="Kept versions"
      lead="Two people, or two windows, went on from the same state: what was not taken is kept here."
    >
      <ul class={styles.issued}>
        {value.map((kept) => (
          <li key={kept.id} class={styles.one}>
            <div class={styles.body}>
              <h3>Kept {writeMoment(kept.keptAt)}</h3>
              <p class={styles.faint}>
                {kept.reason}, which was edit {kept.base}.
              </p>
              <p>What it has other than the draft:</p>
              <Difference
                job={session.id}
                before={{ kind: 'draft' }}
                after={{ kind: 'kept', id: kept.id }}
                on={[kept.id, session.shown.value]}
              />
            </div>
            <Button
              name={`Make a job of it: the version kept ${writeMoment(kept.keptAt)}`}
              onPress={() => void makeJob(kept)}
            >
              Make a job of it
            </Button>
          </li>
        ))}
      </ul>
    </Section>
  );
}
