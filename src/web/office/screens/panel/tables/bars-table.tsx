import type { Panel } from '../../../../../job/documents/panel.ts';
import { changePanel } from '../../../../../job/edit/commands/edit-face.ts';
import { Button } from '../../../../parts/button.tsx';
import { CheckField, ChoiceField, QuantityField } from '../../../../parts/field.tsx';
import { Sign } from '../../../../parts/signs.tsx';
import { type Column, Table } from '../../../../parts/table.tsx';
import { type Quantity, writeQuantity } from '../../../../parts/units.ts';
import type { PanelDesk } from '../desk/panel-desk.ts';
import { say } from './say.ts';
import styles from './tables.module.css';

type Reinforcement = NonNullable<Panel['reinforcement']>;
type Bars = Reinforcement['bars'][number];

const FACES = (['outside', 'inside'] as const).map((value) => ({ value, text: value }));
const KINDS = (['bars', 'mesh', 'strand'] as const).map((value) => ({ value, text: value }));
const EDGES: readonly { readonly value: Reinforcement['edge']; readonly text: string }[] = [
  { value: 'none', text: 'none' },
  { value: 'bar', text: 'a bar along the edge' },
  { value: 'bar-and-stirrups', text: 'a bar with stirrups' },
];

/** The width that the document's word means [mm]. */
const CRACK = 0.3;

const FIRST: Reinforcement = {
  bars: [],
  edge: 'none',
  stirrupSpacing_mm: null,
  limitsCrackWidth: false,
  yield_MPa: 500,
};
const NEW: Bars = {
  face: 'inside',
  direction_deg: 0,
  diameter_mm: 10,
  spacing_mm: 200,
  cover_mm: 30,
  kind: 'bars',
  through_mm: null,
  endCover_mm: null,
};

