import { useSignal } from '@preact/signals';
import type { Issued } from '../../../../wire/revisions.ts';
import { Button } from '../../../parts/button.tsx';
import { TextField } from '../../../parts/field.tsx';
import { Sign } from '../../../parts/signs.tsx';
import styles from './issue-dialog.module.css';

export type Recipient = Issued['recipients'][number];

const NOBODY: Recipient = { name: '', firm: null, how: 'by e-mail' };

/** Who gets a revision, and how; remembered from the last. */
export function RecipientRows({
  recipients,
  onChange,
}: {
  readonly recipients: readonly Recipient[];
  readonly onChange: (recipients: readonly Recipient[]) => null;
}) {
  const fresh = useSignal(NOBODY);
  const set = (k: number, change: Partial<Recipient>) =>
    onChange(recipients.map((one, i) => (i === k ? { ...one, ...change } : one)));
  const type = (change: Partial<Recipient>): null => {
    fresh.value = { ...fresh.value, ...change };
    return null;
  };
  const add = () => {
    onChange([...recipients, fresh.value]);
    fresh.value = NOBODY;
  };
  const needed = (text: string, take: () => null) => (text === '' ? 'expected a text' : take());
  return (
    <section class={styles.recipients} aria-label="Recipients">
      <h3>Recipients</h3>
      {recipients.length === 0 && <p class={styles.wait}>Nobody yet.</p>}
      {recipients.map((one, k) => (
        <div key={k} class={styles.recipient}>
          <TextField label="Name" value={one.name} onChange={(name) => needed(name, () => set(k, { name }))} />
          <TextField
            label="Firm"
            value={one.firm ?? ''}
            onChange={(firm) => set(k, { firm: firm === '' ? null : firm })}
          />
          <TextField label="How" value={one.how} onChange={(how) => needed(how, () => set(k, { how }))} />
          <Button
            kind="quiet"
            name={`Leave ${one.name} out`}
            onPress={() => onChange(recipients.filter((_, i) => i !== k))}
          >
            <Sign name="cross" />
          </Button>
        </div>
      ))}
      <div class={styles.recipient}>
        <TextField label="One more: name" value={fresh.value.name} onChange={(name) => type({ name })} />
        <TextField
          label="Firm"
          value={fresh.value.firm ?? ''}
          onChange={(firm) => type({ firm: firm === '' ? null : firm })}
        />
        <TextField label="How" value={fresh.value.how} onChange={(how) => needed(how, () => type({ how }))} />
        <Button isDisabled={fresh.value.name === ''} onPress={add}>
          Add
        </Button>
      </div>
    </section>
  );
}
