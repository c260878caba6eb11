import { useSignal } from '@preact/signals';
import type { Concrete } from '../../../../job/documents/concrete.ts';
import { changeConcrete } from '../../../../job/edit/commands/edit-library.ts';
import { findConcreteUses } from '../../../../job/find-uses.ts';
import { countOf } from '../../../../say/part-words.ts';
import { Button } from '../../../parts/button.tsx';
import entry from '../../../parts/entry.module.css';
import { EntryDialog, type EntryField, numberIn, textIn } from '../../../parts/entry-dialog.tsx';
import { CheckField, QuantityField, TextField } from '../../../parts/field.tsx';
import { Notice } from '../../../parts/notice.tsx';
import { Fields, Section } from '../../../parts/page.tsx';
import { Sign } from '../../../parts/signs.tsx';
import { type Column, Table } from '../../../parts/table.tsx';
import type { JobSession } from '../../state/session.ts';
import styles from './rules.module.css';

type Age = Concrete['ages'][number];

const AGE_FIELDS: readonly EntryField[] = [
  { key: 'age', label: 'Age', kind: { of: 'quantity', quantity: 'days' }, value: null },
  { key: 'strength', label: 'Strength f_ck then', kind: { of: 'quantity', quantity: 'stress' }, value: null },
];

function Mix({
  session,
  mix,
  uses,
}: {
  readonly session: JobSession;
  readonly mix: Concrete;
  readonly uses: readonly string[];
}) {
  const isAdding = useSignal(false);
  const edit = (what: string, change: Parameters<typeof changeConcrete>[1]) =>
    session.commit(`Concrete ${mix.id}: ${what}`, changeConcrete(mix.id, change));
  const columns: readonly Column<Age & { readonly index: number }>[] = [
    { head: 'age (days)', isName: true, cell: ({ age_days }) => age_days },
    {
      head: 'strength then',
      kind: 'number',
      cell: ({ strength_MPa, index }) => (
        <QuantityField
          isInTable
          label={`Strength of ${mix.id} at ${mix.ages[index]?.age_days} days`}
          quantity="stress"
          value={strength_MPa}
          onChange={(value) =>
            value === null
              ? 'expected a strength'
              : edit('strength at an age', (draft) => {
                  const age = draft.ages[index];
                  if (age !== undefined) age.strength_MPa = value;
                })
          }
        />
      ),
    },
    {
      head: '',
      cell: ({ index, age_days }) => (
        <Button
          kind="quiet"
          name={`Take the strength of ${mix.id} at ${age_days} days away`}
          onPress={() =>
            edit('an age taken away', (draft) => {
              draft.ages.splice(index, 1);
            })
          }
        >
          <Sign name="cross" />
        </Button>
      ),
    },
  ];
  return (
    <div class={entry.entry}>
      <div class={entry.entryHead}>
        <h3>{mix.id}</h3>
        <span class={styles.uses}>
          {uses.length === 0 ? 'no panel is made of it' : `${countOf(uses.length, 'panel')}: ${uses.join(', ')}`}
        </span>
        <div class={styles.tools}>
          <Button
            kind="quiet"
            onPress={() => {
              isAdding.value = true;
            }}
          >
            Add an age
          </Button>
          <Button
            kind="quiet"
            isDisabled={uses.length > 0}
            onPress={() =>
              session.commit(`Concrete ${mix.id} removed`, ({ job }) => {
                job.concretes = job.concretes.filter(({ id }) => id !== mix.id);
              })
            }
          >
            Remove it
          </Button>
        </div>
      </div>
      <Fields>
        <TextField
          label="Name on drawings"
          value={mix.id}
          onChange={(id) =>
            edit(`named ${id}`, (draft) => {
              draft.id = id;
            })
          }
        />
        <TextField
          label="In words"
          value={mix.name ?? ''}
          onChange={(name) =>
            edit('words', (draft) => {
              draft.name = name === '' ? null : name;
            })
          }
        />
        <QuantityField
          label="Strength f_ck at 28 days"
          hint="Characteristic, of cylinders."
          quantity="stress"
          value={mix.strength28_MPa}
          onChange={(value) =>
            value === null
              ? 'expected a strength'
              : edit('strength', (draft) => {
                  draft.strength28_MPa = value;
                })
          }
        />
        <CheckField
          label="Lightweight aggregate (not covered)"
          isOn={mix.lightweight}
          onChange={(isOn) =>
            edit(isOn ? 'lightweight' : 'normal weight', (draft) => {
              draft.lightweight = isOn;
            })
          }
        />
      </Fields>
      {mix.ages.length > 0 && (
        <Table
          caption={`Strengths of ${mix.id} at other ages`}
          columns={columns}
          rows={mix.ages.map((age, index) => ({ ...age, index }))}
          keyOf={({ index, age_days }) => `${index} ${age_days}`}
        />
      )}
      {isAdding.value && (
        <EntryDialog
          title={`${mix.id} at another age`}
          lead="As tested or agreed with the yard; only such a strength counts before 28 days."
          fields={AGE_FIELDS}
          action="Add it"
          onClose={() => {
            isAdding.value = false;
          }}
          onTake={(values) => {
            const [age_days, strength_MPa] = [numberIn(values, 'age'), numberIn(values, 'strength')];
            if (age_days === null || strength_MPa === null) return 'expected an age and a strength';
            return edit(`strength at ${age_days} days`, (draft) => {
              draft.ages = [...draft.ages, { age_days, strength_MPa }].sort((a, b) => a.age_days - b.age_days);
            });
          }}
        />
      )}
    </div>
  );
}

/** The mixes of the job. */
export function ConcreteRules({ session }: { readonly session: JobSession }) {
  const isAdding = useSignal(false);
  const file = session.shown.value;
  const uses = findConcreteUses(file);
  return (
    <Section
      title="Concretes"
      anchor="concrete"
      lead="The mixes of this job. A changed strength changes the answers of every panel that is made of it."
      actions={
        <Button
          onPress={() => {
            isAdding.value = true;
          }}
        >
          Add a concrete
        </Button>
      }
    >
      <Notice kind="caution" title="Before the concrete has its strength">
        An answer at 28 days says nothing about a load that comes earlier. Early strengths count only as tested or
        agreed.
      </Notice>
      {file.job.concretes.map((mix, index) => (
        <Mix key={`${index}`} session={session} mix={mix} uses={uses.get(mix.id) ?? []} />
      ))}
      {isAdding.value && (
        <EntryDialog
          title="Add a concrete"
          fields={[
            { key: 'id', label: 'Name on drawings', hint: 'Such as C40.', kind: { of: 'text' }, value: null },
            {
              key: 'strength',
              label: 'Strength f_ck at 28 days',
              kind: { of: 'quantity', quantity: 'stress' },
              value: null,
            },
          ]}
          action="Add it"
          onClose={() => {
            isAdding.value = false;
          }}
          onTake={(values) => {
            const strength28_MPa = numberIn(values, 'strength');
            if (strength28_MPa === null) return 'expected a strength';
            const id = textIn(values, 'id');
            return session.commit(`Concrete ${id} added`, ({ job }) => {
              job.concretes.push({ id, name: null, strength28_MPa, ages: [], lightweight: false });
            });
          }}
        />
      )}
    </Section>
  );
}
