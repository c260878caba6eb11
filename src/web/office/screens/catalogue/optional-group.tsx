import { useSignal } from '@preact/signals';
import { Button } from '../../../parts/button.tsx';
import entry from '../../../parts/entry.module.css';
import { EntryDialog, numberIn } from '../../../parts/entry-dialog.tsx';
import { QuantityField } from '../../../parts/field.tsx';
import { Fields } from '../../../parts/page.tsx';
import { needed } from './edit-item.ts';

/** Lengths that are given together or not at all. */
export function OptionalGroup<K extends string>({
  title,
  none,
  give,
  fields,
  value,
  onChange,
}: {
  readonly title: string;
  /** What holds where nothing is given. */
  readonly none: string;
  /** The words of the button that gives it. */
  readonly give: string;
  readonly fields: readonly { readonly key: K; readonly label: string; readonly hint?: string }[];
  readonly value: Readonly<Record<K, number>> | null;
  readonly onChange: (value: Record<K, number> | null) => string | null;
}) {
  const isGiving = useSignal(false);
  return (
    <div class={entry.entry}>
      <div class={entry.entryHead}>
        <h3>{title}</h3>
        {value === null ? (
          <Button
            onPress={() => {
              isGiving.value = true;
            }}
          >
            {give}
          </Button>
        ) : (
          <Button kind="quiet" name={`${title}: it has none`} onPress={() => onChange(null)}>
            It has none
          </Button>
        )}
      </div>
      {value === null ? (
        <p>{none}</p>
      ) : (
        <Fields>
          {fields.map(({ key, label, hint }) => (
            <QuantityField
              key={key}
              label={label}
              hint={hint}
              quantity="length"
              value={value[key]}
              onChange={needed((next) => onChange({ ...value, [key]: next }))}
            />
          ))}
        </Fields>
      )}
      {isGiving.value && (
        <EntryDialog
          title={title}
          fields={fields.map(({ key, label, hint }) => ({
            key,
            label,
            kind: { of: 'quantity', quantity: 'length' } as const,
            value: null,
            ...(hint === undefined ? {} : { hint }),
          }))}
          action="Take it"
          onClose={() => {
            isGiving.value = false;
          }}
          onTake={(values) => {
            const lengths = fields.map(({ key }) => [key, numberIn(values, key)] as const);
            if (lengths.some(([, length]) => length === null)) return 'expected all of them';
            // Each of K has its length: looked at just above.
            return onChange(Object.fromEntries(lengths) as Record<K, number>);
          }}
        />
      )}
    </div>
  );
}
