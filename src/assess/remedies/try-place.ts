import { measureRay } from '../../engine/geometry/ray.ts';
import { NOTHING_REPLACED } from '../../job/edit/replace-values.ts';
import { ownHardware } from '../../job/resolve/fill-seat.ts';
import { lookAround } from '../choose/choose-connection.ts';
import type { Move } from '../choose/find-move.ts';
import type { JobDraft } from '../choose/job-draft.ts';
import { findLeastCover, surveyRoom } from '../choose/room.ts';
import { openTrials, type TrialSeat } from '../choose/trial-seat.ts';
import { canMoveHelp, moveParts, openMoves } from '../choose/try-move.ts';
import type { RemedyQuestion } from './question.ts';
import type { Attempt, Proposal } from './remedy.ts';
import { findLeastSteps } from './step-search.ts';

/** Places are given in steps of this [mm]. */
const STEP = 5;

/** How far a connection is moved along an axis at most [mm]. */
const FARTHEST = 600;

interface Direction {
  readonly x: 1 | 0 | -1;
  readonly y: 1 | 0 | -1;
}

const DIRECTIONS: readonly Direction[] = [
  { x: 1, y: 0 },
  { x: -1, y: 0 },
  { x: 0, y: 1 },
  { x: 0, y: -1 },
];

/** The distance to the edge that a move leads away from, as the connection stands; null where there is none. */
function findBehind({ seat }: TrialSeat, { x, y }: Direction): number | null {
  const { region, castIns, connection } = seat;
  if (connection.face === 'edge') return null;
  const behind = Math.min(...castIns.map((one) => measureRay(region, one.x_mm, one.y_mm, -x, -y)));
  return Number.isFinite(behind) ? behind : null;
}

/** The connection moved along each axis of its drawing, plate and inserts together, by the least that does. */
export function tryPlace({ connection, parts, items }: RemedyQuestion, draft: JobDraft): Attempt {
  const counter = { checks: 0 };
  const trial = openTrials(parts, counter);
  const [item, ...others] = items;
  if (item === undefined || others.some(({ id }) => id !== item.id)) return { proposals: [], inVain: [] };
  const { seat } = trial;
  const hardware = ownHardware(seat);
  const first = trial.judge(item, hardware);
  if (!canMoveHelp({ first, judgement: first, boltClass: hardware.boltClass })) return { proposals: [], inVain: [] };
  const surroundings = lookAround(draft, parts);
  const asked = seat.rules.cover.behindFoot_mm;
  const room = surveyRoom(parts.panel, seat.region, parts.castIns, surroundings.neighbours);
  const cover = Math.min(asked, findLeastCover(room, item) ?? asked);
  const found = DIRECTIONS.flatMap((direction): { readonly steps: number; readonly proposal: Proposal }[] => {
    const moveBy = (steps: number): Move => ({ dx: steps * STEP * direction.x, dy: steps * STEP * direction.y });
    // A trial of its own for each direction: what is hopeless along one need not be along another.
    const { passes } = openMoves(seat, item, hardware, [], surroundings, cover, counter);
    const steps = findLeastSteps(FARTHEST / STEP, (count) => passes(moveBy(count)));
    if (steps === null) return [];
    const move = moveBy(steps);
    const moved = moveParts(parts, move);
    const deed = { kind: 'move', move, behind: findBehind(trial, direction) } as const;
    const change = {
      ...NOTHING_REPLACED,
      connections: [{ key: connection.key, set: { origin_mm: moved.connection.origin_mm } }],
      castIns: moved.castIns.map(({ key, x_mm, y_mm }) => ({ key, set: { x_mm, y_mm } })),
    };
    return [{ steps, proposal: { kind: 'move', deed, notes: [], change } }];
  });
  if (found.length === 0) return { proposals: [], inVain: [{ kind: 'move', most: FARTHEST }] };
  return { proposals: found.sort((a, b) => a.steps - b.steps).map(({ proposal }) => proposal), inVain: [] };
}
