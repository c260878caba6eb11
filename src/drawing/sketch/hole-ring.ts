import type { Point } from '../../engine/geometry/point.ts';
import type { FixtureHole } from '../../job/documents/fixture.ts';

/** Sides of half a circle. */
const STEPS = 16;

/** The rim of a hole with its straight part, counter-clockwise, in the plate's own axes [mm]. */
export function ringOfHole({
  at_mm: [x, y],
  diameter_mm,
  slot_mm,
  slotAngle_deg,
}: Pick<FixtureHole, 'at_mm' | 'diameter_mm' | 'slot_mm' | 'slotAngle_deg'>): readonly Point[] {
  const turn = (slotAngle_deg * Math.PI) / 180;
  const [ux, uy] = [Math.cos(turn), Math.sin(turn)];
  const r = diameter_mm / 2;
  return [1, -1].flatMap((end) =>
    Array.from({ length: STEPS + 1 }, (_, k): Point => {
      const angle = turn - end * (Math.PI / 2) + (Math.PI * k) / STEPS;
      return [x + (end * slot_mm * ux) / 2 + r * Math.cos(angle), y + (end * slot_mm * uy) / 2 + r * Math.sin(angle)];
    }),
  );
}
