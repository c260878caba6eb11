import type { FixtureHole } from '../../job/documents/fixture.ts';
import type { Change } from './attempt.ts';

/** Holes of a plate with those in their place that become others. */
export function changeHoles(
  holes: readonly FixtureHole[],
  { holes: changed }: Pick<Change, 'holes'>,
): readonly FixtureHole[] {
  return holes.map((hole) => {
    const to = changed.find(({ id }) => id === hole.id);
    if (to === undefined) return hole;
    return {
      id: hole.id,
      at_mm: [to.x_mm, to.y_mm],
      diameter_mm: to.diameter_mm,
      slot_mm: to.slot_mm,
      slotAngle_deg: to.angle_deg,
      takesShear: to.takesShear,
    };
  });
}
