import { useSignal } from '@preact/signals';
import { useId } from 'preact/hooks';
import { BigKey } from './big-key.tsx';
import { FrameKeys } from './frame-keys.tsx';
import styles from './reason-picker.module.css';

export interface ReasonPickerProps {
  readonly title: string;
  /** Ready-made reasons; one tap takes one. */
  readonly reasons: readonly string[];
  /** On the key that takes the reason. */
  readonly take: string;
  readonly kind?: 'main' | 'stop';
  /** Gets the words; never empty. */
  readonly onReason: (words: string) => void;
  readonly onBack: () => void;
}

/** Asks why, in words of the yard or ready-made ones. */
export function ReasonPicker({ title, reasons, take, kind = 'main', onReason, onBack }: ReasonPickerProps) {
  const chosen = useSignal<string | null>(null);
  const typed = useSignal('');
  const id = useId();
  const own = typed.value.trim();
  const words = [chosen.value, own === '' ? null : own].filter((part) => part !== null).join(': ');
  return (
    <section class={styles.picker} aria-labelledby={`${id}-title`}>
      <h2 id={`${id}-title`}>{title}</h2>
      <div class={styles.reasons}>
        {reasons.map((reason) => (
          <BigKey
            key={reason}
            isOn={chosen.value === reason}
            onPress={() => (chosen.value = chosen.value === reason ? null : reason)}
          >
            {reason}
          </BigKey>
        ))}
      </div>
      <label for={id}>In your own words</label>
      <textarea
        id={id}
        rows={2}
        maxLength={500}
        value={typed.value}
        onInput={({ currentTarget }) => (typed.value = currentTarget.value)}
      />
      <FrameKeys>
        <BigKey onPress={onBack}>Back</BigKey>
        <BigKey
          kind={kind}
          isDisabled={words === ''}
          more={words === '' ? 'say why first' : undefined}
          onPress={() => onReason(words)}
        >
          {take}
        </BigKey>
      </FrameKeys>
    </section>
  );
}
