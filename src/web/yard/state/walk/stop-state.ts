import type { SetOutItem } from '../../../../assess/set-out/set-out.ts';
import type { CheckStop, DigitAsk, PiecePlan } from '../../../../assess/yard/piece-plan.ts';
import { slotKey } from '../../../../records/fold/fold-piece.ts';
import type { PieceState, SlotState } from '../../../../records/fold/piece-state.ts';
import type { FactRecord } from '../../../../records/record.ts';

type Known = Pick<PieceState, 'slots'>;

/** What of a slot was done to what the insert must be now: records by another check key do not count. */
function findCurrent(state: Known, plan: PiecePlan, key: string, slot: string): readonly FactRecord[] {
  const found: SlotState | undefined = state.slots.get(slotKey(key, slot));
  return (found?.latest ?? []).filter(({ checkKey }) => checkKey === plan.keys.get(key));
}

/** Whether an insert was looked at in its stage, and whether it was as it must be; null: nobody looked. */
export function findSight(state: Known, plan: PiecePlan, { castIn, stage }: SetOutItem): 'right' | 'wrong' | null {
  const seen = findCurrent(state, plan, castIn.key, `sight ${stage}`);
  if (seen.length === 0) return null;
  return seen.every(({ kind, body }) => kind === 'placed' && body.type && body.face && body.firm) ? 'right' : 'wrong';
}

/** What of a stop is still to be done. */
export interface StopState {
  readonly stop: CheckStop;
  /** Not looked at. */
  readonly unseen: readonly SetOutItem[];
  /** Looked at, and not as it must be. */
  readonly wrong: readonly SetOutItem[];
  /** Lengths that are asked for and not taped; none of inserts that are wrong: those are put right first. */
  readonly asks: readonly DigitAsk[];
  readonly isDone: boolean;
}

function findStopState(state: Known, plan: PiecePlan, stop: CheckStop): StopState {
  const unseen = stop.members.filter((item) => findSight(state, plan, item) === null);
  const wrong = stop.members.filter((item) => findSight(state, plan, item) === 'wrong');
  const asks = stop.asks.filter(({ key, axis }) => {
    if (wrong.some(({ castIn }) => castIn.key === key)) return false;
    const taped = findCurrent(state, plan, key, `place ${stop.stage}`);
    const field = axis === 'x' ? 'x_mm' : 'y_mm';
    return !taped.some(({ kind, body }) => kind === 'measured' && body[field] !== null);
  });
  return { stop, unseen, wrong, asks, isDone: unseen.length === 0 && asks.length === 0 };
}

/** The stops of a stage, in walking order. */
export function listStops(state: Known, plan: PiecePlan, stage: 1 | 2): readonly StopState[] {
  return plan.stops.filter((stop) => stop.stage === stage).map((stop) => findStopState(state, plan, stop));
}

/** The next stop that is not done, from one on and round; null: all are done. */
export function findNextStop(stops: readonly StopState[], from: number): number | null {
  const order = [...stops.keys()].map((k) => (from + k) % stops.length);
  return order.find((k) => !stops[k]!.isDone) ?? null;
}
