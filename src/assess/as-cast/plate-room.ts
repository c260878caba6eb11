import { isWithinOutline } from '../../engine/fixture/plate-outline.ts';
import type { Point } from '../../engine/geometry/point.ts';
import type { Fixture, FixtureHole } from '../../job/documents/fixture.ts';
import { turnVector } from '../../job/face-frame.ts';

/** EN 1993-1-8, Table 3.3: from a hole to the edge of the plate, and to the next hole, times its width d_0; the value of slots is recalled. */
const TO_EDGE = 1.2;
const SLOT_TO_EDGE = 1.5;
const TO_NEXT = 2.2;
/** Coordinates may be off by rounding [mm]. */
const ROUNDING = 1e-6;

type Stretch = readonly [from: Point, to: Point];

/** The middle line of a hole: a point twice where it is round. */
function middleLine({ at_mm: [x, y], slot_mm, slotAngle_deg }: FixtureHole): Stretch {
  const [hx, hy] = turnVector([slot_mm / 2, 0], slotAngle_deg);
  return [
    [x - hx, y - hy],
    [x + hx, y + hy],
  ];
}

function measureToStretch([x, y]: Point, [[ax, ay], [bx, by]]: Stretch): number {
  const [dx, dy] = [bx - ax, by - ay];
  const squared = dx * dx + dy * dy;
  const share = squared === 0 ? 0 : Math.max(0, Math.min(1, ((x - ax) * dx + (y - ay) * dy) / squared));
  return Math.hypot(x - ax - share * dx, y - ay - share * dy);
}

const cross = ([ax, ay]: Point, [bx, by]: Point, [x, y]: Point) => (bx - ax) * (y - ay) - (by - ay) * (x - ax);

function measureStretches(one: Stretch, other: Stretch): number {
  const parts = cross(...one, other[0]) * cross(...one, other[1]) < 0;
  if (parts && cross(...other, one[0]) * cross(...other, one[1]) < 0) return 0;
  return Math.min(
    measureToStretch(one[0], other),
    measureToStretch(one[1], other),
    measureToStretch(other[0], one),
    measureToStretch(other[1], one),
  );
}

const round = (length: number) => Math.round(10 * length) / 10;
const sizeOf = ({ diameter_mm, slot_mm }: FixtureHole) =>
  slot_mm === 0 ? `${diameter_mm} mm` : `${diameter_mm} × ${round(diameter_mm + slot_mm)} mm`;

/**
 * Why holes that are changed have no room in a plate; null where they have. Distances are taken from the middle line of a slot, its ends' middles among it.
 *
 * Source: EN 1993-1-8, Table 3.3: e ≥ 1.2 d_0, of slots 1.5 d_0 (recalled), next hole 2.2 d_0, as where holes are made larger to suit a thread.
 *
 * @param others holes that are in the plate too, used or not; none of them is judged by itself
 */
export function findNoRoom(
  { outline_mm }: Pick<Fixture, 'outline_mm'>,
  changed: readonly FixtureHole[],
  others: readonly FixtureHole[],
): string | null {
  for (const hole of changed) {
    const line = middleLine(hole);
    const sides = outline_mm.map((corner, i): Stretch => [corner, outline_mm[(i + 1) % outline_mm.length]!]);
    const isIn = line.every((end) => isWithinOutline(outline_mm, end, 0));
    const edge = isIn ? Math.min(...sides.map((side) => measureStretches(line, side))) : 0;
    const share = hole.slot_mm === 0 ? TO_EDGE : SLOT_TO_EDGE;
    const toEdge = share * hole.diameter_mm;
    const what = `hole ${hole.id} of ${sizeOf(hole)}`;
    if (edge < toEdge - ROUNDING)
      return `${what} would stand ${round(edge)} mm from the edge of the plate; at least ${round(toEdge)} mm is wanted (${share} d_0, EN 1993-1-8, Table 3.3)`;
    for (const other of [...changed, ...others]) {
      if (other === hole) continue;
      const apart = measureStretches(line, middleLine(other));
      const toNext = TO_NEXT * Math.max(hole.diameter_mm, other.diameter_mm);
      if (apart < toNext - ROUNDING)
        return `${what} would stand ${round(apart)} mm from hole ${other.id}; at least ${round(toNext)} mm is wanted (${TO_NEXT} d_0, EN 1993-1-8, Table 3.3)`;
    }
  }
  return null;
}
