import type { OpenPoint, PieceReport } from '../../../../assess/yard/piece-report.ts';
import { gatherPoints } from '../../../../say/piece-words.ts';

/** Open points as a person reads them: what is wrong one by one, what is only not looked at yet as counts. */
export interface SortedPoints {
  /** What cannot be cleared with a condition first; what says the same of several inserts is one line. */
  readonly wrong: ReturnType<typeof gatherPoints>;
  /** `the form, 7 before the cage, 13 before the pour`; null: all was looked at. */
  readonly unchecked: string | null;
}

/** Sorts the open points of a piece. What waits for checking only is no news in the middle of checking. */
export function sortPoints({ openPoints, plan, form }: PieceReport): SortedPoints {
  const stageOf = new Map(plan.setOut.items.map(({ number, stage }) => [number, stage]));
  const isFormOnly = (point: OpenPoint) =>
    point.number === null && (form.state === 'open' || form.state === 'open again');
  const isUnchecked = (point: OpenPoint) =>
    point.liftedBy === 'checking it' && (point.number === null ? isFormOnly(point) : !point.isHard);
  const waiting = openPoints.filter(isUnchecked);
  const count = (stage: 1 | 2) =>
    new Set(waiting.flatMap(({ number }) => (number !== null && stageOf.get(number) === stage ? [number] : []))).size;
  const parts = [
    ...(waiting.some(({ number }) => number === null) ? ['the form'] : []),
    ...(count(1) > 0 ? [`${count(1)} before the cage`] : []),
    ...(count(2) > 0 ? [`${count(2)} before the pour`] : []),
  ];
  return {
    wrong: gatherPoints(
      openPoints.filter((point) => !isUnchecked(point)).sort((a, b) => Number(b.isHard) - Number(a.isHard)),
    ),
    unchecked: parts.length === 0 ? null : parts.join(', '),
  };
}