/** Bars and mesh as far as they are known; what is not known is taken on the safe side. */
export function BarsTable({ desk }: { readonly desk: PanelDesk }) {
  const { reinforcement } = desk.live.value.panel;
  const { mark, isHanded } = desk;
  const change = (next: Reinforcement | null) =>
    isHanded
      ? desk.handedWords
      : desk.commit(
          `Bars of ${mark}`,
          changePanel(mark, (draft) => {
            draft.reinforcement = next;
          }),
        );
  if (reinforcement === null)
    return (
      <div class={styles.stack}>
        <p class={styles.hint}>
          Its bars are not known: no supplementary reinforcement is counted, and what meets what in the cage cannot be
          looked at.
        </p>
        <div class={styles.acts}>
          <Button isDisabled={isHanded} onPress={() => say(change({ ...FIRST, bars: [NEW] }))}>
            Describe its bars
          </Button>
        </div>
      </div>
    );
  const { bars } = reinforcement;
  const put = (k: number, part: Partial<Bars>) =>
    change({ ...reinforcement, bars: bars.map((one, i) => (i === k ? { ...one, ...part } : one)) });
  const number = (
    head: string,
    quantity: Quantity,
    read: (one: Bars) => number | null,
    write: (value: number) => Partial<Bars>,
  ): Column<{ readonly one: Bars; readonly k: number }> => ({
    head,
    kind: 'number',
    cell: ({ one, k }) => (
      <QuantityField
        isInTable
        label={`${head} of layer ${k + 1}`}
        quantity={quantity}
        value={read(one)}
        isReadOnly={isHanded}
        onChange={(value) => (value === null ? null : put(k, write(value)))}
      />
    ),
  });
  /** A point that the axis of one bar passes: without it nobody knows where the bars lie. */
  const through = (head: string, axis: 0 | 1): Column<{ readonly one: Bars; readonly k: number }> => ({
    head,
    kind: 'number',
    cell: ({ one, k }) => (
      <QuantityField
        isInTable
        label={`${head} of layer ${k + 1}`}
        quantity="length"
        value={one.through_mm === null ? null : one.through_mm[axis]}
        whenEmpty="not known"
        isReadOnly={isHanded}
        onChange={(value) => {
          if (value === null) return put(k, { through_mm: null });
          const [x, y] = one.through_mm ?? [0, 0];
          return put(k, { through_mm: axis === 0 ? [value, y] : [x, value] });
        }}
      />
    ),
  });
  return (
    <div class={styles.stack}>
      <div class={styles.triple}>
        <ChoiceField
          label="Along the edges"
          value={reinforcement.edge}
          options={EDGES}
          onChange={(edge) =>
            change({
              ...reinforcement,
              edge,
              stirrupSpacing_mm: edge === 'bar-and-stirrups' ? reinforcement.stirrupSpacing_mm : null,
            })
          }
        />
        {reinforcement.edge === 'bar-and-stirrups' && (
          <QuantityField
            label="Stirrup spacing"
            quantity="length"
            value={reinforcement.stirrupSpacing_mm}
            whenEmpty="not known"
            isReadOnly={isHanded}
            onChange={(stirrupSpacing_mm) => change({ ...reinforcement, stirrupSpacing_mm })}
          />
        )}
        <QuantityField
          label="Yield strength"
          quantity="stress"
          value={reinforcement.yield_MPa}
          isReadOnly={isHanded}
          onChange={(value) => change({ ...reinforcement, yield_MPa: value ?? reinforcement.yield_MPa })}
        />
        <CheckField
          label={`Keeps cracks within ${writeQuantity('length', CRACK)}`}
          isOn={reinforcement.limitsCrackWidth}
          isDisabled={isHanded}
          onChange={(limitsCrackWidth) => say(change({ ...reinforcement, limitsCrackWidth }))}
        />
      </div>
      {bars.length > 0 && (
        <Table
          caption="Layers of bars"
          rows={bars.map((one, k) => ({ one, k }))}
          keyOf={({ k }) => String(k)}
          columns={[
            { head: 'Layer', isName: true, cell: ({ k }) => String(k + 1) },
            {
              head: 'Face',
              cell: ({ one, k }) => (
                <ChoiceField
                  isInTable
                  label={`Face of layer ${k + 1}`}
                  value={one.face}
                  options={FACES}
                  onChange={(face) => put(k, { face })}
                />
              ),
            },
            {
              head: 'Kind',
              cell: ({ one, k }) => (
                <ChoiceField
                  isInTable
                  label={`Kind of layer ${k + 1}`}
                  value={one.kind}
                  options={KINDS}
                  onChange={(kind) => put(k, { kind })}
                />
              ),
            },
            number(
              'Direction',
              'degrees',
              (one) => one.direction_deg,
              (direction_deg) => ({ direction_deg }),
            ),
            number(
              'Diameter',
              'length',
              (one) => one.diameter_mm,
              (diameter_mm) => ({ diameter_mm }),
            ),
            number(
              'Spacing',
              'length',
              (one) => one.spacing_mm,
              (spacing_mm) => ({ spacing_mm }),
            ),
            number(
              'Cover',
              'length',
              (one) => one.cover_mm,
              (cover_mm) => ({ cover_mm }),
            ),
            through('Through x', 0),
            through('Through y', 1),
            {
              head: 'Cover at its end',
              kind: 'number',
              cell: ({ one, k }) => (
                <QuantityField
                  isInTable
                  label={`Cover at the end of layer ${k + 1}`}
                  quantity="length"
                  value={one.endCover_mm}
                  whenEmpty="as over it"
                  isReadOnly={isHanded}
                  onChange={(endCover_mm) => put(k, { endCover_mm })}
                />
              ),
            },
            {
              head: 'Remove',
              cell: ({ k }) => (
                <Button
                  kind="quiet"
                  isDisabled={isHanded}
                  name={`Remove layer ${k + 1} of bars`}
                  onPress={() => say(change({ ...reinforcement, bars: bars.filter((_, i) => i !== k) }))}
                >
                  <Sign name="cross" />
                </Button>
              ),
            },
          ]}
        />
      )}
      <div class={styles.acts}>
        <Button isDisabled={isHanded} onPress={() => say(change({ ...reinforcement, bars: [...bars, NEW] }))}>
          Add a layer of bars
        </Button>
        <Button kind="quiet" isDisabled={isHanded} onPress={() => say(change(null))}>
          Bars are not known
        </Button>
      </div>
    </div>
  );
}
