import { useSignal } from '@preact/signals';
import { standardNames } from '../../../../engine/standards/standard-name.ts';
import { Button } from '../../../parts/button.tsx';
import { EntryDialog, textIn } from '../../../parts/entry-dialog.tsx';
import { QuantityField, TextField } from '../../../parts/field.tsx';
import { Notice } from '../../../parts/notice.tsx';
import { Fields, Section } from '../../../parts/page.tsx';
import styles from './catalogue.module.css';
import type { ItemPartProps } from './edit-item.ts';
import { OptionalGroup } from './optional-group.tsx';

const LIMITS = [
  ['leastEdge_mm', 'Least distance to an edge'],
  ['leastSpacing_mm', 'Least spacing'],
  ['leastThickness_mm', 'Least thickness of the concrete'],
] as const;

/** The qualification, and what the product document says beside strengths. */
export function ItemDocuments({ item, edit }: ItemPartProps) {
  const isAdding = useSignal(false);
  const { qualification, splitting } = item;
  return (
    <Section
      title="Qualification"
      lead="The product document by which the insert may be designed, such as an assessment or a test report for a standard."
    >
      {qualification === null ? (
        <>
          <Notice kind="caution" title="No document: what uses this insert never passes">
            Its numbers are shown all the same, so that the engineer can see where it stands.
          </Notice>
          <div class={styles.tools}>
            <Button
              onPress={() => {
                isAdding.value = true;
              }}
            >
              Give its document
            </Button>
          </div>
        </>
      ) : (
        <>
          <Fields>
            <TextField
              label="Document"
              value={qualification.document}
              onChange={(document) =>
                edit('document', (draft) => {
                  draft.qualification = { ...qualification, document };
                })
              }
            />
            <TextField
              label="For the standard"
              hint={`Such as ${standardNames.join(', ')}.`}
              value={qualification.standard}
              onChange={(standard) =>
                edit('standard of the document', (draft) => {
                  draft.qualification = { ...qualification, standard };
                })
              }
            />
          </Fields>
          <div class={styles.tools}>
            <Button
              kind="quiet"
              onPress={() =>
                edit('no document', (draft) => {
                  draft.qualification = null;
                })
              }
            >
              It has no document
            </Button>
          </div>
        </>
      )}
      <Fields>
        {LIMITS.map(([key, label]) => (
          <QuantityField
            key={key}
            label={label}
            quantity="length"
            value={item[key]}
            whenEmpty="as the standard"
            onChange={(value) =>
              edit(label.toLowerCase(), (draft) => {
                draft[key] = value;
              })
            }
          />
        ))}
        <QuantityField
          label="Pry-out factor k_8"
          quantity="number"
          value={item.pryOutFactor}
          whenEmpty="as the standard"
          onChange={(value) =>
            edit('pry-out factor', (draft) => {
              draft.pryOutFactor = value;
            })
          }
        />
      </Fields>
      <OptionalGroup
        title="Splitting"
        none="The document has no values for splitting: the standard’s own way counts."
        give="Give the values for splitting"
        fields={[
          { key: 'criticalEdge_mm', label: 'Critical edge c_cr,sp' },
          { key: 'minimumThickness_mm', label: 'Thickness h_min that it holds for' },
        ]}
        value={splitting}
        onChange={(value) =>
          edit(value === null ? 'no values for splitting' : 'splitting', (draft) => {
            draft.splitting = value;
          })
        }
      />
      {isAdding.value && (
        <EntryDialog
          title={`Document of ${item.id}`}
          fields={[
            { key: 'document', label: 'Document', hint: 'Its number and date.', kind: { of: 'text' }, value: null },
            {
              key: 'standard',
              label: 'For the standard',
              kind: { of: 'choice', options: standardNames.map((name) => ({ value: name, text: name })) },
              value: 'EN 1992-4',
            },
          ]}
          action="Take it"
          onClose={() => {
            isAdding.value = false;
          }}
          onTake={(values) =>
            edit('document', (draft) => {
              draft.qualification = { document: textIn(values, 'document'), standard: textIn(values, 'standard') };
            })
          }
        />
      )}
    </Section>
  );
}
