import { Link } from 'wouter-preact';
import type { LookedAt } from '../../../../assess/look-at-connection.ts';
import { giveType } from '../../../../job/details/give-type.ts';
import type { CastIn } from '../../../../job/documents/cast-in.ts';
import { changeInsert, changeInserts } from '../../../../job/edit/plate/change-connection.ts';
import { ChoiceField, QuantityField } from '../../../parts/field.tsx';
import { Fields } from '../../../parts/page.tsx';
import { type Column, Table } from '../../../parts/table.tsx';
import { unitOf, writeQuantity, writeValue } from '../../../parts/units.ts';
import { addresses } from '../../state/addresses.ts';
import { useOffice } from '../../state/office.ts';
import styles from './inserts-part.module.css';
import { SectionView } from './section-view.tsx';
import type { Commit } from './use-connection.ts';

/** Stands for "not decided" where a name is chosen; names are never empty. */
const NONE = '';
/** Stands for "they differ". */
const SEVERAL = ' ';

/** The one value that all have, or that they differ. */
function readCommon(castIns: readonly CastIn[], read: (castIn: CastIn) => string | null): string {
  const values = new Set(castIns.map((castIn) => read(castIn) ?? NONE));
  const [first] = values;
  return values.size === 1 && first !== undefined ? first : SEVERAL;
}

/** What is cast in behind the plate: type, recess, way of holding of each, with the section as it stands in the form. */
export function InsertsPart({ looked, commit }: { readonly looked: LookedAt; readonly commit: Commit }) {
  const { session } = useOffice();
  const { connection, inserts, index } = looked;
  const { mark } = connection;
  const { catalogue, holding } = index.file.library;
  const castIns = inserts.map(({ castIn }) => castIn);
  const types = catalogue.items.map(({ id, thread, length_mm }) => ({
    value: id,
    text: `${id} – ${thread} × ${writeQuantity('length', length_mm)}`,
  }));
  const ways = holding.ways.map(({ id, name }) => ({ value: id, text: name }));
  const typed = (id: string) => (castIn: CastIn) => {
    const item = catalogue.items.find((one) => one.id === id);
    return item === undefined ? castIn : giveType(castIn, item, holding.ways);
  };
  const giveAll = (label: string, next: (castIn: CastIn) => Partial<CastIn>) =>
    commit(
      `${mark}: ${label}`,
      changeInserts(mark, (draft) => {
        Object.assign(draft, next(draft));
      }),
    );
  const give = (id: string, label: string, next: (castIn: CastIn) => Partial<CastIn>) =>
    commit(
      `${mark}, insert ${id}: ${label}`,
      changeInsert(mark, id, (draft) => {
        Object.assign(draft, next(draft));
      }),
    );
  const type = readCommon(castIns, ({ item }) => item);
  const way = readCommon(castIns, (castIn) => castIn.holding);
  const several = (value: string) =>
    value === SEVERAL ? [{ value: SEVERAL, text: 'they differ', isDisabled: true }] : [];
  const columns: readonly Column<CastIn>[] = [
    { head: 'insert', cell: ({ id }) => id, isName: true },
    {
      head: 'type',
      cell: ({ id, item }) => (
        <div class={styles.choice}>
          <ChoiceField
            isInTable
            label={`Type of insert ${id}`}
            value={item ?? NONE}
            options={types}
            onChange={(value) => give(id, `type ${value}`, typed(value))}
          />
        </div>
      ),
    },
    {
      head: 'recess',
      cell: ({ id, recess_mm }) => (
        <div class={styles.value}>
          <QuantityField
            isInTable
            label={`Recess of insert ${id}`}
            quantity="length"
            value={recess_mm}
            onChange={(value) => (value === null ? null : give(id, 'recess', () => ({ recess_mm: value })))}
          />
        </div>
      ),
    },
    {
      head: 'held by',
      cell: ({ id, holding: own }) => (
        <div class={styles.way}>
          <ChoiceField
            isInTable
            label={`Way of holding insert ${id}`}
            value={own ?? NONE}
            options={[{ value: NONE, text: 'not decided' }, ...ways]}
            onChange={(value) => give(id, 'way of holding', () => ({ holding: value === NONE ? null : value }))}
          />
        </div>
      ),
    },
    {
      head: `x, y ${unitOf('length')}`,
      cell: ({ x_mm, y_mm }) => (
        <span class={styles.place}>
          <span>{writeValue('length', x_mm)}</span>
          <span>{writeValue('length', y_mm)}</span>
        </span>
      ),
      kind: 'number',
    },
  ];
  return (
    <div class={styles.part}>
      <Fields>
        <ChoiceField
          label="Type of all"
          value={type}
          options={[...several(type), ...types]}
          onChange={(value) => giveAll(`all inserts ${value}`, typed(value))}
        />
        <ChoiceField
          label="All held by"
          value={way}
          options={[...several(way), { value: NONE, text: 'not decided' }, ...ways]}
          onChange={(value) =>
            giveAll('way of holding of all inserts', () => ({ holding: value === NONE ? null : value }))
          }
        />
        <QuantityField
          label="Recess of all"
          quantity="length"
          value={new Set(castIns.map(({ recess_mm }) => recess_mm)).size === 1 ? (castIns[0]?.recess_mm ?? 0) : null}
          whenEmpty="they differ"
          hint="How far the top lies below the face."
          onChange={(value) => (value === null ? null : giveAll('recess of all inserts', () => ({ recess_mm: value })))}
        />
      </Fields>
      <p>
        <Link href={addresses.choosing(session.id, mark)}>
          Choose an insert: every one of the catalogue tried here, ranked
        </Link>
      </p>
      <Table caption="Inserts of this connection" columns={columns} rows={castIns} keyOf={({ id }) => id} />
      <p>Places are as the documents give them on this face; on the panel they can be dragged.</p>
      <div class={styles.section}>
        <SectionView looked={looked} />
      </div>
    </div>
  );
}
