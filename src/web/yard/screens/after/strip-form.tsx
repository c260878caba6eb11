import { useSignal } from '@preact/signals';
import type { PartBack } from '../../../../assess/yard/after-stripping.ts';
import type { BodyOf } from '../../../../records/record.ts';
import { BigKey } from '../../parts/big-key.tsx';
import { FrameKeys } from '../../parts/frame-keys.tsx';
import styles from './after.module.css';
import { countBack } from './uncover.ts';

/** Out of the form: what went into it and goes back to the yard is counted, part by part. */
export function StripForm({
  parts,
  onStrip,
  onBack,
}: {
  readonly parts: readonly PartBack[];
  readonly onStrip: (body: BodyOf<'stripped'>) => void;
  readonly onBack: () => void;
}) {
  const counted = useSignal<ReadonlyMap<string, number>>(
    new Map(parts.flatMap(({ part, back }) => (back === null ? [] : [[part, back] as const]))),
  );
  const put = (part: string, count: number) => {
    counted.value = new Map([...counted.value, [part, count]]);
  };
  const isCounted = parts.every(({ part }) => counted.value.has(part));
  return (
    <section class={styles.form} aria-labelledby="strip">
      <h2 id="strip">Out of the form: count back what is used again</h2>
      {parts.length === 0 && <p>Nothing in this form is used again.</p>}
      <ul class={styles.parts}>
        {parts.map(({ part, name, out }) => {
          const back = counted.value.get(part) ?? null;
          return (
            <li key={part}>
              <p>
                {name}
                <small>{out} went in</small>
              </p>
              <BigKey name={`One less of ${name}`} onPress={() => put(part, countBack(back, -1))}>
                <span class={styles.sign}>−</span>
              </BigKey>
              <output class={styles.count} aria-label={`${name}: back`}>
                {back ?? '–'}
              </output>
              <BigKey name={`One more of ${name}`} onPress={() => put(part, countBack(back, 1))}>
                <span class={styles.sign}>+</span>
              </BigKey>
              <BigKey isOn={back === out} name={`All ${out} of ${name} are back`} onPress={() => put(part, out)}>
                All {out}
              </BigKey>
            </li>
          );
        })}
      </ul>
      <FrameKeys>
        <BigKey onPress={onBack}>Back</BigKey>
        <BigKey
          kind="main"
          meaning="strip"
          isDisabled={!isCounted}
          more={isCounted ? undefined : 'not all is counted'}
          onPress={() =>
            onStrip({ plates: parts.map(({ part, out }) => ({ part, out, back: counted.value.get(part) ?? 0 })) })
          }
        >
          It is stripped
        </BigKey>
      </FrameKeys>
    </section>
  );
}
