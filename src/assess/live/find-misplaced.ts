import { standInEachOther } from '../../job/check/check-cast-ins.ts';
import { checkFixture, checkHolePlaces } from '../../job/check/check-fixture.ts';
import { checkInPlace, findPlace } from '../../job/check/check-place.ts';
import type { CastIn } from '../../job/documents/cast-in.ts';
import type { CatalogueItem } from '../../job/documents/catalogue.ts';
import type { Connection } from '../../job/documents/connection.ts';
import type { JobIndex } from '../../job/job-index.ts';
import type { LivePanel } from './live-connection.ts';

function itemOf({ items }: JobIndex, { item }: CastIn): CatalogueItem | undefined {
  return item === null ? undefined : items.get(item);
}

/** An insert of the panel that a moved one would stand in; those that move with it keep their distances. */
function findOverlap({ index, panel }: LivePanel, castIn: CastIn, moved: readonly CastIn[]): CastIn | undefined {
  const body = itemOf(index, castIn)?.bodyDiameter_mm;
  if (body === undefined) return undefined;
  return index.castInsOf(panel.mark).find((other) => {
    const otherBody = itemOf(index, other)?.bodyDiameter_mm;
    return (
      otherBody !== undefined &&
      other.face === castIn.face &&
      other.edge === castIn.edge &&
      !moved.some(({ id }) => id === other.id) &&
      standInEachOther(castIn, body, other, otherBody)
    );
  });
}

/** Why a plate does not go with its inserts where they are held. */
function findMisfit(live: LivePanel, connection: Connection, moved: readonly CastIn[]): string | undefined {
  const { index, panel } = live;
  const inserts = connection.inserts.flatMap(({ insert, hole }) => {
    const castIn = moved.find(({ id }) => id === insert) ?? index.castIn(panel.mark, insert);
    return castIn === undefined ? [] : [{ path: [], hole, castIn, item: itemOf(index, castIn) }];
  });
  const faults = [
    ...(connection.fixture === null ? [] : checkFixture([], connection.fixture)),
    ...checkHolePlaces({ path: [], value: connection }, { panel, fixture: index.fixtureOf(connection), inserts }),
  ];
  return faults[0]?.text;
}

/**
 * Why things cannot stand where they are held: outside the concrete, in an opening, in another insert, off their hole. Told in the words of the
 * reading of a job, which would refuse it; null where nothing speaks against it.
 * @param connection whose plate or insert moves; null: none
 */
export function findMisplaced(live: LivePanel, moved: readonly CastIn[], connection: Connection | null): string | null {
  for (const castIn of moved) {
    const [fault] = checkInPlace(findPlace(castIn, live.panel, live.region, []), itemOf(live.index, castIn));
    if (fault !== undefined) return fault.text;
    const other = findOverlap(live, castIn, moved);
    if (other !== undefined) return `insert ${castIn.id} stands in insert ${other.id}; expected them apart`;
  }
  return connection === null ? null : (findMisfit(live, connection, moved) ?? null);
}
