import { useSignal } from '@preact/signals';
import type { Combination, Connection } from '../../../../job/documents/connection.ts';
import { changeConnection } from '../../../../job/edit/plate/change-connection.ts';
import { Button } from '../../../parts/button.tsx';
import { CheckField, ChoiceField, QuantityField, TextField } from '../../../parts/field.tsx';
import { Notice } from '../../../parts/notice.tsx';
import { Fields } from '../../../parts/page.tsx';
import { Sign } from '../../../parts/signs.tsx';
import { type Column, Table } from '../../../parts/table.tsx';
import { unitOf } from '../../../parts/units.ts';
import { LOAD_COLUMNS } from './load-columns.ts';
import styles from './loads-part.module.css';
import { PasteDialog } from './paste-dialog.tsx';
import type { Commit } from './use-connection.ts';

type Kind = Connection['actions']['kind'];

const KINDS: readonly { readonly value: Kind; readonly text: string }[] = [
  { value: 'loads', text: 'loads on the plate, by combination' },
  { value: 'required', text: 'what each insert must resist' },
  { value: 'none', text: 'no action is given' },
];

const EMPTY: Combination = {
  name: 'load 1',
  N_kN: 0,
  Vx_kN: 0,
  Vy_kN: 0,
  Mx_kNm: 0,
  My_kNm: 0,
  T_kNm: 0,
  at_mm: [0, 0],
};

function startOf(kind: Kind): Connection['actions'] {
  if (kind === 'loads') return { kind, combinations: [EMPTY] };
  return kind === 'required' ? { kind, N_kN: 0, V_kN: 0 } : { kind };
}

/** A name like another that is not taken: `wind 2`. */
function nextName(name: string, taken: readonly string[]): string {
  const base = name.replace(/ \d+$/, '');
  let number = 2;
  while (taken.includes(`${base} ${number}`)) number += 1;
  return `${base} ${number}`;
}

function LoadsTable({
  mark,
  combinations,
  commit,
}: {
  readonly mark: string;
  readonly combinations: readonly Combination[];
  readonly commit: Commit;
}) {
  const isOff = combinations.some(({ at_mm: [x, y] }) => x !== 0 || y !== 0);
  const showsPlace = useSignal(false);
  const hasMoments = combinations.some(({ Mx_kNm, My_kNm, T_kNm }) => Mx_kNm !== 0 || My_kNm !== 0 || T_kNm !== 0);
  const showsMoments = useSignal(false);
  const pasted = useSignal<string | null>(null);
  const put = (label: string, rows: readonly Combination[]) =>
    commit(
      `${mark}: ${label}`,
      changeConnection(mark, (draft) => {
        draft.actions = {
          kind: 'loads',
          combinations: rows.map((row) => ({ ...row, at_mm: [row.at_mm[0], row.at_mm[1]] })),
        };
      }),
    );
  const change = (k: number, label: string, part: Partial<Combination>) =>
    put(
      label,
      combinations.map((row, i) => (i === k ? { ...row, ...part } : row)),
    );
  const names = combinations.map(({ name }) => name);
  const rows = combinations.map((row, k) => ({ row, k }));
  type Shown = (typeof rows)[number];
  const columns: readonly Column<Shown>[] = [
    {
      head: 'combination',
      cell: ({ row, k }) => (
        <div class={styles.name}>
          <TextField
            isInTable
            label={`Name of combination ${k + 1}`}
            value={row.name}
            onChange={(name) => change(k, 'name of a combination', { name })}
          />
        </div>
      ),
    },
    ...LOAD_COLUMNS.filter(({ quantity }) => quantity === 'force' || hasMoments || showsMoments.value).map(
      ({ key, head, quantity }): Column<Shown> => ({
        head: `${head} ${unitOf(quantity)}`,
        cell: ({ row, k }) => (
          <div class={styles.value}>
            <QuantityField
              isInTable
              isBare
              label={`${head} of ${row.name}`}
              quantity={quantity}
              value={row[key]}
              onChange={(value) => (value === null ? null : change(k, `${head} of ${row.name}`, { [key]: value }))}
            />
          </div>
        ),
      }),
    ),
    ...(isOff || showsPlace.value
      ? ([0, 1] as const).map(
          (axis): Column<Shown> => ({
            head: `at ${axis === 0 ? 'x' : 'y'} ${unitOf('length')}`,
            cell: ({ row, k }) => (
              <div class={styles.value}>
                <QuantityField
                  isInTable
                  isBare
                  label={`Place of ${row.name}, ${axis === 0 ? 'x' : 'y'}`}
                  quantity="length"
                  value={row.at_mm[axis]}
                  onChange={(value) =>
                    value === null
                      ? null
                      : change(k, `place of ${row.name}`, {
                          at_mm: axis === 0 ? [value, row.at_mm[1]] : [row.at_mm[0], value],
                        })
                  }
                />
              </div>
            ),
          }),
        )
      : []),
    {
      head: '',
      cell: ({ row, k }) => (
        <div class={styles.cells}>
          <Button
            kind="quiet"
            name={`Copy ${row.name}`}
            onPress={() =>
              put(`${row.name} copied`, combinations.toSpliced(k + 1, 0, { ...row, name: nextName(row.name, names) }))
            }
          >
            Copy
          </Button>
          <Button
            kind="quiet"
            name={`Remove ${row.name}`}
            isDisabled={combinations.length === 1}
            onPress={() => put(`${row.name} removed`, combinations.toSpliced(k, 1))}
          >
            <Sign name="cross" />
          </Button>
        </div>
      ),
    },
  ];
  return (
    <div
      class={styles.loads}
      onPaste={(event) => {
        const text = event.clipboardData?.getData('text/plain') ?? '';
        if (!/\t/.test(text)) return;
        event.preventDefault();
        pasted.value = text;
      }}
    >
      <Table caption="Load combinations" columns={columns} rows={rows} keyOf={({ k }) => String(k)} />
      <div class={styles.row}>
        <Button
          onPress={() =>
            put('load combination added', [...combinations, { ...EMPTY, name: nextName('load 1', names) }])
          }
        >
          Add a combination
        </Button>
        <Button
          kind="quiet"
          onPress={() => {
            pasted.value = '';
          }}
        >
          Paste from a spreadsheet
        </Button>
        {!hasMoments && (
          <CheckField
            label="Moments too"
            isOn={showsMoments.value}
            onChange={(isOn) => {
              showsMoments.value = isOn;
            }}
          />
        )}
        {!isOff && (
          <CheckField
            label="Loads act off the middle of the plate"
            isOn={showsPlace.value}
            onChange={(isOn) => {
              showsPlace.value = isOn;
            }}
          />
        )}
      </div>
      {pasted.value !== null && (
        <PasteDialog
          text={pasted.value}
          onTake={(given, replaces) => put('loads pasted', replaces ? given : [...combinations, ...given])}
          onClose={() => {
            pasted.value = null;
          }}
        />
      )}
    </div>
  );
}

