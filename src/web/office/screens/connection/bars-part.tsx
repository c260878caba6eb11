import type { Connection } from '../../../../job/documents/connection.ts';
import { changeConnection } from '../../../../job/edit/plate/change-connection.ts';
import { Button } from '../../../parts/button.tsx';
import { CheckField, QuantityField } from '../../../parts/field.tsx';
import { type Column, Table } from '../../../parts/table.tsx';
import type { Quantity } from '../../../parts/units.ts';
import { tell } from '../../state/messages.ts';
import styles from './bars-part.module.css';
import type { Commit } from './use-connection.ts';

type Hanger = Connection['hangers'][number];
type Hairpin = Connection['hairpins'][number];

const HANGER: Hanger = {
  diameter_mm: 10,
  legs: 2,
  distance_mm: 40,
  anchorageInside_mm: 100,
  anchorageOutside_mm: 200,
  yield_MPa: 500,
  hooked: false,
  goodBond: true,
};
const HAIRPIN: Hairpin = { ...HANGER, toward_deg: 270, depth_mm: 40 };

/** Numbers of a bar, in the order of the columns. */
const NUMBERS = [
  { key: 'diameter_mm', head: 'diameter', quantity: 'length' },
  { key: 'legs', head: 'legs', quantity: 'number' },
  { key: 'distance_mm', head: 'from the insert', quantity: 'length' },
  { key: 'anchorageInside_mm', head: 'bonded inside the body', quantity: 'length' },
  { key: 'anchorageOutside_mm', head: 'bonded outside', quantity: 'length' },
  { key: 'yield_MPa', head: 'yield', quantity: 'stress' },
] as const satisfies readonly { readonly key: keyof Hanger; readonly head: string; readonly quantity: Quantity }[];

const OWN = [
  { key: 'toward_deg', head: 'toward', quantity: 'degrees' },
  { key: 'depth_mm', head: 'below the face', quantity: 'length' },
] as const satisfies readonly { readonly key: keyof Hairpin; readonly head: string; readonly quantity: Quantity }[];

function BarTable<T extends Hanger>({
  name,
  bars,
  numbers,
  put,
}: {
  readonly name: string;
  readonly bars: readonly T[];
  readonly numbers: readonly { readonly key: keyof T & string; readonly head: string; readonly quantity: Quantity }[];
  readonly put: (label: string, bars: readonly T[]) => string | null;
}) {
  const change = (k: number, part: Partial<T>) =>
    put(
      `${name} ${k + 1}`,
      bars.map((bar, i) => (i === k ? { ...bar, ...part } : bar)),
    );
  const say = (why: string | null) => {
    if (why !== null) tell('fault', why);
  };
  const rows = bars.map((bar, k) => ({ bar, k }));
  type Shown = (typeof rows)[number];
  const columns: readonly Column<Shown>[] = [
    { head: name, cell: ({ k }) => k + 1, isName: true },
    ...numbers.map(
      ({ key, head, quantity }): Column<Shown> => ({
        head,
        cell: ({ bar, k }) => (
          <div class={styles.value}>
            <QuantityField
              isInTable
              label={`${head}, ${name} ${k + 1}`}
              quantity={quantity}
              value={Number(bar[key])}
              onChange={(value) => (value === null ? null : change(k, { [key]: value } as Partial<T>))}
            />
          </div>
        ),
      }),
    ),
    {
      head: 'ends and bond',
      cell: ({ bar, k }) => (
        <>
          <CheckField
            label="hooked"
            isOn={bar.hooked}
            onChange={(isOn) => say(change(k, { hooked: isOn } as Partial<T>))}
          />
          <CheckField
            label="good bond"
            isOn={bar.goodBond}
            onChange={(isOn) => say(change(k, { goodBond: isOn } as Partial<T>))}
          />
        </>
      ),
    },
    {
      head: '',
      cell: ({ k }) => (
        <Button
          kind="quiet"
          name={`Remove ${name} ${k + 1}`}
          onPress={() => say(put(`${name} removed`, bars.toSpliced(k, 1)))}
        >
          Remove
        </Button>
      ),
    },
  ];
  return <Table caption={`${name}s`} columns={columns} rows={rows} keyOf={({ k }) => String(k)} />;
}

/** Bars that take up the load in place of the concrete: counted for what is bonded on each side of the failure plane. */
export function BarsPart({ connection, commit }: { readonly connection: Connection; readonly commit: Commit }) {
  const { mark, hangers, hairpins } = connection;
  const putHangers = (label: string, bars: readonly Hanger[]) =>
    commit(
      `${mark}: ${label}`,
      changeConnection(mark, (draft) => {
        draft.hangers = bars.map((bar) => ({ ...bar }));
      }),
    );
  const putHairpins = (label: string, bars: readonly Hairpin[]) =>
    commit(
      `${mark}: ${label}`,
      changeConnection(mark, (draft) => {
        draft.hairpins = bars.map((bar) => ({ ...bar }));
      }),
    );
  const say = (why: string | null) => {
    if (why !== null) tell('fault', why);
  };
  return (
    <div class={styles.list}>
      {hangers.length > 0 && <BarTable name="hanger" bars={hangers} numbers={NUMBERS} put={putHangers} />}
      <div>
        <Button onPress={() => say(putHangers('hanger added', [...hangers, HANGER]))}>
          Add a hanger, against tension
        </Button>
      </div>
      {hairpins.length > 0 && (
        <BarTable name="hairpin" bars={hairpins} numbers={[...NUMBERS, ...OWN]} put={putHairpins} />
      )}
      <div>
        <Button onPress={() => say(putHairpins('hairpin added', [...hairpins, HAIRPIN]))}>
          Add a hairpin, against shear toward an edge
        </Button>
      </div>
      <p>
        A new bar is a proposal: type what the reinforcement drawing shows. A cross bar through an insert holds it in
        place and adds nothing to its resistance.
      </p>
    </div>
  );
}
