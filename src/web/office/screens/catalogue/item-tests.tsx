import { useSignal } from '@preact/signals';
import type { CatalogueItem } from '../../../../job/documents/catalogue.ts';
import { TEST_WORDS } from '../../../../say/item-words.ts';
import { Button } from '../../../parts/button.tsx';
import entry from '../../../parts/entry.module.css';
import { EntryDialog, numberIn, textIn } from '../../../parts/entry-dialog.tsx';
import { QuantityField, TextField } from '../../../parts/field.tsx';
import { Fields, Section } from '../../../parts/page.tsx';
import { type ItemPartProps, needed } from './edit-item.ts';

type Tested = CatalogueItem['tested'][number];

const MODES = ['steel-tension', 'steel-shear', 'thread', 'pull-out'] as const;

function Test({ item, edit, index, test }: ItemPartProps & { readonly index: number; readonly test: Tested }) {
  const change = (what: string, values: Partial<Tested>) =>
    edit(`test ${index + 1}, ${what}`, (draft) => {
      draft.tested[index] = { ...test, ...values };
    });
  return (
    <div class={entry.entry}>
      <div class={entry.entryHead}>
        <h3>
          {TEST_WORDS[test.mode]}, report {test.report}
        </h3>
        <Button
          kind="quiet"
          name={`Take it away: test ${index + 1} of ${item.id}`}
          onPress={() =>
            edit(`test ${index + 1} taken away`, (draft) => {
              draft.tested.splice(index, 1);
            })
          }
        >
          Take it away
        </Button>
      </div>
      <Fields>
        <QuantityField
          label="Characteristic resistance"
          quantity="force"
          value={test.characteristic_kN}
          onChange={needed((characteristic_kN) => change('resistance', { characteristic_kN }))}
        />
        <QuantityField
          label="Partial factor of the report"
          quantity="number"
          value={test.partialFactor}
          whenEmpty="that of the standard"
          onChange={(partialFactor) => change('partial factor', { partialFactor })}
        />
        {test.mode === 'pull-out' && (
          <QuantityField
            label="From concrete strength f_ck"
            quantity="stress"
            value={test.fromStrength_MPa}
            onChange={needed((fromStrength_MPa) => change('concrete strength', { fromStrength_MPa }))}
          />
        )}
        <TextField label="Report" value={test.report} onChange={(report) => change('report', { report })} />
        <TextField
          label="Standard"
          hint="Where it names design standards, the test counts under those only."
          value={test.standard}
          onChange={(standard) => change('standard', { standard })}
        />
        <TextField
          label="Conditions"
          value={test.conditions}
          onChange={(conditions) => change('conditions', { conditions })}
        />
      </Fields>
    </div>
  );
}

/** Resistances that were measured, each with its report. */
export function ItemTests({ item, edit }: ItemPartProps) {
  const isAdding = useSignal(false);
  return (
    <Section
      title="Tested resistances"
      lead="A test takes the place of a formula only with its report number. Without tests the standard’s formulas count."
      actions={
        <Button
          onPress={() => {
            isAdding.value = true;
          }}
        >
          Add a test
        </Button>
      }
    >
      {item.tested.length === 0 && <p>None.</p>}
      {item.tested.map((test, index) => (
        <Test key={`${index} ${test.mode}`} item={item} edit={edit} index={index} test={test} />
      ))}
      {isAdding.value && (
        <EntryDialog
          title={`A test of ${item.id}`}
          fields={[
            {
              key: 'mode',
              label: 'What was tested',
              kind: { of: 'choice', options: MODES.map((value) => ({ value, text: TEST_WORDS[value] })) },
              value: 'pull-out',
            },
            {
              key: 'resistance',
              label: 'Characteristic resistance',
              kind: { of: 'quantity', quantity: 'force' },
              value: null,
            },
            {
              key: 'factor',
              label: 'Partial factor of the report',
              kind: { of: 'quantity', quantity: 'number' },
              value: null,
              whenEmpty: 'that of the standard',
            },
            {
              key: 'from',
              label: 'From concrete strength f_ck',
              hint: 'Of a pull-out only; steel holds whatever the concrete.',
              kind: { of: 'quantity', quantity: 'stress' },
              value: null,
              whenEmpty: 'steel: none',
            },
            { key: 'report', label: 'Report', hint: 'Its number and date.', kind: { of: 'text' }, value: null },
            { key: 'standard', label: 'Standard', kind: { of: 'text' }, value: null },
            { key: 'conditions', label: 'Conditions', kind: { of: 'text' }, value: null },
          ]}
          action="Add the test"
          onClose={() => {
            isAdding.value = false;
          }}
          onTake={(values) => {
            const mode = MODES.find((known) => known === values.mode) ?? 'pull-out';
            const resistance = numberIn(values, 'resistance');
            if (resistance === null) return 'expected a resistance';
            return edit('test added', (draft) => {
              draft.tested.push({
                mode,
                characteristic_kN: resistance,
                partialFactor: numberIn(values, 'factor'),
                fromStrength_MPa: numberIn(values, 'from'),
                report: textIn(values, 'report'),
                standard: textIn(values, 'standard'),
                conditions: textIn(values, 'conditions'),
              });
            });
          }}
        />
      )}
    </Section>
  );
}
