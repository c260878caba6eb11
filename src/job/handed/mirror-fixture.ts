import type { Point } from '../../engine/geometry/point.ts';
import type { Fixture, FixtureHole } from '../documents/fixture.ts';
import { mirrorLine, mirrorPoint, mirrorRing } from './mirror-values.ts';

/** Two places nearer than this are one [mm]; angles and diameters alike. */
const SAME = 1e-6;

function isSamePoint(a: Point, b: Point): boolean {
  return Math.abs(a[0] - b[0]) <= SAME && Math.abs(a[1] - b[1]) <= SAME;
}

/** Whether two rings of one sense of turning are the same, from whichever corner they begin. */
function isSameRing(a: readonly Point[], b: readonly Point[]): boolean {
  const n = a.length;
  return n === b.length && a.some((_, shift) => b.every((corner, i) => isSamePoint(corner, a[(i + shift) % n]!)));
}

/** Whether two lines without a sense have one direction [deg]. */
function isSameLine(a: number, b: number): boolean {
  const off = (((a - b) % 180) + 180) % 180;
  return Math.min(off, 180 - off) <= SAME;
}

/** A hole as it is in the mirrored plate: the plate's own y axis is the mirror. */
function mirrorHole(hole: FixtureHole): FixtureHole {
  return { ...hole, at_mm: mirrorPoint(0, hole.at_mm), slotAngle_deg: mirrorLine(hole.slotAngle_deg) };
}

function isSameHole(a: FixtureHole, b: FixtureHole): boolean {
  return (
    isSamePoint(a.at_mm, b.at_mm) &&
    Math.abs(a.diameter_mm - b.diameter_mm) <= SAME &&
    Math.abs(a.slot_mm - b.slot_mm) <= SAME &&
    (a.slot_mm <= SAME || isSameLine(a.slotAngle_deg, b.slotAngle_deg)) &&
    a.takesShear === b.takesShear
  );
}

/** The mirror image of a plate, its holes named as they were. */
export function mirrorFixture(fixture: Fixture): Fixture {
  const { outline_mm, attachment_mm, holes } = fixture;
  return {
    ...fixture,
    outline_mm: mirrorRing(0, outline_mm),
    holes: holes.map(mirrorHole),
    attachment_mm: attachment_mm === null ? null : mirrorRing(0, attachment_mm),
  };
}

/**
 * Of a plate that is its own mirror image: which hole each one comes to lie on, by name. Null where it is not, with outline, holes and what is welded
 * on compared: then a mirrored plate is another plate.
 */
export function findMirrorHoles(fixture: Fixture): ReadonlyMap<string, string> | null {
  const mirrored = mirrorFixture(fixture);
  if (!isSameRing(fixture.outline_mm, mirrored.outline_mm)) return null;
  if (fixture.attachment_mm !== null && !isSameRing(fixture.attachment_mm, mirrored.attachment_mm ?? [])) return null;
  const pairs = new Map<string, string>();
  const taken = new Set<FixtureHole>();
  for (const hole of mirrored.holes) {
    const own = fixture.holes.find((candidate) => !taken.has(candidate) && isSameHole(candidate, hole));
    if (own === undefined) return null;
    taken.add(own);
    pairs.set(hole.id, own.id);
  }
  return pairs;
}
