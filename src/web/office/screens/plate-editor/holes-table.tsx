import type { Draft } from 'immer';
import type { Fixture, FixtureHole } from '../../../../job/documents/fixture.ts';
import { Button } from '../../../parts/button.tsx';
import { QuantityField } from '../../../parts/field.tsx';
import { Sign } from '../../../parts/signs.tsx';
import { type Column, Table } from '../../../parts/table.tsx';
import type { Quantity } from '../../../parts/units.ts';
import styles from './plate-editor.module.css';
import type { EditPlate } from './plate-edits.ts';

/** Holes of a plate, each number to be typed. */
export function HolesTable({
  fixture,
  edit,
  insertOf,
  onRemove,
}: {
  readonly fixture: Fixture;
  readonly edit: EditPlate;
  /** Which insert is behind a hole; null: of no connection. */
  readonly insertOf: ((hole: string) => string) | null;
  readonly onRemove: (hole: string) => void;
}) {
  const change = (id: string, what: string, put: (hole: Draft<FixtureHole>) => void) =>
    edit(`Hole ${id}: ${what}`, ({ holes }) => {
      const hole = holes.find((one) => one.id === id);
      if (hole !== undefined) put(hole);
    });
  const column = (
    head: string,
    quantity: Quantity,
    read: (hole: FixtureHole) => number,
    put: (hole: Draft<FixtureHole>, value: number) => void,
  ): Column<FixtureHole> => ({
    head,
    cell: (hole) => (
      <div class={styles.cell}>
        <QuantityField
          isInTable
          label={`${head} of hole ${hole.id}`}
          quantity={quantity}
          value={read(hole)}
          onChange={(value) => (value === null ? null : change(hole.id, head, (draft) => put(draft, value)))}
        />
      </div>
    ),
  });
  const columns: readonly Column<FixtureHole>[] = [
    { head: 'hole', cell: ({ id }) => id, isName: true },
    ...(insertOf === null ? [] : [{ head: 'insert', cell: ({ id }: FixtureHole) => insertOf(id) }]),
    column(
      'x',
      'length',
      ({ at_mm }) => at_mm[0],
      (hole, value) => {
        hole.at_mm = [value, hole.at_mm[1]];
      },
    ),
    column(
      'y',
      'length',
      ({ at_mm }) => at_mm[1],
      (hole, value) => {
        hole.at_mm = [hole.at_mm[0], value];
      },
    ),
    column(
      'diameter',
      'length',
      ({ diameter_mm }) => diameter_mm,
      (hole, value) => {
        hole.diameter_mm = value;
      },
    ),
    column(
      'slot',
      'length',
      ({ slot_mm }) => slot_mm,
      (hole, value) => {
        hole.slot_mm = value;
      },
    ),
    column(
      'slot turned',
      'degrees',
      ({ slotAngle_deg }) => slotAngle_deg,
      (hole, value) => {
        hole.slotAngle_deg = value;
      },
    ),
    {
      head: 'takes shear',
      cell: (hole) => (
        <label class={styles.check}>
          <input
            type="checkbox"
            aria-label={`Hole ${hole.id} takes shear`}
            checked={hole.takesShear}
            onChange={(event) => {
              const isOn = event.currentTarget.checked;
              change(hole.id, isOn ? 'takes shear' : 'takes no shear', (draft) => {
                draft.takesShear = isOn;
              });
            }}
          />
        </label>
      ),
    },
    {
      head: 'remove',
      cell: ({ id }) => (
        <Button
          kind="quiet"
          name={`Remove hole ${id}`}
          isDisabled={fixture.holes.length === 1}
          onPress={() => onRemove(id)}
        >
          <Sign name="cross" />
        </Button>
      ),
    },
  ];
  return <Table caption="Holes of the plate" columns={columns} rows={fixture.holes} keyOf={({ id }) => id} />;
}
