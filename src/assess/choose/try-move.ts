import type { Point, Polygon } from '../../engine/geometry/point.ts';
import { prepareRegion } from '../../engine/geometry/region.ts';
import type { PropertyClass } from '../../engine/hardware/property-classes.ts';
import type { CastIn } from '../../job/documents/cast-in.ts';
import type { CatalogueItem } from '../../job/documents/catalogue.ts';
import type { ConnectionSeat, SeatParts } from '../../job/resolve/connection-seat.ts';
import type { SeatHardware } from '../../job/resolve/fill-seat.ts';
import type { Decisive } from '../connection-answer.ts';
import { keepsClear, liesOnConcrete } from './clearance.ts';
import { findDirections, findMove, goBeyond, type Move } from './find-move.ts';
import { findCoverFault, findRoomFault, type Neighbour, surveyRoom } from './room.ts';
import { type BoltedJudgement, judgeWithBolts } from './stronger-bolts.ts';
import { type CheckCounter, openTrials } from './trial-seat.ts';

/** What does not change with the place: no move cures it. */
const FIXED_MODES: ReadonlySet<Decisive> = new Set<Decisive>([
  'steel-tension',
  'steel-shear',
  'interaction-steel',
  'pull-out',
  'plate-bending',
]);

/** Whether something fails that is the same in every place. */
function failsEverywhere({ judgement: { state, governing } }: BoltedJudgement): boolean {
  return state === 'fails' && governing !== null && FIXED_MODES.has(governing.mode);
}

/** Whether another place could make a connection pass. */
export function canMoveHelp(found: BoltedJudgement): boolean {
  const { state, canBeCovered } = found.judgement;
  return canBeCovered && (state === 'not covered' || (state === 'fails' && !failsEverywhere(found)));
}

/** Documents of a connection with its plate and inserts moved together. */
export function moveParts<T extends Pick<SeatParts, 'connection' | 'castIns'>>(parts: T, { dx, dy }: Move): T {
  const { connection, castIns } = parts;
  const [x, y] = connection.origin_mm;
  return {
    ...parts,
    connection: { ...connection, origin_mm: [x + dx, y + dy] as const },
    castIns: castIns.map((castIn) => ({ ...castIn, x_mm: castIn.x_mm + dx, y_mm: castIn.y_mm + dy })),
  };
}

/** What stands around a connection that may be moved. */
export interface Surroundings {
  /** Everything else cast into the panel. */
  readonly others: readonly CastIn[];
  /** Inserts among them that share the face. */
  readonly neighbours: readonly Neighbour[];
}

/** Says whether the plate, moved, still lies on concrete all over; a plate that does not now may go on so. */
function openPlateCheck(seat: ConnectionSeat, item: CatalogueItem): (move: Move) => boolean {
  const plate = seat.plateFor(item.thread);
  const local = seat.memberFor(item.embedment_mm);
  if (plate === null || !local.ok) return () => true;
  const face = prepareRegion(local.member.outline, local.member.openings);
  if (!liesOnConcrete(face, plate.outline)) return () => true;
  const [x0, y0] = seat.frame.toFace([0, 0]);
  return ({ dx, dy }) => {
    const [x1, y1] = seat.frame.toFace([dx, dy]);
    const moved: Polygon = plate.outline.map(([x, y]): Point => [x + x1 - x0, y + y1 - y0]);
    return liesOnConcrete(face, moved);
  };
}

function findMiddle(castIns: readonly CastIn[]): Point {
  const sum = (pick: (castIn: CastIn) => number) => castIns.reduce((total, one) => total + pick(one), 0);
  return [sum(({ x_mm }) => x_mm) / castIns.length, sum(({ y_mm }) => y_mm) / castIns.length];
}

/** Places of a connection tried one after another, plate and inserts moved together. */
export interface MoveTrials {
  /** Whether the connection passes there, each insert clear and covered, the plate on concrete. */
  readonly passes: (move: Move) => boolean;
  /** What was found at a place that was tried and had room. */
  readonly foundAt: (move: Move) => BoltedJudgement | undefined;
}

/**
 * Opens the trials of one insert in a connection's other places: each insert within the concrete, clear of everything else in the panel, with the
 * cover that it needs, and the plate on concrete all over.
 * @param wantedCover concrete behind the foot [mm]
 */
export function openMoves(
  seat: ConnectionSeat,
  item: CatalogueItem,
  hardware: SeatHardware,
  stronger: readonly PropertyClass[],
  { others, neighbours }: Surroundings,
  wantedCover: number,
  counter: CheckCounter,
): MoveTrials {
  const { panel, region, castIns } = seat;
  const isPlateOn = openPlateCheck(seat, item);
  const judged = new Map<string, BoltedJudgement>();
  let isHopeless = false;
  const passes = (move: Move): boolean => {
    if (isHopeless || !isPlateOn(move)) return false;
    const moved = moveParts<SeatParts>(seat, move);
    if (!keepsClear(panel, castIns, moved.castIns, others, item.embedment_mm)) return false;
    const room = surveyRoom(panel, region, moved.castIns, neighbours);
    if (findRoomFault(room, item) !== null || findCoverFault(room, item, wantedCover) !== null) return false;
    const trial = openTrials(moved, counter);
    const found = judgeWithBolts(trial, item, hardware, stronger, trial.judge(item, hardware));
    judged.set(`${move.dx},${move.dy}`, found);
    isHopeless = failsEverywhere(found);
    return found.judgement.state === 'passes';
  };
  return { passes, foundAt: ({ dx, dy }) => judged.get(`${dx},${dy}`) };
}

/** A move that was found: the least with which the connection passes, and so much farther. */
export interface FoundMove extends Move {
  /** How far it goes on beyond the least move [mm]; 0 where there is no room for it. */
  readonly beyond: number;
}

/**
 * The smallest move of a connection with which an insert passes (see `findMove`), then on by the tolerance of the rules where the limit
 * lets it and it still passes: plate and inserts together, each insert within the
 * concrete, clear of everything else in the panel, with the cover that it needs, and the plate on concrete all over.
 * @param wantedCover concrete behind the foot [mm]
 * @returns the move and its judgement; null where none within the limit passes
 */
export function tryMove(
  seat: ConnectionSeat,
  item: CatalogueItem,
  hardware: SeatHardware,
  stronger: readonly PropertyClass[],
  limit: number,
  surroundings: Surroundings,
  wantedCover: number,
  counter: CheckCounter,
): (BoltedJudgement & { readonly move: FoundMove }) | null {
  const { region, castIns } = seat;
  const { passes, foundAt } = openMoves(seat, item, hardware, stronger, surroundings, wantedCover, counter);
  const isEdge = seat.connection.face === 'edge';
  const least = findMove(limit, findDirections(isEdge ? null : region, findMiddle(castIns)), passes);
  if (least === null) return null;
  const farther = goBeyond(least, seat.rules.tolerances.position_mm, limit);
  const beyond = Math.hypot(farther.dx - least.dx, farther.dy - least.dy);
  const move = beyond > 0 && passes(farther) ? { ...farther, beyond } : { ...least, beyond: 0 };
  return { ...foundAt(move)!, move };
}
