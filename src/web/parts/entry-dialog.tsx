import { useSignal } from '@preact/signals';
import { Button } from './button.tsx';
import { Dialog } from './dialog.tsx';
import { ChoiceField, QuantityField, TextField } from './field.tsx';
import { Notice } from './notice.tsx';
import { Fields } from './page.tsx';
import type { Quantity } from './units.ts';

/** What of a new entry is asked. */
export interface EntryField {
  readonly key: string;
  readonly label: string;
  readonly hint?: string;
  readonly kind:
    | { readonly of: 'text' }
    | { readonly of: 'quantity'; readonly quantity: Quantity }
    | { readonly of: 'choice'; readonly options: readonly { readonly value: string; readonly text: string }[] };
  /** What stands there at first. */
  readonly value: string | number | null;
  /** May stay empty; what then holds, in a word or two. */
  readonly whenEmpty?: string;
}

/** What was typed, by the key of the field; null: nothing. */
export type EntryValues = Readonly<Record<string, string | number | null>>;

/** The text of a field that always has one. */
export function textIn(values: EntryValues, key: string): string {
  return String(values[key] ?? '');
}

/** The number of a field; null where it is empty. */
export function numberIn(values: EntryValues, key: string): number | null {
  const value = values[key];
  return typeof value === 'number' ? value : null;
}

/** Asks for a new entry as a whole, since a job with half of one would not be sound. */
export function EntryDialog({
  title,
  lead,
  fields,
  action,
  onTake,
  onClose,
}: {
  readonly title: string;
  readonly lead?: string;
  readonly fields: readonly EntryField[];
  /** The words of the button. */
  readonly action: string;
  /** A text: why it cannot be taken. */
  readonly onTake: (values: EntryValues) => string | null;
  readonly onClose: () => void;
}) {
  const values = useSignal<EntryValues>(Object.fromEntries(fields.map(({ key, value }) => [key, value])));
  const refused = useSignal<string | null>(null);
  const set = (key: string, value: string | number | null) => {
    values.value = { ...values.value, [key]: value };
    refused.value = null;
    return null;
  };
  const take = () => {
    const missing = fields.filter(
      ({ key, whenEmpty }) =>
        whenEmpty === undefined &&
        (values.value[key] === null || values.value[key] === '' || values.value[key] === undefined),
    );
    if (missing.length > 0) {
      refused.value = `Still to fill in: ${missing.map(({ label }) => label).join(', ')}.`;
      return;
    }
    refused.value = onTake(values.value);
    if (refused.value === null) onClose();
  };
  return (
    <Dialog
      title={title}
      onClose={onClose}
      isWide={fields.length > 5}
      foot={
        <>
          <Button onPress={onClose}>Cancel</Button>
          <Button kind="main" onPress={take}>
            {action}
          </Button>
        </>
      }
    >
      {lead !== undefined && <p>{lead}</p>}
      <Fields>
        {fields.map(({ key, label, hint, kind, whenEmpty }) => {
          const value = values.value[key] ?? null;
          if (kind.of === 'quantity')
            return (
              <QuantityField
                key={key}
                label={label}
                hint={hint}
                quantity={kind.quantity}
                value={typeof value === 'number' ? value : null}
                onChange={(next) => set(key, next)}
                {...(whenEmpty === undefined ? {} : { whenEmpty })}
              />
            );
          if (kind.of === 'choice')
            return (
              <ChoiceField
                key={key}
                label={label}
                hint={hint}
                value={String(value ?? '')}
                options={kind.options}
                onChange={(next) => set(key, next)}
              />
            );
          return (
            <TextField
              key={key}
              label={label}
              hint={hint}
              value={String(value ?? '')}
              onChange={(next) => set(key, next === '' ? null : next)}
              {...(whenEmpty === undefined ? {} : { placeholder: whenEmpty })}
            />
          );
        })}
      </Fields>
      {refused.value !== null && (
        <Notice kind="fault" title="Not taken">
          {refused.value}
        </Notice>
      )}
    </Dialog>
  );
}
