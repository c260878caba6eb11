import { useSignal } from '@preact/signals';
import type { BodyOf } from '../../../../records/record.ts';
import { BigKey, KeyRow } from '../../parts/big-key.tsx';
import { FrameKeys } from '../../parts/frame-keys.tsx';
import styles from './after.module.css';
import { readValues } from './uncover.ts';

type Result = BodyOf<'strength-result'>;

/** A result of the test laboratory, for this piece. */
export function StrengthForm({
  ageHours,
  onResult,
  onBack,
}: {
  /** Since the pour, to start from; null: not known. */
  readonly ageHours: number | null;
  readonly onResult: (body: Result) => void;
  readonly onBack: () => void;
}) {
  const specimen = useSignal<Result['specimen'] | null>(null);
  const age = useSignal(ageHours === null ? '' : String(ageHours));
  const values = useSignal('');
  const report = useSignal('');
  const read = readValues(values.value);
  const hours = Number(age.value.replace(',', '.'));
  const isReady = specimen.value !== null && read !== null && hours > 0;
  const field = (words: string, text: typeof age, mode: 'decimal' | 'text') => (
    <label class={styles.field}>
      {words}
      <input
        type="text"
        inputMode={mode}
        maxLength={120}
        autocomplete="off"
        value={text.value}
        onInput={({ currentTarget }) => (text.value = currentTarget.value)}
      />
    </label>
  );
  return (
    <section class={styles.form} aria-labelledby="strength">
      <h2 id="strength">Strength of test specimens</h2>
      <KeyRow>
        {(['cylinder', 'cube'] as const).map((kind) => (
          <BigKey key={kind} isOn={specimen.value === kind} onPress={() => (specimen.value = kind)}>
            {kind === 'cylinder' ? 'Cylinders' : 'Cubes'}
          </BigKey>
        ))}
      </KeyRow>
      {specimen.value === 'cube' && (
        <p>Cubes are written down as cubes. They are not made into cylinder strengths here.</p>
      )}
      {field('Age at the test, hours', age, 'decimal')}
      {field('Strengths in MPa, a space between two', values, 'text')}
      {field('Number of the report (not needed)', report, 'text')}
      <FrameKeys>
        <BigKey onPress={onBack}>Back</BigKey>
        <BigKey
          kind="main"
          isDisabled={!isReady}
          onPress={() => {
            if (specimen.value === null || read === null) return;
            const named = report.value.trim();
            onResult({
              specimen: specimen.value,
              age_hours: hours,
              values_MPa: read,
              report: named === '' ? null : named,
            });
          }}
        >
          Write it down
        </BigKey>
      </FrameKeys>
    </section>
  );
}
