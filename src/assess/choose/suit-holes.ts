import { distanceToBoundary, prepareRegion } from '../../engine/geometry/region.ts';
import { findWidestHole } from '../../engine/hardware/clearance-holes.ts';
import { findThread } from '../../engine/hardware/threads.ts';
import { checkHolePlaces } from '../../job/check/check-fixture.ts';
import type { CatalogueItem } from '../../job/documents/catalogue.ts';
import type { Fixture, FixtureHole } from '../../job/documents/fixture.ts';
import type { ConnectionSeat } from '../../job/resolve/connection-seat.ts';
import { findWideHoles } from '../../job/resolve/resolve-plate.ts';
import type { Changes } from './choice.ts';

/** EN 1993-1-8, Table 3.3: from a hole's centre to the edge of the plate, and to the next hole, times the hole's diameter d_0. */
const TO_EDGE = 1.2;
const TO_NEXT = 2.2;

/** Coordinates may be off by rounding [mm]. */
const ROUNDING = 1e-6;

/** Holes that suit a thread, as they are or made to; or why none do. */
export type SuitedHoles =
  | { readonly kind: 'suited'; readonly holes: readonly FixtureHole[]; readonly change: Changes['holes'] }
  | { readonly kind: 'unsuited'; readonly reason: string };

/** Why bolts of an insert do not go through holes, or not as the plate's equilibrium takes them; null where they do. */
function findMisfit(seat: ConnectionSeat, fixture: Fixture, item: CatalogueItem): string | null {
  const { connection, panel, castIns } = seat;
  const inserts = castIns.map((castIn, i) => ({ path: [], hole: connection.inserts[i]!.hole, castIn, item }));
  const faults = checkHolePlaces({ path: [], value: connection }, { panel, fixture, inserts });
  if (faults[0] !== undefined) return faults[0].text;
  const used = connection.inserts.flatMap(({ hole }) => fixture.holes.filter(({ id }) => id === hole));
  return findWideHoles(used, findThread(item.thread))[0] ?? null;
}

/** Why holes of another size have no room in the plate; null where they have. */
function findCrowding(fixture: Fixture, changed: ReadonlySet<string>): string | null {
  const plate = prepareRegion(fixture.outline_mm, []);
  for (const hole of fixture.holes) {
    if (!changed.has(hole.id)) continue;
    const edge = distanceToBoundary(plate, hole.at_mm[0], hole.at_mm[1]);
    const [toEdge, toNext] = [TO_EDGE * hole.diameter_mm, TO_NEXT * hole.diameter_mm];
    const size = `hole ${hole.id} made ${hole.diameter_mm} mm`;
    if (edge < toEdge - ROUNDING)
      return `${size} would stand ${round(edge)} mm from the edge of the plate; at least ${round(toEdge)} mm is wanted (1.2 d_0, EN 1993-1-8, Table 3.3)`;
    for (const other of fixture.holes) {
      const apart = Math.hypot(other.at_mm[0] - hole.at_mm[0], other.at_mm[1] - hole.at_mm[1]);
      if (other !== hole && apart < toNext - ROUNDING)
        return `${size} would stand ${round(apart)} mm from hole ${other.id}; at least ${round(toNext)} mm is wanted (2.2 d_0, EN 1993-1-8, Table 3.3)`;
    }
  }
  return null;
}

const round = (length: number) => Math.round(10 * length) / 10;

/** Makes the holes that a connection uses the widest over which bolts of the thread share a shear, where they are not suited. */
function makeHoles(seat: ConnectionSeat, fixture: Fixture, item: CatalogueItem): Fixture {
  const size = findWidestHole(findThread(item.thread));
  const used = new Set(seat.connection.inserts.map(({ hole }) => hole));
  return {
    ...fixture,
    holes: fixture.holes.map((hole) => (used.has(hole.id) ? { ...hole, diameter_mm: size } : hole)),
  };
}

/** Drilling makes holes larger only: smaller ones are those of a new plate. */
function askForPlate(holes: readonly FixtureHole[], size: number): string {
  const now = [...new Set(holes.map(({ diameter_mm }) => diameter_mm))].join(', ');
  return `a new plate with holes ${size} mm (now ${now}) would be needed: drilling makes holes larger only`;
}

/**
 * Whether the bolts of an insert go through a connection's plate, or would if its holes were drilled to suit.
 * @param drills whether holes may be drilled larger
 */
export function suitHoles(seat: ConnectionSeat, item: CatalogueItem, drills: boolean): SuitedHoles {
  const { fixture, holes } = seat;
  const misfit = fixture === null ? null : findMisfit(seat, fixture, item);
  if (fixture === null || misfit === null) return { kind: 'suited', holes, change: null };
  if (!drills) return { kind: 'unsuited', reason: misfit };
  const made = makeHoles(seat, fixture, item);
  const narrowed = fixture.holes.filter((hole, i) => made.holes[i]!.diameter_mm < hole.diameter_mm);
  if (narrowed.length > 0)
    return { kind: 'unsuited', reason: askForPlate(narrowed, findWidestHole(findThread(item.thread))) };
  const other = made.holes.filter((hole, i) => hole.diameter_mm !== fixture.holes[i]!.diameter_mm);
  const reason = findMisfit(seat, made, item) ?? findCrowding(made, new Set(other.map(({ id }) => id)));
  if (reason !== null) return { kind: 'unsuited', reason };
  return {
    kind: 'suited',
    holes: seat.connection.inserts.flatMap(({ hole }) => made.holes.filter(({ id }) => id === hole)),
    change: {
      ids: other.map(({ id }) => id),
      from: fixture.holes
        .filter((hole, i) => hole.diameter_mm !== made.holes[i]!.diameter_mm)
        .map((h) => h.diameter_mm),
      to: findWidestHole(findThread(item.thread)),
    },
  };
}
