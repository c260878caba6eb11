import { addDays } from './calendar.ts';
import { roundShareUp } from './spares.ts';

/** How many of a reusable part one pour takes, on its day. */
export interface Use {
  readonly date: string;
  readonly count: number;
}

/** What a series of pours asks of a reusable part, pour by pour. */
export interface UseStep {
  /** Of this pour and of those before it whose parts are not back yet. */
  readonly inUse: number;
  /** Counted as lost up to and with this pour. */
  readonly lost: number;
}

/** Day from which on parts of a pour are back. Pours of one day never share, even when parts are back that day. */
function findBackOn(date: string, turnRound: number): string {
  return addDays(date, Math.max(1, turnRound));
}

/**
 * Parts in use and lost at each pour.
 *
 * A part fixed on one day can be used again `turnRound` days later; so on the day of a pour all are out that were fixed less than so many days
 * before. What does not come back is a share of all uses, rounded up; a pour's own is counted with it, since nobody knows before the form is off.
 *
 * Worked by hand, turn-round 2 days, loss 10 %: Monday 8, Tuesday 6, Wednesday 8. Monday 8 out, Tuesday 8 + 6 = 14, Wednesday 6 + 8 = 14 (Monday's
 * are back); lost 10 % of 8, 14, 22, rounded up: 1, 2, 3. Most in use 14, with 3 lost over the job: 17 are needed, for 22 uses.
 *
 * @param uses in the order of their days
 * @param today losses count from this day on: what was lost before is gone from the stock as it is counted today
 */
export function followUses(
  uses: readonly Use[],
  { turnRound, lossPerUse }: { readonly turnRound: number; readonly lossPerUse: number },
  today: string,
): readonly UseStep[] {
  const backOn = uses.map(({ date }) => findBackOn(date, turnRound));
  let total = 0;
  let inUse = 0;
  let firstOut = 0;
  return uses.map(({ date, count }) => {
    if (date >= today) total += count;
    inUse += count;
    // Days follow one another, so parts come back in the order in which they went out.
    for (; backOn[firstOut]! <= date; firstOut++) inUse -= uses[firstOut]!.count;
    return { inUse, lost: roundShareUp(lossPerUse, total) };
  });
}
