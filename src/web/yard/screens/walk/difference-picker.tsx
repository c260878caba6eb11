import { useSignal } from '@preact/signals';
import { placesOf } from '../../../../say/number-runs.ts';
import { BigKey } from '../../parts/big-key.tsx';
import { NumberPicker } from '../../parts/number-picker.tsx';
import type { StopState } from '../../state/walk/stop-state.ts';
import type { Differences, WalkSession } from '../../state/walk/walk-session.ts';
import styles from './difference-picker.module.css';

/** What can be wrong by sight; each says one of the three no, in words that go into the record. */
const WAYS: readonly { readonly words: string; readonly more: string; readonly found: Differences }[] = [
  { words: 'Wrong type', more: 'thread, length or finish', found: { type: false, face: true, firm: true, note: null } },
  { words: 'Wrong face', more: 'or the wrong way up', found: { type: true, face: false, firm: true, note: null } },
  { words: 'Not firm', more: 'turns, tips, not tied', found: { type: true, face: true, firm: false, note: null } },
  {
    words: 'Not there',
    more: 'missing',
    found: { type: false, face: false, firm: false, note: 'not there' },
  },
  {
    words: 'No cap',
    more: 'or not sealed',
    found: { type: true, face: true, firm: false, note: 'cap missing or not sealed' },
  },
  {
    words: 'No cross bar',
    more: 'or another',
    found: { type: false, face: true, firm: true, note: 'cross bar missing or another' },
  },
];

/** Which insert differs, and how: one tap each. */
export function DifferencePicker({
  walk,
  here,
  number,
}: {
  readonly walk: WalkSession;
  readonly here: StopState;
  readonly number: number | null;
}) {
  const note = useSignal('');
  const numbers = here.stop.members.map((member) => member.number);
  if (number === null)
    return (
      <>
        <h2>Which one differs?</h2>
        <NumberPicker label="Which one differs" numbers={numbers} onPick={(one) => walk.differ(one)} />
      </>
    );
  const take = (found: Differences) => {
    const typed = note.value.trim();
    const words = [found.note, typed === '' ? null : typed].filter((part) => part !== null);
    void walk.takeDifference(number, { ...found, note: words.length === 0 ? null : words.join('; ') });
  };
  return (
    <>
      <h2>What differs at {placesOf([number])}?</h2>
      <div class={styles.ways}>
        {WAYS.map(({ words, more, found }) => (
          <BigKey key={words} kind="stop" more={more} onPress={() => take(found)}>
            {words}
          </BigKey>
        ))}
      </div>
      <label class={styles.note}>
        Words to it, before the key (not needed)
        <input
          type="text"
          maxLength={300}
          value={note.value}
          onInput={({ currentTarget }) => (note.value = currentTarget.value)}
        />
      </label>
    </>
  );
}
