import type { CastIn } from '../../job/documents/cast-in.ts';
import type { Connection } from '../../job/documents/connection.ts';
import type { Fixture } from '../../job/documents/fixture.ts';
import type { HoldingWay } from '../../job/documents/holding-parts.ts';
import type { SeatParts } from '../../job/resolve/connection-seat.ts';
import type { Changes, PassingInsert } from './choice.ts';
import { moveParts } from './try-move.ts';

/** A connection and its inserts with a choice made. */
export interface ChangedParts {
  readonly connection: Connection;
  readonly castIns: readonly CastIn[];
}

/** A plate with holes of another size, in place of a standard detail that others share; null where the holes stay. */
function changeFixture(
  fixture: Fixture | null,
  holes: Changes['holes'],
): Pick<Connection, 'fixture' | 'detail'> | null {
  if (fixture === null || holes === null) return null;
  const ids = new Set(holes.ids);
  return {
    detail: null,
    fixture: {
      ...fixture,
      holes: fixture.holes.map((hole) => (ids.has(hole.id) ? { ...hole, diameter_mm: holes.to } : hole)),
    },
  };
}

/** Ways of holding that are made for another thread than the insert's. */
export function findUnfitHolding(
  { castIns }: Pick<SeatParts, 'castIns'>,
  thread: string,
  ways: readonly HoldingWay[],
): readonly HoldingWay[] {
  const used = new Set(castIns.flatMap(({ holding }) => holding ?? []));
  return ways.filter((way) => used.has(way.id) && way.thread !== null && way.thread !== thread);
}

/**
 * The documents of a connection with an insert chosen: its type in every place, and each change that it asks for. A way of holding for
 * another thread is taken off.
 */
export function changeParts(
  parts: SeatParts,
  { item, changes }: Pick<PassingInsert, 'item' | 'changes'>,
  ways: readonly HoldingWay[],
): ChangedParts {
  const unfit = new Set(findUnfitHolding(parts, item.thread, ways).map(({ id }) => id));
  const { connection, castIns } = changes.move === null ? parts : moveParts(parts, changes.move);
  return {
    connection: {
      ...connection,
      ...changeFixture(parts.fixture, changes.holes),
      ...(changes.boltThread === null ? {} : { boltThread: changes.boltThread.to }),
      ...(changes.boltClass === null ? {} : { boltClass: changes.boltClass.to }),
    },
    castIns: castIns.map((castIn) => ({
      ...castIn,
      item: item.id,
      holding: castIn.holding !== null && unfit.has(castIn.holding) ? null : castIn.holding,
    })),
  };
}
