import type { HoldingMethodName, HoldingPlace } from './holding-methods.ts';

/** Standard deviations of where an insert is after the pour [mm]: along the face, and square to it. */
export interface HoldingScatter {
  readonly position: number;
  readonly level: number;
}

/** What is said of positions as ± [mm], the wider end of each range. Common practice, no standard. */
const USUAL = {
  /** Within a group on one board: ±1 to 2. */
  template: 2,
  /** A single insert on the form, placed by tape: ±3 to 5; the taping is in it. */
  single: 5,
  /** Under the trowelled face, after vibrating: ±5 to 10. */
  trowelled: 10,
  /** How high or deep the top lies: ±3 to 5. */
  level: 5,
} as const;

/** A ± of common practice is taken as two standard deviations: about 19 of 20 inserts lie within it. */
const DEVIATIONS_IN_USUAL = 2;

/**
 * Gives the usual scatter of an insert held by a method at a place, as standard deviations [mm].
 *
 * Common practice, not measured: half of what is usually said as ±, its wider end. A yard that has measured its own takes those. A board keeps
 * a group together on the form; under the trowelled face the whole board moves with the vibrating.
 *
 * @example a chair at the trowelled face: ±10 → 5; level ±5 → 2.5.
 */
export function findUsualScatter(method: HoldingMethodName, place: HoldingPlace): HoldingScatter {
  const onForm = method === 'template board' ? USUAL.template : USUAL.single;
  const position = place === 'trowelled face' ? USUAL.trowelled : onForm;
  return { position: position / DEVIATIONS_IN_USUAL, level: USUAL.level / DEVIATIONS_IN_USUAL };
}

/**
 * Gives how far a whole template board moves while the concrete is placed, along each axis, as a standard deviation [mm]; how its holes lie to
 * each other is not in it.
 *
 * Common practice, not measured: on the form it is fast and what scatters is its holes; under the trowelled face it moves as one with the
 * vibrating, as any insert there does.
 */
export function findBoardMovement(place: HoldingPlace): number {
  return place === 'trowelled face' ? USUAL.trowelled / DEVIATIONS_IN_USUAL : 0;
}
