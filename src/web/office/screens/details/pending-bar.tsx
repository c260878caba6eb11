import { countFollowing, tellChangedStates } from '../../../../say/change-words.ts';
import { Button } from '../../../parts/button.tsx';
import { askJobWorker } from '../../../parts/worker-client.ts';
import { tell } from '../../state/messages.ts';
import { useOffice } from '../../state/office.ts';
import { useAsked } from '../../state/use-asked.ts';
import styles from './details-screen.module.css';
import type { Pending } from './use-pending.ts';

/** What a change of a detail brings everywhere it is placed, computed before it is taken. */
export function PendingBar({ pending, marks }: { readonly pending: Pending; readonly marks: readonly string[] }) {
  const { session } = useOffice();
  const { value } = pending.value;
  const asked = useAsked(
    value === null ? null : () => askJobWorker((worker) => worker.previewChanges(value.changes, marks)),
    [value, session.file],
  );
  if (value === null) return null;
  const found = asked.value;
  const states = found === null ? [] : tellChangedStates(found);
  const take = () => {
    const why = pending.take();
    if (why !== null) tell('fault', why);
    else
      tell('good', `${value.label}: ${found === null ? '' : countFollowing(found)} followed`, {
        text: 'Undo',
        run: () => session.undo(),
      });
  };
  return (
    <section class={styles.pending} aria-label="A change that is not made yet" aria-busy={asked.isBusy}>
      <p class={styles.follow} role="status">
        {marks.length === 0
          ? 'Nothing is placed of it yet: nothing follows.'
          : found === null
            ? 'Computing what follows …'
            : `${countFollowing(found)} follow${found.length === 1 ? 's' : ''}.`}
      </p>
      {asked.why !== null && <p role="alert">{asked.why}</p>}
      {found !== null && marks.length > 0 && (
        <ul>
          {states.length === 0 ? (
            <li>Every answer stays as it is.</li>
          ) : (
            states.map((text) => <li key={text}>{text}</li>)
          )}
        </ul>
      )}
      <div class={styles.row}>
        <Button kind="main" isDisabled={marks.length > 0 && found === null} onPress={take}>
          Make the change everywhere
        </Button>
        <Button onPress={pending.drop}>Give it up</Button>
      </div>
    </section>
  );
}
