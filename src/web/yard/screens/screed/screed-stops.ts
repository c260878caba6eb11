import type { SetOutItem } from '../../../../assess/set-out/set-out.ts';
import type { PiecePlan } from '../../../../assess/yard/piece-plan.ts';
import { slotKey } from '../../../../records/fold/fold-piece.ts';
import type { PieceState } from '../../../../records/fold/piece-state.ts';
import { worseOf } from '../../../../records/fold/worse-of.ts';
import type { RecordOf } from '../../../../records/record.ts';

/** What is looked at with one look after screeding. */
export interface ScreedStop {
  readonly members: readonly SetOutItem[];
  readonly unseen: readonly SetOutItem[];
  readonly wrong: readonly SetOutItem[];
}

/** The check after screeding that counts for an insert as it must be now; of several that differ the worse one. Null: nobody looked. */
export function findScreed(
  { slots }: Pick<PieceState, 'slots'>,
  plan: Pick<PiecePlan, 'keys'>,
  { castIn }: SetOutItem,
): RecordOf<'screed-checked'> | null {
  const now = (slots.get(slotKey(castIn.key, 'screed'))?.latest ?? []).flatMap((record) =>
    record.kind === 'screed-checked' && record.checkKey === plan.keys.get(castIn.key) ? [record] : [],
  );
  return now.length === 0 ? null : worseOf(now);
}

export function isRight({ body: { level, plumb, cap } }: RecordOf<'screed-checked'>): boolean {
  return level && plumb && cap;
}

/** The looks of the walk as far as they stand in the trowelled face, in its order. */
export function listScreedStops(
  state: Pick<PieceState, 'slots'>,
  plan: Pick<PiecePlan, 'keys' | 'stops' | 'afterScreed'>,
): readonly ScreedStop[] {
  const wanted = new Set(plan.afterScreed.map(({ castIn }) => castIn.key));
  return plan.stops.flatMap((stop) => {
    const members = stop.members.filter(({ castIn }) => wanted.has(castIn.key));
    if (members.length === 0) return [];
    const found = members.map((item) => [item, findScreed(state, plan, item)] as const);
    return [
      {
        members,
        unseen: found.filter(([, record]) => record === null).map(([item]) => item),
        wrong: found.filter(([, record]) => record !== null && !isRight(record)).map(([item]) => item),
      },
    ];
  });
}

/** The next stop that somebody must look at, from one on and round; null: none. */
export function findNextScreed(stops: readonly ScreedStop[], from: number): number | null {
  const order = [...stops.keys()].map((k) => (from + k) % stops.length);
  return order.find((k) => stops[k]!.unseen.length > 0) ?? null;
}

/** Minutes after which the trowelled face begins to set, and after which it has, at 20 °C. Source: common practice. */
const MOVABLE_MIN = { least: 30, most: 60 } as const;

/** How long ago it was poured, and what can still be moved. @param poured null: not recorded as poured. @param now ms since 1970 */
export function tellSetting(poured: string | null, now: number): { readonly words: string; readonly isLate: boolean } {
  const { least, most } = MOVABLE_MIN;
  const practice = `about ${least}–${most} min at 20 °C, less in heat (common practice)`;
  if (poured === null) return { words: `Not recorded as poured. Movable for ${practice}.`, isLate: false };
  const minutes = Math.max(0, Math.floor((now - Date.parse(poured)) / 60_000));
  const ago = minutes < 120 ? `${minutes} min ago` : `${Math.floor(minutes / 60)} h ago`;
  if (minutes > most)
    return { words: `Poured ${ago}: likely no longer movable. Do not force it; write down what it is.`, isLate: true };
  return { words: `Poured ${ago}. Still movable for ${practice}.`, isLate: minutes > least };
}
