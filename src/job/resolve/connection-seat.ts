import type { AnchorageGroup, Hairpin, SupplementaryBar } from '../../engine/checks/anchorage-group.ts';
import type { UncoveredUse } from '../../engine/checks/uncovered-use.ts';
import { prepareRegion, type Region } from '../../engine/geometry/region.ts';
import { findThread, type ThreadName } from '../../engine/hardware/threads.ts';
import type { CastIn } from '../documents/cast-in.ts';
import type { CatalogueItem } from '../documents/catalogue.ts';
import type { Concrete } from '../documents/concrete.ts';
import type { Connection } from '../documents/connection.ts';
import type { Fixture, FixtureHole } from '../documents/fixture.ts';
import type { Panel } from '../documents/panel.ts';
import type { Rules } from '../documents/rules.ts';
import { type FaceFrame, frameOf } from '../face-frame.ts';
import type { JobIndex } from '../job-index.ts';
import { measureRoomAround, type RoomAround } from './least-distances.ts';
import { surveyMember } from './local-member.ts';
import type { LocalMember } from './local-member-type.ts';
import { localReinforcement, toHairpin, toSupplementaryBar } from './local-reinforcement.ts';
import { type ResolvedLeverArm, resolveAction, resolveLeverArm, resolvePlate } from './resolve-plate.ts';
import type { ResolvedActions, ResolvedPlate } from './resolved-connection.ts';
import { toNewton } from './units.ts';

/** The documents that a connection is made of. */
export interface SeatParts {
  readonly connection: Connection;
  readonly rules: Rules;
  readonly panel: Panel;
  readonly mix: Concrete;
  /** Its own plate, or that of its standard detail. */
  readonly fixture: Fixture | null;
  /** Its inserts, in the connection's order. */
  readonly castIns: readonly CastIn[];
}

/**
 * A connection with all that does not depend on which insert it has, so that one insert after another can be tried in it at
 * little cost: lengths mm, forces N, in coordinates of its face seen from the front.
 */
export interface ConnectionSeat extends SeatParts {
  /** The face in words: `outside`, `inside`, `edge 2`. */
  readonly face: string;
  readonly frame: FaceFrame;
  /** The panel as drawn. */
  readonly region: Region;
  readonly positions: AnchorageGroup['positions'];
  readonly concrete: { readonly strength: number; readonly assumptions: readonly string[] };
  readonly reinforcement: ReturnType<typeof localReinforcement>;
  readonly actions: ResolvedActions;
  readonly hangers: readonly SupplementaryBar[];
  readonly hairpins: readonly Hairpin[];
  /** One an insert, in their order; none without a plate. */
  readonly holes: readonly FixtureHole[];
  /** Uses and roles that no rule covers, whichever insert it has. */
  readonly uses: readonly UncoveredUse[];
  /** The concrete around the inserts, for their embedment. */
  readonly memberFor: (embedment: number) => LocalMember;
  /** What the places of the inserts have around them in that concrete. */
  readonly roomIn: (member: AnchorageGroup['member']) => RoomAround;
  readonly plateFor: (thread: ThreadName) => ResolvedPlate | null;
  readonly leverArmFor: (thread: ThreadName) => ResolvedLeverArm;
}

/** Something that the reading of the job has made sure of is not there: a fault of this program, not of the job. */
function mustFind<T>(found: T | undefined, what: string): T {
  if (found === undefined) throw new Error(`${what} is not in the job, though it was checked`);
  return found;
}

/**
 * The documents of a connection.
 * @throws Error when the job holds a reference that nothing has (reading refuses such a job)
 */
export function gatherParts(index: JobIndex, connection: Connection): SeatParts {
  const panel = mustFind(index.panels.get(connection.panel), `panel ${connection.panel}`);
  const detail =
    connection.detail === null ? null : mustFind(index.details.get(connection.detail), `detail ${connection.detail}`);
  return {
    connection,
    rules: index.file.library.rules,
    panel,
    mix: mustFind(index.concretes.get(panel.concrete), `concrete ${panel.concrete}`),
    fixture: connection.fixture ?? detail?.fixture ?? null,
    castIns: connection.inserts.map(({ insert }) => mustFind(index.castIn(panel.mark, insert), `insert ${insert}`)),
  };
}

