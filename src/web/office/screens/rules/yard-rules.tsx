import { useSignal } from '@preact/signals';
import type { Draft } from 'immer';
import type { JobFile } from '../../../../job/documents/job-file.ts';
import type { Yard } from '../../../../job/documents/yard.ts';
import { Button } from '../../../parts/button.tsx';
import entry from '../../../parts/entry.module.css';
import { EntryDialog, numberIn, textIn } from '../../../parts/entry-dialog.tsx';
import { ChoiceField, QuantityField, TextField } from '../../../parts/field.tsx';
import { Fields, Section } from '../../../parts/page.tsx';
import type { JobSession } from '../../state/session.ts';
import { BedEntry, FORMS } from './bed-entry.tsx';

type Contact = Yard['contacts'][number];

function Contacts({ contacts, edit }: { readonly contacts: Yard['contacts']; readonly edit: EditYard }) {
  const isAdding = useSignal(false);
  const change = (index: number, values: Partial<Contact>) =>
    edit('contact', (yard) => {
      const contact = yard.contacts[index];
      if (contact !== undefined) Object.assign(contact, values);
    });
  return (
    <>
      <div class={entry.entryHead}>
        <h3>Whom to call, in the order of the sheet</h3>
        <Button
          onPress={() => {
            isAdding.value = true;
          }}
        >
          Add somebody
        </Button>
      </div>
      {contacts.map(({ role, name, phone }, index) => (
        <div key={`${index}`} class={entry.entry}>
          <Fields>
            <TextField label="Role" value={role} onChange={(value) => change(index, { role: value })} />
            <TextField label="Name" value={name} onChange={(value) => change(index, { name: value })} />
            <TextField label="Telephone" value={phone} onChange={(value) => change(index, { phone: value })} />
            <Button
              kind="quiet"
              onPress={() =>
                edit('contact taken away', (yard) => {
                  yard.contacts.splice(index, 1);
                })
              }
            >
              Take {name} away
            </Button>
          </Fields>
        </div>
      ))}
      {isAdding.value && (
        <EntryDialog
          title="Whom to call"
          fields={[
            { key: 'role', label: 'Role', kind: { of: 'text' }, value: null },
            { key: 'name', label: 'Name', kind: { of: 'text' }, value: null },
            { key: 'phone', label: 'Telephone', kind: { of: 'text' }, value: null },
          ]}
          action="Add"
          onClose={() => {
            isAdding.value = false;
          }}
          onTake={(values) =>
            edit('contact added', (yard) => {
              yard.contacts.push({
                role: textIn(values, 'role'),
                name: textIn(values, 'name'),
                phone: textIn(values, 'phone'),
              });
            })
          }
        />
      )}
    </>
  );
}

export type EditYard = (what: string, change: (yard: Draft<JobFile>['library']['yard']) => void) => string | null;

/** Beds, tapes, spares and contacts of the yard. */
export function YardRules({ session }: { readonly session: JobSession }) {
  const isAdding = useSignal(false);
  const { yard } = session.shown.value.library;
  const edit: EditYard = (what, change) => session.commit(`Yard: ${what}`, ({ library }) => change(library.yard));
  return (
    <Section
      title="The yard"
      anchor="yard"
      lead="What the sheets call the sides of a bed, how well it is taped, and what is taken along as spare."
    >
      <Fields>
        <ChoiceField
          label="Accuracy class of the tapes"
          hint="OIML R 35-1; decides the scatter that is expected of taping."
          value={yard.tapeClass}
          options={[
            { value: 'I', text: 'I, the narrower' },
            { value: 'II', text: 'II, the wider' },
          ]}
          onChange={(tapeClass) =>
            edit(`tapes of class ${tapeClass}`, (draft) => {
              draft.tapeClass = tapeClass;
            })
          }
        />
        <QuantityField
          label="Spares, in percent of the count"
          hint="Of what is used up and kept by the box, rounded up."
          quantity="number"
          value={Math.round(yard.spares.share * 1e6) / 1e4}
          onChange={(value) =>
            value === null || value < 0 || value > 100
              ? 'expected 0 to 100'
              : edit('spares', (draft) => {
                  draft.spares.share = value / 100;
                })
          }
        />
        <QuantityField
          label="Spares, at least of a kind"
          quantity="number"
          value={yard.spares.atLeast}
          onChange={(value) =>
            value === null
              ? 'expected a whole number'
              : edit('least spares', (draft) => {
                  draft.spares.atLeast = value;
                })
          }
        />
      </Fields>
      <div class={entry.entryHead}>
        <h3>Beds</h3>
        <Button
          onPress={() => {
            isAdding.value = true;
          }}
        >
          Add a bed
        </Button>
      </div>
      {yard.beds.map((bed, index) => (
        <BedEntry key={`${index}`} session={session} bed={bed} />
      ))}
      <Contacts contacts={yard.contacts} edit={edit} />
      {isAdding.value && (
        <EntryDialog
          title="Add a bed"
          lead="Ends and rails have the yard’s own names, since a form has no left and right."
          fields={[
            { key: 'id', label: 'Short name', hint: 'Such as B3.', kind: { of: 'text' }, value: null },
            { key: 'name', label: 'Name', kind: { of: 'text' }, value: null },
            { key: 'length', label: 'Length', kind: { of: 'quantity', quantity: 'length' }, value: null },
            { key: 'width', label: 'Width', kind: { of: 'quantity', quantity: 'length' }, value: null },
            { key: 'form', label: 'The bed is of', kind: { of: 'choice', options: FORMS }, value: 'timber' },
            { key: 'sideForm', label: 'Side forms are of', kind: { of: 'choice', options: FORMS }, value: 'timber' },
            { key: 'start', label: 'End where lengths start', kind: { of: 'text' }, value: null },
            { key: 'finish', label: 'Far end', kind: { of: 'text' }, value: null },
            { key: 'railA', label: 'Rail where widths start', kind: { of: 'text' }, value: null },
            { key: 'railB', label: 'Far rail', kind: { of: 'text' }, value: null },
          ]}
          action="Add the bed"
          onClose={() => {
            isAdding.value = false;
          }}
          onTake={(values) => {
            const [length_mm, width_mm] = [numberIn(values, 'length'), numberIn(values, 'width')];
            if (length_mm === null || width_mm === null) return 'expected a length and a width';
            return edit(`bed ${textIn(values, 'id')} added`, (draft) => {
              draft.beds.push({
                id: textIn(values, 'id'),
                name: textIn(values, 'name'),
                form: values.form === 'steel' ? 'steel' : 'timber',
                sideForm: values.sideForm === 'steel' ? 'steel' : 'timber',
                length_mm,
                width_mm,
                names: {
                  start: textIn(values, 'start'),
                  finish: textIn(values, 'finish'),
                  railA: textIn(values, 'railA'),
                  railB: textIn(values, 'railB'),
                },
                north_deg: null,
                sag_mm: 0,
                screedDeflection_mm: 0,
              });
            });
          }}
        />
      )}
    </Section>
  );
}
