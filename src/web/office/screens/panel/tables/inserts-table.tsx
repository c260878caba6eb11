import { placeDrawn } from '../../../../../drawing/screen/panel-sight.ts';
import type { CastIn } from '../../../../../job/documents/cast-in.ts';
import { StateMark } from '../../../../parts/state-mark.tsx';
import { type Column, Table } from '../../../../parts/table.tsx';
import { unitOf, writeValue } from '../../../../parts/units.ts';
import { useOffice } from '../../../state/office.ts';
import type { PanelDesk } from '../desk/panel-desk.ts';
import { PlaceCells } from './place-cells.tsx';
import styles from './tables.module.css';

interface Row {
  readonly castIn: CastIn;
  readonly connection: string | null;
  readonly isSelected: boolean;
}

/** Every cast-in item with its place: the same as the drawing, for those who read and type. */
export function InsertsTable({ desk }: { readonly desk: PanelDesk }) {
  const { answers } = useOffice();
  const items = desk.items.value;
  const { ids } = desk.selection.value;
  const { toRead, kind } = desk.sight.value;
  const { panel } = desk.live.value;
  const byKey = answers.byKey.value;
  if (items.length === 0)
    return <p class={styles.empty}>Nothing is cast into this panel yet. Choose “Place …” above the drawing.</p>;
  const rows = items.map(({ castIn, connection }) => ({ castIn, connection, isSelected: ids[0] === castIn.id }));
  const read = (castIn: CastIn) =>
    castIn.face === 'edge' ? ([castIn.x_mm, castIn.y_mm] as const) : toRead(placeDrawn(panel, castIn));
  const from = kind === 'form' ? 'from datum' : 'as drawn';
  const columns: readonly Column<Row>[] = [
    {
      head: 'Insert',
      isName: true,
      cell: ({ castIn: { id }, isSelected }) => (
        <button
          type="button"
          class={styles.pick}
          aria-pressed={isSelected}
          aria-label={`Insert ${id}`}
          onClick={() => desk.take(id, true)}
        >
          {id}
        </button>
      ),
    },
    {
      head: `x ${from} [${unitOf('length')}]`,
      kind: 'number',
      cell: ({ castIn, isSelected }) =>
        isSelected ? <PlaceCells desk={desk} castIn={castIn} axis={0} /> : writeValue('length', read(castIn)[0]),
    },
    {
      head: `y ${from} [${unitOf('length')}]`,
      kind: 'number',
      cell: ({ castIn, isSelected }) =>
        isSelected ? <PlaceCells desk={desk} castIn={castIn} axis={1} /> : writeValue('length', read(castIn)[1]),
    },
    { head: 'Face', cell: ({ castIn }) => writeFace(castIn) },
    { head: 'Type', cell: ({ castIn: { item, description } }) => item ?? description },
    { head: 'Role', cell: ({ castIn: { role } }) => role },
    { head: 'Held by', cell: ({ castIn: { holding } }) => holding ?? '–' },
    {
      head: 'Connection',
      cell: ({ connection }) =>
        connection === null ? (
          'none'
        ) : (
          <button
            type="button"
            class={styles.pick}
            aria-label={`Connection ${connection}`}
            onClick={() => desk.takeConnection(connection)}
          >
            {connection}
          </button>
        ),
    },
    {
      head: 'State',
      cell: ({ connection, castIn }) => {
        const key = desk.findConnection(connection)?.key;
        if (key === undefined)
          return castIn.role === 'fixing' ? <StateMark state="strength not checked" /> : 'by others';
        return <StateMark state={byKey.get(key)?.state ?? 'computing'} />;
      },
    },
  ];
  return (
    <Table
      caption={`Inserts of panel ${desk.mark}; on an edge x is along it, y from the outside face`}
      columns={columns}
      rows={rows}
      keyOf={({ castIn }) => castIn.key}
    />
  );
}

function writeFace({ face, edge }: CastIn): string {
  return face === 'edge' ? `edge ${edge}` : face;
}