/** The types of a connection's inserts, in their order. */
export function gatherItems(index: JobIndex, { castIns }: SeatParts): readonly CatalogueItem[] {
  return castIns.map(({ item }) =>
    mustFind(item === null ? undefined : index.items.get(item), `catalogue item ${item}`),
  );
}

function strengthOf({ mix, connection: { age_days } }: SeatParts): ConnectionSeat['concrete'] {
  if (age_days === null)
    return { strength: mix.strength28_MPa, assumptions: [`concrete at 28 days: f_ck = ${mix.strength28_MPa} MPa`] };
  if (age_days === 28) return { strength: mix.strength28_MPa, assumptions: [] };
  const aged = mustFind(
    mix.ages.find((a) => a.age_days === age_days),
    `strength of ${mix.id} at ${age_days} days`,
  );
  return { strength: aged.strength_MPa, assumptions: [] };
}

function resolveActions({ connection }: SeatParts, frame: FaceFrame): ResolvedActions {
  const { actions } = connection;
  switch (actions.kind) {
    case 'none':
      return { kind: 'none' };
    case 'required':
      return { kind: 'required', N: toNewton(actions.N_kN), V: toNewton(actions.V_kN) };
    case 'loads':
      return {
        kind: 'loads',
        combinations: actions.combinations.map((load) => ({
          name: load.name,
          action: resolveAction(connection, frame, load),
        })),
      };
  }
}

function findUses({ connection, castIns }: SeatParts): readonly UncoveredUse[] {
  const roles = new Set(castIns.map(({ role }) => role));
  const uses = new Set<UncoveredUse>(connection.uses);
  if (roles.has('lifting')) uses.add('lifting');
  if (roles.has('brace')) uses.add('brace');
  return [...uses];
}

/** The same answer for the same thread, computed once. */
function onceByThread<T>(find: (thread: ThreadName) => T): (thread: ThreadName) => T {
  const known = new Map<ThreadName, T>();
  return (thread) => {
    const found = known.get(thread);
    if (found !== undefined) return found;
    const value = find(thread);
    known.set(thread, value);
    return value;
  };
}

/** What is around the places, measured once: the outline of the face is the same whatever the embedment. */
function measureOnce(positions: ConnectionSeat['positions']): ConnectionSeat['roomIn'] {
  let room: RoomAround | null = null;
  return (member) => {
    room ??= measureRoomAround(member, positions);
    return room;
  };
}

/** Finds what does not depend on the insert: once for a connection, for every insert that is tried in it. */
export function seatConnection(parts: SeatParts): ConnectionSeat {
  const { connection, panel, fixture, castIns } = parts;
  const frame = frameOf(panel, connection);
  const concrete = strengthOf(parts);
  const region = prepareRegion(panel.outline_mm, panel.openings_mm);
  const recess = Math.max(...castIns.map((castIn) => castIn.recess_mm));
  const holes = connection.inserts.flatMap(
    ({ hole }) => fixture?.holes.filter((candidate) => candidate.id === hole) ?? [],
  );
  const positions = castIns.map((castIn) => {
    const [x, y] = frame.toFace([castIn.x_mm, castIn.y_mm]);
    return { id: castIn.id, x, y };
  });
  // Written out: a copy by spread goes straight to the old generation, 6 kB a connection, and a whole job's memory with it.
  return {
    connection,
    rules: parts.rules,
    panel,
    mix: parts.mix,
    fixture,
    castIns,
    face: connection.face === 'edge' ? `edge ${connection.edge}` : connection.face,
    frame,
    region,
    positions,
    concrete,
    reinforcement: localReinforcement(connection, panel),
    actions: resolveActions(parts, frame),
    hangers: connection.hangers.map(toSupplementaryBar),
    hairpins: connection.hairpins.map((loop) => toHairpin(loop, connection.turn_deg)),
    holes,
    uses: findUses(parts),
    memberFor: surveyMember(connection, panel, castIns, region),
    roomIn: measureOnce(positions),
    plateFor: onceByThread((name) =>
      fixture === null
        ? null
        : resolvePlate(
            connection,
            fixture,
            frame,
            castIns.map((castIn, i) => ({ castIn, hole: holes[i]!, thread: findThread(name) })),
            concrete.strength,
          ),
    ),
    leverArmFor: onceByThread((name) => resolveLeverArm(connection, fixture, findThread(name), recess)),
  };
}
