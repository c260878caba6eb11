import type { Point } from '../../engine/geometry/point.ts';

/** Why a moved thing rests where it does along one axis. */
export interface SnapGuide {
  readonly axis: 'x' | 'y';
  /** `in line`: with another insert. `mirrored`: as far from the opposite side as another insert is from its own. `middle`: half way. */
  readonly kind: 'in line' | 'mirrored' | 'middle';
  /** The line that it rests on, along the axis [mm]. */
  readonly at: number;
}

/** Lines of one axis that a thing may rest on. */
export interface SnapLines {
  readonly inLine: readonly number[];
  readonly mirrored: readonly number[];
  readonly middle: number;
}

export interface SnapField {
  readonly x: SnapLines;
  readonly y: SnapLines;
  /** Steps that places rest on, counted from the origin; 0: none [mm]. */
  readonly grid: number;
  /** How near is near enough to rest on a line [mm]. */
  readonly reach: number;
}

const unique = (values: readonly number[]) => [...new Set(values.map((value) => Math.round(value * 1000) / 1000))];

function layLines(others: readonly number[], low: number, high: number): SnapLines {
  return { inLine: unique(others), mirrored: unique(others.map((at) => low + high - at)), middle: (low + high) / 2 };
}

/**
 * The lines that things rest on: other inserts, the same distances from the opposite sides, the middle.
 * @param others places of the inserts that stay [mm]
 */
export function makeSnapField(
  others: readonly Point[],
  box: { readonly minX: number; readonly minY: number; readonly maxX: number; readonly maxY: number },
  grid: number,
  reach: number,
): SnapField {
  return {
    x: layLines(
      others.map(([x]) => x),
      box.minX,
      box.maxX,
    ),
    y: layLines(
      others.map(([, y]) => y),
      box.minY,
      box.maxY,
    ),
    grid,
    reach,
  };
}

interface Pull {
  readonly by: number;
  readonly guide: SnapGuide | null;
}

/** The nearest line to one of the places; those of other inserts first where equal. */
function pullToLine(axis: 'x' | 'y', lines: SnapLines, places: readonly number[], reach: number): Pull | null {
  let best: Pull | null = null;
  let least = reach;
  const weigh = (kind: SnapGuide['kind'], at: number, place: number) => {
    const off = Math.abs(at - place);
    if (off > least || (off === least && best !== null)) return;
    least = off;
    best = { by: at - place, guide: { axis, kind, at } };
  };
  for (const place of places) for (const at of lines.inLine) weigh('in line', at, place);
  for (const place of places) for (const at of lines.mirrored) weigh('mirrored', at, place);
  const [first, last] = [Math.min(...places), Math.max(...places)];
  weigh('middle', lines.middle, (first + last) / 2);
  return best;
}

function pull(axis: 'x' | 'y', field: SnapField, places: readonly number[], held: number, origin: number): Pull {
  const found = pullToLine(axis, field[axis], places, field.reach);
  if (found !== null) return found;
  if (field.grid <= 0) return { by: 0, guide: null };
  const steps = Math.round((held - origin) / field.grid) * field.grid + origin;
  return { by: steps - held, guide: null };
}

/**
 * How much further a moved group goes so that it rests on something. The number that is shown is always the true one.
 * @param places where its inserts would be; the first is the one in the hand, which rests on the grid
 * @param origin that the grid counts from
 */
export function findSnap(
  field: SnapField,
  places: readonly Point[],
  origin: Point,
): { readonly by: Point; readonly guides: readonly SnapGuide[] } {
  const [held] = places;
  if (held === undefined) return { by: [0, 0], guides: [] };
  const x = pull(
    'x',
    field,
    places.map(([value]) => value),
    held[0],
    origin[0],
  );
  const y = pull(
    'y',
    field,
    places.map(([, value]) => value),
    held[1],
    origin[1],
  );
  return { by: [x.by, y.by], guides: [x.guide, y.guide].filter((guide) => guide !== null) };
}
