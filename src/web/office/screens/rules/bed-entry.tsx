import type { Bed } from '../../../../job/documents/yard.ts';
import { changeBed } from '../../../../job/edit/commands/edit-library.ts';
import { Button } from '../../../parts/button.tsx';
import entry from '../../../parts/entry.module.css';
import { ChoiceField, QuantityField, TextField } from '../../../parts/field.tsx';
import { Fields } from '../../../parts/page.tsx';
import type { JobSession } from '../../state/session.ts';
import styles from './rules.module.css';

export const FORMS = [
  { value: 'timber', text: 'timber: nails hold' },
  { value: 'steel', text: 'steel: magnets hold' },
] as const;

const NAMES = [
  ['start', 'End where lengths start'],
  ['finish', 'Far end'],
  ['railA', 'Rail where widths start'],
  ['railB', 'Far rail'],
] as const;

const LENGTHS = [
  ['length_mm', 'Length', undefined],
  ['width_mm', 'Width', undefined],
  ['sag_mm', 'The form gives way by', 'Under wet concrete; chairs are chosen with it.'],
  ['screedDeflection_mm', 'The screed board gives way by', undefined],
] as const;

/** One bed of the yard. */
export function BedEntry({ session, bed }: { readonly session: JobSession; readonly bed: Bed }) {
  const pours = session.shown.value.job.pours.filter((pour) => pour.bed === bed.id);
  const edit = (what: string, change: Parameters<typeof changeBed>[1]) =>
    session.commit(`Bed ${bed.id}: ${what}`, changeBed(bed.id, change));
  return (
    <div class={entry.entry}>
      <div class={entry.entryHead}>
        <h3>{bed.name}</h3>
        <span class={styles.uses}>
          {pours.length === 0 ? 'no pour is planned on it' : `pours ${pours.map(({ id }) => id).join(', ')}`}
        </span>
        <Button
          kind="quiet"
          name={`Remove it: ${bed.name}`}
          isDisabled={pours.length > 0}
          onPress={() =>
            session.commit(`Bed ${bed.id} removed`, ({ library }) => {
              library.yard.beds = library.yard.beds.filter(({ id }) => id !== bed.id);
            })
          }
        >
          Remove it
        </Button>
      </div>
      <Fields>
        <TextField
          label="Short name"
          value={bed.id}
          onChange={(id) =>
            edit(`named ${id}`, (draft) => {
              draft.id = id;
            })
          }
        />
        <TextField
          label="Name"
          value={bed.name}
          onChange={(name) =>
            edit('name', (draft) => {
              draft.name = name;
            })
          }
        />
        {LENGTHS.map(([key, label, hint]) => (
          <QuantityField
            key={key}
            label={label}
            hint={hint}
            quantity="length"
            value={bed[key]}
            onChange={(value) =>
              value === null
                ? 'expected a length'
                : edit(label.toLowerCase(), (draft) => {
                    draft[key] = value;
                  })
            }
          />
        ))}
        <ChoiceField
          label="The bed is of"
          value={bed.form}
          options={FORMS}
          onChange={(form) =>
            edit(`of ${form}`, (draft) => {
              draft.form = form;
            })
          }
        />
        <ChoiceField
          label="Side forms are of"
          value={bed.sideForm}
          options={FORMS}
          onChange={(sideForm) =>
            edit(`side forms of ${sideForm}`, (draft) => {
              draft.sideForm = sideForm;
            })
          }
        />
        {NAMES.map(([key, label]) => (
          <TextField
            key={key}
            label={label}
            value={bed.names[key]}
            onChange={(name) =>
              edit('names of its sides', (draft) => {
                draft.names[key] = name;
              })
            }
          />
        ))}
        <QuantityField
          label="North, counter-clockwise from its length"
          quantity="degrees"
          value={bed.north_deg}
          whenEmpty="not drawn"
          onChange={(north_deg) =>
            edit('north', (draft) => {
              draft.north_deg = north_deg;
            })
          }
        />
      </Fields>
    </div>
  );
}
