import { useSignal } from '@preact/signals';
import { takeState } from '../../../../job/edit/take-state.ts';
import { Button } from '../../../parts/button.tsx';
import { tellCall } from '../../../parts/call.ts';
import { Notice } from '../../../parts/notice.tsx';
import { tell } from '../../state/messages.ts';
import { calls } from '../../state/office-calls.ts';
import type { JobSession } from '../../state/session.ts';
import { useAsked } from '../../state/use-asked.ts';
import { writeMoment } from '../../state/write-moment.ts';
import styles from './revisions.module.css';

/** As many edits are shown at first, and more at each asking. */
const LOT = 50;

/** Every edit that is stored, the latest first; any state can be gone back to. */
export function EditList({ session }: { readonly session: JobSession }) {
  const wanted = useSignal(LOT);
  const failed = useSignal<string | null>(null);
  // Asked anew when something was saved.
  const { saving } = session.saver;
  const stamp = saving.value.kind === 'saved' ? session.saver.version : null;
  const from = Math.max(0, session.saver.version - wanted.value);
  const { value, why } = useAsked(async () => {
    const called = await calls.listEdits(session.id, from);
    if (called.kind !== 'answered') throw new Error(tellCall(called) ?? '');
    return called.value.edits;
  }, [stamp, wanted.value]);
  const goBack = async (version: number, label: string) => {
    const called = await calls.jobAt(session.id, version);
    failed.value = tellCall(called);
    if (called.kind !== 'answered') return;
    const { file } = called.value;
    failed.value = session.commit(`Back to the state after: ${label}`.slice(0, 400), (draft) => takeState(draft, file));
    if (failed.value === null) tell('good', 'The job is as it was then.', { text: 'Undo', run: () => session.undo() });
  };
  if (why !== null) return <Notice kind="fault">{why}</Notice>;
  if (value === null) return <p aria-busy="true">Looking …</p>;
  const now = session.saver.version;
  const rows = [...value].reverse();
  return (
    <>
      {failed.value !== null && <Notice kind="fault">{failed.value}</Notice>}
      <ol class={styles.edits}>
        {rows.map(({ version, savedAt, edit }) => (
          <li key={version} class={styles.edit}>
            <span class={styles.version}>{version}</span>
            <span class={styles.time}>{writeMoment(savedAt)}</span>
            <span class={styles.label}>{edit.label}</span>
            {version === now ? (
              <span class={styles.faint}>as it stands</span>
            ) : (
              <Button
                kind="quiet"
                name={`Go back to this state: after edit ${version}`}
                onPress={() => void goBack(version, edit.label)}
              >
                Go back to this state
              </Button>
            )}
          </li>
        ))}
        {from === 0 && (
          <li class={styles.edit}>
            <span class={styles.version}>0</span>
            <span class={styles.time} />
            <span class={styles.label}>The job as it was created</span>
            {now === 0 ? (
              <span class={styles.faint}>as it stands</span>
            ) : (
              <Button kind="quiet" name="Go back to this state: as created" onPress={() => void goBack(0, 'created')}>
                Go back to this state
              </Button>
            )}
          </li>
        )}
      </ol>
      {from > 0 && (
        <Button
          onPress={() => {
            wanted.value = Math.min(500, wanted.value + 3 * LOT);
          }}
          isDisabled={wanted.value >= 500}
        >
          {wanted.value >= 500 ? 'The latest 500 are shown' : 'Earlier edits'}
        </Button>
      )}
    </>
  );
}
