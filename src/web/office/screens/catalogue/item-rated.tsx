import { useSignal } from '@preact/signals';
import type { CatalogueItem } from '../../../../job/documents/catalogue.ts';
import { ROLE_WORDS } from '../../../../say/item-words.ts';
import { Button } from '../../../parts/button.tsx';
import entry from '../../../parts/entry.module.css';
import { EntryDialog, numberIn, textIn } from '../../../parts/entry-dialog.tsx';
import { QuantityField, TextField } from '../../../parts/field.tsx';
import { Notice } from '../../../parts/notice.tsx';
import { Fields, Section } from '../../../parts/page.tsx';
import { type ItemPartProps, needed } from './edit-item.ts';

type Rated = CatalogueItem['ratedLoads'][number];

function RatedLoad({ item, edit, index, rated }: ItemPartProps & { readonly index: number; readonly rated: Rated }) {
  const change = (what: string, values: Partial<Rated>) =>
    edit(`rated load ${index + 1}, ${what}`, (draft) => {
      draft.ratedLoads[index] = { ...rated, ...values };
    });
  return (
    <div class={entry.entry}>
      <div class={entry.entryHead}>
        <h3>{ROLE_WORDS[rated.role]}</h3>
        <Button
          kind="quiet"
          name={`Take it away: rated load ${index + 1} of ${item.id}`}
          onPress={() =>
            edit(`rated load ${index + 1} taken away`, (draft) => {
              draft.ratedLoads.splice(index, 1);
            })
          }
        >
          Take it away
        </Button>
      </div>
      <Fields>
        <QuantityField
          label="Rated load"
          quantity="force"
          value={rated.load_kN}
          onChange={needed((load_kN) => change('load', { load_kN }))}
        />
        <TextField label="Document" value={rated.document} onChange={(document) => change('document', { document })} />
        <TextField
          label="Conditions"
          value={rated.conditions}
          onChange={(conditions) => change('conditions', { conditions })}
        />
      </Fields>
    </div>
  );
}

/** What the maker allows in roles that no anchorage standard here covers. */
export function ItemRated({ item, edit }: ItemPartProps) {
  const isAdding = useSignal(false);
  return (
    <Section
      title="Rated for braces or lifting"
      actions={
        <Button
          onPress={() => {
            isAdding.value = true;
          }}
        >
          Add a rated load
        </Button>
      }
    >
      <Notice kind="caution">
        A fixing insert is not a lifting insert, and not a brace insert, unless its maker rates it so. A rated load is
        copied from the maker’s document; nothing here checks a lift or a brace.
      </Notice>
      {item.ratedLoads.length === 0 && <p>Not rated: for fixings only.</p>}
      {item.ratedLoads.map((rated, index) => (
        <RatedLoad key={`${index} ${rated.role}`} item={item} edit={edit} index={index} rated={rated} />
      ))}
      {isAdding.value && (
        <EntryDialog
          title={`What the maker rates ${item.id} for`}
          fields={[
            {
              key: 'role',
              label: 'Role',
              kind: {
                of: 'choice',
                options: [
                  { value: 'brace', text: ROLE_WORDS.brace },
                  { value: 'lifting', text: ROLE_WORDS.lifting },
                ],
              },
              value: 'brace',
            },
            { key: 'load', label: 'Rated load', kind: { of: 'quantity', quantity: 'force' }, value: null },
            {
              key: 'document',
              label: 'Document',
              hint: 'The maker’s, with its date.',
              kind: { of: 'text' },
              value: null,
            },
            { key: 'conditions', label: 'Conditions', kind: { of: 'text' }, value: null },
          ]}
          action="Add it"
          onClose={() => {
            isAdding.value = false;
          }}
          onTake={(values) => {
            const load = numberIn(values, 'load');
            if (load === null) return 'expected a load';
            return edit('rated load added', (draft) => {
              draft.ratedLoads.push({
                role: values.role === 'lifting' ? 'lifting' : 'brace',
                load_kN: load,
                document: textIn(values, 'document'),
                conditions: textIn(values, 'conditions'),
              });
            });
          }}
        />
      )}
    </Section>
  );
}
