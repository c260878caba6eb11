// Source of the values: data/hardware.json, each entry with its own (thread tables, ISO 898-1, ISO 3506-1, course notes).

import { shareShear } from '../../src/engine/fixture/shear-shares.ts';
import type { Point } from '../../src/engine/geometry/point.ts';
import { findBoltSteel } from '../../src/engine/hardware/property-classes.ts';
import { externalStripArea } from '../../src/engine/hardware/thread-shear.ts';
import { findThread, type Thread, type ThreadName } from '../../src/engine/hardware/threads.ts';
import type { Evaluator, PublishedCase } from './published.ts';

const SIZES = ['M10', 'M12', 'M16', 'M20', 'M24'] as const satisfies readonly ThreadName[];

/** One value for each size, named "d2 M16" and so on. */
function forSizes(
  symbol: string,
  sizes: readonly ThreadName[],
  give: (thread: Thread) => number,
): Readonly<Record<string, (by: Evaluator) => number>> {
  return Object.fromEntries(
    sizes.map((size) => [`${symbol} ${size}`, (by: Evaluator) => by.part('thread table', give(findThread(size)))]),
  );
}

const stressArea = (thread: Thread): number => thread.stressArea;
const internalMinor = (thread: Thread): number => thread.internalMinor;

const threads: readonly PublishedCase[] = [
  { entry: 'H1-01', how: 'basic profile of ISO 68-1', values: forSizes('d2', SIZES, (thread) => thread.pitchDiameter) },
  { entry: 'H1-02', how: 'basic profile of ISO 68-1', values: forSizes('D1', ['M10', 'M12'], internalMinor) },
  { entry: 'H1-03', how: 'basic profile of ISO 68-1', values: forSizes('D1', ['M16', 'M20', 'M24'], internalMinor) },
  {
    entry: 'H1-04',
    how: 'π/4 d3²',
    values: forSizes('A3', SIZES, (thread) => (Math.PI / 4) * thread.externalMinor ** 2),
  },
  { entry: 'H1-05', how: 'π/4 ((d2 + d3)/2)²', values: forSizes('As', ['M12', 'M16', 'M20', 'M24'], stressArea) },
  { entry: 'H2-03', how: 'π/4 ((d2 + d3)/2)²', values: forSizes('As', SIZES, stressArea) },
];

const limit = (by: Evaluator, give: (thread: Thread) => number): number =>
  by.part('thread limits', give(findThread('M10')));

const limits: PublishedCase = {
  entry: 'H1-13',
  how: 'the limits that the engine uses: least bolt, greatest internal thread',
  values: {
    d_min_6g: (by) => limit(by, (thread) => thread.bolt6g.outsideMin),
    d2_min_6g: (by) => limit(by, (thread) => thread.bolt6g.pitchMin),
    D1_min_6H: (by) => limit(by, (thread) => thread.internalMinor),
    D1_max_6H: (by) => limit(by, (thread) => thread.internal6H.minorMax),
    D2_min_6H: (by) => limit(by, (thread) => thread.pitchDiameter),
    D2_max_6H: (by) => limit(by, (thread) => thread.internal6H.pitchMax),
  },
};

const strip: PublishedCase = {
  entry: 'H2-01',
  how: 'engagement of one diameter, thread 6H with bolt 6g',
  values: Object.fromEntries(
    (['M10', 'M16', 'M20', 'M24'] as const).map((size) => [
      `ASs ${size}`,
      (by: Evaluator) => {
        const thread = findThread(size);
        return by.part('strip area of the bolt thread', externalStripArea(thread, thread.diameter, 0));
      },
    ]),
  ),
};

const STAINLESS = { '50': 'A2-50', '70': 'A2-70', '80': 'A4-80' } as const;

const stainless: PublishedCase = {
  entry: 'H1-10',
  how: 'nominal stresses of the class',
  values: Object.fromEntries(
    Object.entries(STAINLESS).flatMap(([name, propertyClass]) => [
      [`${name} Rm_min`, (by: Evaluator) => by.part('bolt steel', findBoltSteel(propertyClass).ultimate)],
      [`${name} Rpf_min`, (by: Evaluator) => by.part('bolt steel', findBoltSteel(propertyClass).yield)],
    ]),
  ),
};

/** Share of the first bolt under a force and a turning moment about the middle [N, N mm]. */
function shareOfFirst(by: Evaluator, bolts: readonly Point[], Vx: number, Vy: number, T: number): Point {
  const named = bolts.map(([x, y], i) => ({ id: `${i}`, x, y, takesShear: true }));
  const share = shareShear(named, { Vx, Vy, T })[0]!;
  return [by.part('elastic vector method', share.Vx), by.part('elastic vector method', share.Vy)];
}

/**
 * Bolt at (70, −150), where both parts add up. The layout is not printed, only its Σr² = 121 700 mm²: four bolts at
 * (±70, ±150) and four at 55 mm from the middle have it, 4 · (70² + 150²) + 4 · 55² = 121 700.
 */
const EIGHT: readonly Point[] = [
  [70, -150],
  [70, 150],
  [-70, 150],
  [-70, -150],
  [55, 0],
  [-55, 0],
  [0, 55],
  [0, -55],
];
const [PX, PY, MOMENT] = [100.623, 201.246, 55342.65];
const inclined = (by: Evaluator): Point => shareOfFirst(by, EIGHT, PX, PY, MOMENT);

const eightBolts: PublishedCase = {
  entry: 'H10-01',
  how: 'a layout with the printed Σr²; the parts of the moment are the shares of the moment alone',
  values: {
    pmx: (by) => shareOfFirst(by, EIGHT, 0, 0, MOMENT)[0],
    pmy: (by) => shareOfFirst(by, EIGHT, 0, 0, MOMENT)[1],
    px: (by) => inclined(by)[0],
    py: (by) => inclined(by)[1],
    p: (by) => Math.hypot(...inclined(by)),
  },
};

/** Two columns at x = ±45 mm, rows at ±37.5 and ±112.5 mm; V = 180 kN at 250 mm. */
const COLUMNS: readonly Point[] = [45, -45].flatMap((x) => [-112.5, -37.5, 37.5, 112.5].map((y): Point => [x, y]));

const bracket: PublishedCase = {
  entry: 'H10-04',
  how: 'shares of the moment alone, 180 kN · 250 mm',
  values: {
    tors_x: (by) => shareOfFirst(by, COLUMNS, 0, 0, 180 * 250)[0],
    tors_y: (by) => shareOfFirst(by, COLUMNS, 0, 0, 180 * 250)[1],
  },
};

export const CASES: readonly PublishedCase[] = [...threads, limits, strip, stainless, eightBolts, bracket];
