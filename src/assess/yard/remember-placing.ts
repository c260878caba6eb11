import type { JobIndex } from '../../job/job-index.ts';
import type { SetOutItem } from '../set-out/set-out.ts';
import { judgePlacing } from './judge-placing.ts';
import type { PiecePlan } from './piece-plan.ts';
import type { FoundPlace, PlacingAnswer, PlacingMoment } from './placing-answer.ts';

/** As many answers of one piece are kept. */
const MOST = 400;

/** Answers by job, plan and question: a report is made anew with every record, and hardly any record moves an insert. */
const remembered = new WeakMap<JobIndex, WeakMap<PiecePlan, Map<string, PlacingAnswer>>>();

function answersOf(index: JobIndex, plan: PiecePlan): Map<string, PlacingAnswer> {
  const plans = remembered.get(index) ?? new WeakMap<PiecePlan, Map<string, PlacingAnswer>>();
  remembered.set(index, plans);
  const answers = plans.get(plan) ?? new Map<string, PlacingAnswer>();
  plans.set(plan, answers);
  return answers;
}

function isOff({ taped, tolerance }: SetOutItem, { x, y }: FoundPlace): boolean {
  return (x !== null && Math.abs(x - taped[0]) > tolerance) || (y !== null && Math.abs(y - taped[1]) > tolerance);
}

/** Others that bear on the answer: those of its connection, and those that are out of their tolerance. All others are where they were designed. */
function pickOthers(plan: PiecePlan, item: SetOutItem, places: ReadonlyMap<string, FoundPlace>) {
  return new Map(
    plan.setOut.items.flatMap((other) => {
      const place = places.get(other.castIn.key);
      if (place === undefined || other.castIn.key === item.castIn.key) return [];
      const isOfGroup = item.connection !== null && other.connection === item.connection;
      return isOfGroup || isOff(other, place) ? [[other.castIn.key, place] as const] : [];
    }),
  );
}

/**
 * `judgePlacing`, computed once for each question.
 * @param places where the inserts of the piece were found
 */
export function judgePlacingOnce(
  index: JobIndex,
  plan: PiecePlan,
  item: SetOutItem,
  found: FoundPlace,
  places: ReadonlyMap<string, FoundPlace>,
  now: PlacingMoment,
): PlacingAnswer {
  const others = pickOthers(plan, item, places);
  const question = JSON.stringify([item.castIn.key, now, found, [...others]]);
  const answers = answersOf(index, plan);
  const had = answers.get(question);
  if (had !== undefined) return had;
  if (answers.size >= MOST) answers.clear();
  const answer = judgePlacing({ index, bed: plan.setOut.bed, now }, plan, item, found, others);
  answers.set(question, answer);
  return answer;
}
