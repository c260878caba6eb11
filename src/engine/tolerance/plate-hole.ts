import type { Point } from '../geometry/point.ts';

/** A hole of a plate and what it leaves its bolt, in the plate's own axes: mm and rad. */
export interface PlateHole {
  readonly at: Point;
  /** Radial clearance of a bolt in the middle: half of the hole's diameter less the bolt's; below 0 the bolt does not go in. */
  readonly slack: number;
  /** Straight part of a slot, between the centres of its ends; 0: a round hole. */
  readonly slot: number;
  /** Direction of the slot from the x axis, counter-clockwise. */
  readonly angle: number;
}
