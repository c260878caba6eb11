import type { Point } from '../../../../../engine/geometry/point.ts';
import { changePanel } from '../../../../../job/edit/commands/edit-face.ts';
import { addCorner, findOnSides, removeCorner } from '../../../../../job/edit/commands/edit-outline.ts';
import { Button } from '../../../../parts/button.tsx';
import { QuantityField } from '../../../../parts/field.tsx';
import { Sign } from '../../../../parts/signs.tsx';
import { Table } from '../../../../parts/table.tsx';
import { writeQuantity } from '../../../../parts/units.ts';
import type { PanelDesk } from '../desk/panel-desk.ts';
import { say } from './say.ts';
import styles from './tables.module.css';

type Ring = readonly Point[];

/** A new corner lies half way to the next one, so that the outline stays as it is until it is moved. */
function findBetween(ring: Ring, k: number): Point {
  const [x0, y0] = ring[k]!;
  const [x1, y1] = ring[(k + 1) % ring.length]!;
  return [(x0 + x1) / 2, (y0 + y1) / 2];
}

/** What becomes of a ring's corners; each gives why it cannot be, or null. */
interface RingActs {
  readonly onChange: (ring: Ring) => string | null;
  readonly onAdd: (behind: number, at: Point) => string | null;
  readonly onRemove: (corner: number) => string | null;
}

function RingTable({
  name,
  ring,
  isReadOnly,
  hasEdges,
  onChange,
  onAdd,
  onRemove,
}: RingActs & {
  readonly name: string;
  readonly ring: Ring;
  readonly isReadOnly: boolean;
  readonly hasEdges: boolean;
}) {
  const rows = ring.map((at, k) => ({ at, k }));
  const put = (k: number, at: Point) => onChange(ring.map((old, i) => (i === k ? at : old)));
  return (
    <Table
      caption={name}
      rows={rows}
      keyOf={({ k }) => String(k)}
      columns={[
        { head: hasEdges ? 'Corner, edge to the next' : 'Corner', isName: true, cell: ({ k }) => String(k) },
        {
          head: 'x as drawn',
          kind: 'number',
          cell: ({ at, k }) => (
            <QuantityField
              isInTable
              label={`x of corner ${k} of the ${name}`}
              quantity="length"
              value={at[0]}
              isReadOnly={isReadOnly}
              onChange={(x) => put(k, [x ?? at[0], at[1]])}
            />
          ),
        },
        {
          head: 'y as drawn',
          kind: 'number',
          cell: ({ at, k }) => (
            <QuantityField
              isInTable
              label={`y of corner ${k} of the ${name}`}
              quantity="length"
              value={at[1]}
              isReadOnly={isReadOnly}
              onChange={(y) => put(k, [at[0], y ?? at[1]])}
            />
          ),
        },
        {
          head: 'Length to the next',
          kind: 'number',
          cell: ({ at, k }) => {
            const [x, y] = ring[(k + 1) % ring.length]!;
            return writeQuantity('length', Math.hypot(x - at[0], y - at[1]));
          },
        },
        {
          head: 'Corners',
          cell: ({ k }) => (
            <span class={styles.acts}>
              <Button
                kind="quiet"
                isDisabled={isReadOnly}
                name={`A corner behind corner ${k} of the ${name}`}
                onPress={() => say(onAdd(k, findBetween(ring, k)))}
              >
                + corner
              </Button>
              <Button
                kind="quiet"
                isDisabled={isReadOnly || ring.length <= 3}
                name={`Remove corner ${k} of the ${name}`}
                onPress={() => say(onRemove(k))}
              >
                <Sign name="cross" />
              </Button>
            </span>
          ),
        },
      ]}
    />
  );
}

/** Corners of the outline and of the openings, as drawn. Inserts stay where they are: what would lose its concrete is said. */
export function OutlineTable({ desk }: { readonly desk: PanelDesk }) {
  const { panel } = desk.live.value;
  const { mark, isHanded } = desk;
  const change = (label: string, write: Parameters<typeof changePanel>[1]) =>
    isHanded ? desk.handedWords : desk.commit(label, changePanel(mark, write));
  const changeOpening = (k: number, ring: Ring) =>
    change(`Opening ${k + 1} of ${mark}`, (draft) => {
      draft.openings_mm = draft.openings_mm.map((old, i) => (i === k ? ring : old));
    });
  return (
    <div class={styles.stack}>
      <h3>Outline</h3>
      <RingTable
        name="outline"
        ring={panel.outline_mm}
        isReadOnly={isHanded}
        hasEdges
        onChange={(ring) =>
          change(`Outline of ${mark}`, (draft) => {
            draft.outline_mm = ring;
          })
        }
        // Sides are numbered by the corners: what is on a side keeps to it.
        onAdd={(k, at) =>
          isHanded ? desk.handedWords : desk.commit(`Corner put into ${mark}`, addCorner(mark, k, at))
        }
        onRemove={(k) => {
          if (isHanded) return desk.handedWords;
          const why = findOnSides(desk.index.peek().file, mark, k);
          return why ?? desk.commit(`Corner ${k} of ${mark} removed`, removeCorner(mark, k));
        }}
      />
      {panel.openings_mm.map((opening, k) => (
        <section key={k} class={styles.stack}>
          <div class={styles.headRow}>
            <h3>Opening {k + 1}</h3>
            <Button
              kind="danger"
              isDisabled={isHanded}
              onPress={() =>
                say(
                  change(`Opening ${k + 1} of ${mark} removed`, (draft) => {
                    draft.openings_mm = draft.openings_mm.filter((_, i) => i !== k);
                  }),
                )
              }
            >
              Remove opening {k + 1}
            </Button>
          </div>
          <RingTable
            name={`opening ${k + 1}`}
            ring={opening}
            isReadOnly={isHanded}
            hasEdges={false}
            onChange={(ring) => changeOpening(k, ring)}
            onAdd={(corner, at) => changeOpening(k, opening.toSpliced(corner + 1, 0, at))}
            onRemove={(corner) => changeOpening(k, opening.toSpliced(corner, 1))}
          />
        </section>
      ))}
      <p class={styles.hint}>A new opening: “Place …” above the drawing.</p>
    </div>
  );
}
