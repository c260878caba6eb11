import { resolveConnection } from '../../job/resolve/resolve-connection.ts';
import type { AsCastConnection, AsCastReport, Remedy } from '../as-cast/as-cast-report.ts';
import { findHoleRooms, findTightest, type HoleRoom } from '../as-cast/hole-rooms.ts';
import { type WorkedConnection, workOut } from '../assess-connection.ts';
import { indexAsCast, readCastPanel } from '../bolt-up/as-bolted.ts';
import { type Asked, type Capacity, findCapacities } from '../capacities.ts';
import type { ConnectionAnswer } from '../connection-answer.ts';
import type { PiecePlan } from '../yard/piece-plan.ts';
import type { YardContext } from '../yard/piece-report.ts';

/** What a connection carries at most as cast, one load at a time [N]. */
export interface CarriesAsCast {
  readonly tension: Capacity;
  /** Toward the edge that carries least; null: no edge is in sight. */
  readonly toward: Capacity | null;
  readonly away: Capacity | null;
}

/** One connection that did not come out as it was drawn, with all that its sheet tells. */
export interface NonConformance {
  readonly found: AsCastConnection;
  /** By which it is computed and drawn: what was decided, else the plate moved to its best, else as it is; null: none could be computed. */
  readonly remedy: Remedy | null;
  readonly answer: ConnectionAnswer;
  readonly carries: Asked<CarriesAsCast>;
  /** For the picture; null: it cannot be computed. */
  readonly worked: WorkedConnection | null;
  /** The hole with the least room; null: no plate is known. */
  readonly tightest: HoleRoom | null;
}

/** Directions that are opposite within this are (cosine of their angle is −1). */
const OPPOSITE = 1e-6;

/** Of several the one that carries least; one that nothing limits carries most. */
function findWeakest(all: readonly Capacity[]): Capacity | null {
  const size = ({ total }: Capacity) => total ?? Number.POSITIVE_INFINITY;
  return all.reduce<Capacity | null>((least, one) => (least === null || size(one) < size(least) ? one : least), null);
}

function findAway(all: readonly Capacity[], toward: Capacity | null): Capacity | null {
  const from = toward?.direction ?? null;
  if (from === null) return null;
  return (
    all.find(
      ({ direction }) => direction !== null && Math.abs(direction.ux * from.ux + direction.uy * from.uy + 1) < OPPOSITE,
    ) ?? null
  );
}

/** What is drawn and computed on the sheet: the decision, else the best that an installer may do himself. */
function chooseRemedy({ decided, remedies }: AsCastConnection): Remedy | null {
  return (
    decided ??
    remedies.find(({ kind }) => kind === 'plate moved') ??
    remedies.find(({ kind }) => kind === 'as is') ??
    null
  );
}

/** A connection as it came out: what it carries at most, whether its plate goes on, by what was decided or by the best that may be done on site. */
export function findNonConformance(
  { index }: YardContext,
  plan: PiecePlan,
  asCast: AsCastReport,
  found: AsCastConnection,
): NonConformance {
  const remedy = chooseRemedy(found);
  const drawn = remedy?.connection ?? found.connection;
  const plate = index.fixtureOf(found.connection);
  const holes = remedy?.holes ?? plate?.holes ?? null;
  const unused = new Set(remedy?.change.unused ?? []);
  const left = new Set(
    found.members.filter(({ item }) => unused.has(item.castIn.key)).map(({ item }) => item.castIn.id),
  );
  const connection = {
    ...drawn,
    fixture: plate === null || holes === null ? drawn.fixture : { ...plate, holes },
    inserts: drawn.inserts.filter(({ insert }) => !left.has(insert)),
  };
  const moved = indexAsCast(readCastPanel(index, plan, asCast), connection);
  const resolution = resolveConnection(moved, connection);
  const { answer, worked } = workOut(resolution);
  const asked = findCapacities(resolution);
  const carries: Asked<CarriesAsCast> =
    asked.kind === 'refused' ? asked : { kind: 'computed', value: readCarries(asked.value.group) };
  const rooms = holes === null ? [] : findHoleRooms(plan.setOut.panel, connection, holes, found.members);
  return { found, remedy, answer, carries, worked, tightest: findTightest(rooms) };
}

function readCarries(group: readonly Capacity[]): CarriesAsCast {
  const shears = group.filter(({ direction }) => direction !== null);
  const toward = findWeakest(shears.filter(({ direction }) => direction?.edge !== null));
  // Tension comes first, always.
  return { tension: group[0]!, toward, away: findAway(shears, toward) };
}
