import type { Bed } from '../../job/documents/yard.ts';
import type { JobIndex } from '../../job/job-index.ts';
import type { SetOutItem } from '../set-out/set-out.ts';
import { answerAsPlaced, type PlacedAnswer } from './as-placed.ts';
import { findMoves } from './moves.ts';
import type { PiecePlan } from './piece-plan.ts';
import { findLevelOff, type SeatQuestion } from './placed-cast-in.ts';
import type { FoundPlace, PlacingAnswer, PlacingMoment } from './placing-answer.ts';

/** By which job an insert is judged, and where the work is. */
export interface PlacingContext {
  readonly index: JobIndex;
  readonly bed: Bed | null;
  /** Left out: the stage that the insert belongs to. */
  readonly now?: PlacingMoment;
}

/** Lengths that lie this close together [mm] are the same. */
const ROUNDING = 1e-6;

type Deviation = PlacingAnswer['deviation'];

/** Found less designed along the taped lengths, and below the face less what the assembly aims at [mm]. */
function findDeviation(question: SeatQuestion): Deviation {
  const { item, found } = question;
  const off = (taken: number | null, wanted: number) => (taken === null ? null : taken - wanted);
  return { x: off(found.x, item.taped[0]), y: off(found.y, item.taped[1]), level: findLevelOff(question) };
}

function isOff(deviation: number | null, tolerance: number): boolean {
  return deviation !== null && Math.abs(deviation) > tolerance + ROUNDING;
}

/** A top above the trowelled face is off whatever is tolerated: the screed hits it. */
function isProud({ place }: SetOutItem, { level }: FoundPlace): boolean {
  return place === 'trowelled face' && level !== null && level < -ROUNDING;
}

function isMovable({ stage, place }: SetOutItem, now: PlacingMoment): boolean {
  if (now === 'after screed') return place === 'trowelled face';
  // What was set before the cage is out of reach once it is in.
  return now !== 'hard' && now <= stage;
}

/** Works only where the state passes, nothing new is wrong and the plate goes on; what was not checked never does. */
function decideVerdict({ asPlaced, findings }: PlacedAnswer): PlacingAnswer['verdict'] {
  if (findings.length > 0 || asPlaced?.plate.kind === 'does not go on' || asPlaced?.after.state === 'fails')
    return 'does not work';
  return asPlaced?.after.state === 'passes' ? 'works' : 'not known';
}

/** QA within the limits that the design engineer set, where it works and did so as designed; all else is a change of the design. */
function findDecider(
  { index }: PlacingContext,
  deviation: Deviation,
  { asPlaced }: PlacedAnswer,
  verdict: PlacingAnswer['verdict'],
): PlacingAnswer['decides'] {
  const { acceptance } = index.file.library.rules;
  if (acceptance === null || verdict !== 'works' || asPlaced?.before.state !== 'passes') return 'design engineer';
  const isBeyond =
    isOff(deviation.x, acceptance.position_mm) ||
    isOff(deviation.y, acceptance.position_mm) ||
    isOff(deviation.level, acceptance.level_mm);
  return isBeyond ? 'design engineer' : 'qa';
}

/**
 * Judges where an insert was found: good; moved back, by how much and which way, while its stage lasts; or left, and then computed as it is. What is
 * off is computed in either case, so that everybody knows what it would be if it stayed.
 * @param others where the other inserts of the piece were found, by their permanent keys; the insert itself may be among them
 */
export function judgePlacing(
  context: PlacingContext,
  plan: PiecePlan,
  item: SetOutItem,
  found: FoundPlace,
  others: ReadonlyMap<string, FoundPlace>,
): PlacingAnswer {
  const { index, bed, now = item.stage } = context;
  const { setOut } = plan;
  const seat = { index, bed, setOut, item, found };
  const deviation = findDeviation(seat);
  const still = { item, deviation, moves: [], asPlaced: null, findings: [] } as const;
  if (found.x === null && found.y === null && found.level === null)
    return { ...still, advice: 'nothing measured', verdict: 'not known', decides: 'nobody asks' };
  const isAside = isOff(deviation.x, item.tolerance) || isOff(deviation.y, item.tolerance);
  const isLevelOut = isOff(deviation.level, index.file.library.rules.tolerances.level_mm) || isProud(item, found);
  if (!isAside && !isLevelOut) return { ...still, advice: 'good', verdict: 'works', decides: 'nobody asks' };
  const placed = answerAsPlaced({ ...seat, others });
  const verdict = decideVerdict(placed);
  return {
    item,
    deviation,
    advice: isMovable(item, now) ? 'move' : 'leave',
    moves: findMoves(setOut, item, {
      ...(isAside ? { x: deviation.x, y: deviation.y } : { x: null, y: null }),
      level: isLevelOut ? deviation.level : null,
    }),
    ...placed,
    verdict,
    decides: findDecider(context, deviation, placed, verdict),
  };
}