function Required({
  mark,
  actions,
  commit,
}: {
  readonly mark: string;
  readonly actions: Extract<Connection['actions'], { readonly kind: 'required' }>;
  readonly commit: Commit;
}) {
  const put = (part: Partial<typeof actions>) =>
    commit(
      `${mark}: what each insert must resist`,
      changeConnection(mark, (draft) => {
        draft.actions = { ...actions, ...part };
      }),
    );
  return (
    <Fields>
      <QuantityField
        label="Tension on each insert, N"
        quantity="force"
        value={actions.N_kN}
        onChange={(value) => (value === null ? null : put({ N_kN: value }))}
      />
      <QuantityField
        label="Shear on each insert, V"
        quantity="force"
        hint="Turned toward every edge in sight: its direction is not known."
        value={actions.V_kN}
        onChange={(value) => (value === null ? null : put({ V_kN: value }))}
      />
    </Fields>
  );
}

/** What the connection must carry. Without it the strength is not checked, and nothing here says otherwise. */
export function LoadsPart({ connection, commit }: { readonly connection: Connection; readonly commit: Commit }) {
  const { mark, actions } = connection;
  return (
    <>
      <Fields>
        <ChoiceField
          label="Given as"
          value={actions.kind}
          options={KINDS}
          hint="Design (factored) values of the code that the job is checked by."
          onChange={(kind) =>
            commit(
              `${mark}: ${KINDS.find(({ value }) => value === kind)?.text ?? kind}`,
              changeConnection(mark, (draft) => {
                draft.actions = startOf(kind) as typeof draft.actions;
              }),
            )
          }
        />
      </Fields>
      {actions.kind === 'loads' && <LoadsTable mark={mark} combinations={actions.combinations} commit={commit} />}
      {actions.kind === 'required' && <Required mark={mark} actions={actions} commit={commit} />}
      {actions.kind === 'none' && (
        <Notice kind="caution" title="Strength not checked">
          Nothing says what this connection must carry. Its resistances are shown; none of them is a pass.
        </Notice>
      )}
      {actions.kind === 'loads' && (
        <p>
          N pulls off the panel, Vx to the right and Vy up as one stands in front of the plate, in the plate's axes; Mx
          and My turn about its x and y, T about its middle.
        </p>
      )}
    </>
  );
}
