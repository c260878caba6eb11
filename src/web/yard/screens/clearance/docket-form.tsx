import { useSignal } from '@preact/signals';
import type { BodyOf } from '../../../../records/record.ts';
import { BigKey } from '../../parts/big-key.tsx';
import { FrameKeys } from '../../parts/frame-keys.tsx';
import styles from './clearance.module.css';

/** The moment that a time of today means; null: not a time. */
function readTime(time: string): string | null {
  const [hours, minutes] = time.split(':').map(Number);
  if (hours === undefined || minutes === undefined || Number.isNaN(hours + minutes)) return null;
  const moment = new Date();
  moment.setHours(hours, minutes, 0, 0);
  return moment.toISOString();
}

/** The docket of the truck, tied to this piece. */
export function DocketForm({
  onDocket,
  onBack,
}: {
  readonly onDocket: (body: BodyOf<'docket'>) => void;
  readonly onBack: () => void;
}) {
  const number = useSignal('');
  const mix = useSignal('');
  const time = useSignal('');
  const take = () => {
    const typed = number.value.trim();
    if (typed === '') return;
    onDocket({ number: typed, mix: mix.value.trim() === '' ? null : mix.value.trim(), at: readTime(time.value) });
  };
  return (
    <form
      class={styles.docket}
      onSubmit={(event) => {
        event.preventDefault();
        take();
      }}
    >
      <h2>Docket of the concrete in this piece</h2>
      <label>
        Number on the docket
        <input
          type="text"
          maxLength={60}
          autocomplete="off"
          value={number.value}
          onInput={({ currentTarget }) => (number.value = currentTarget.value)}
        />
      </label>
      <label>
        Mix, as the docket names it (not needed)
        <input
          type="text"
          maxLength={60}
          autocomplete="off"
          value={mix.value}
          onInput={({ currentTarget }) => (mix.value = currentTarget.value)}
        />
      </label>
      <label>
        Time on the docket, today (not needed)
        <input type="time" value={time.value} onInput={({ currentTarget }) => (time.value = currentTarget.value)} />
      </label>
      <FrameKeys>
        <BigKey onPress={onBack}>Back</BigKey>
        <BigKey kind="main" isDisabled={number.value.trim() === ''} onPress={take}>
          Write it down
        </BigKey>
      </FrameKeys>
    </form>
  );
}
