// Scatter of places from the tape's class (OIML R 35-1, Directive 2014/32/EU) and holding (common practice, ± taken as two deviations), by hand.

import { describe, expect, it } from 'vitest';
import { findAssembly } from '../../../src/assess/set-out/find-assembly.ts';
import { findScatters } from '../../../src/assess/set-out/find-scatters.ts';
import type { FormPlace } from '../../../src/assess/set-out/set-out.ts';
import type { Point } from '../../../src/engine/geometry/point.ts';
import { ask, type HoldingParts } from './holding-sample.ts';

// Variances of a length taped with class II: 2001 to 3000 mm (0.9² + 0.5² + 1²)/3, up to 1000 mm (0.5² + 0.5² + 1²)/3.
const AT_2400 = 2.06 / 3;
const SHORT = 0.5;
/** ± 1.5 mm of a board's holes, uniform: 1.5² / 3. */
const HOLES = 0.75;

function held(place: FormPlace, method: string, taped: Point, id: string, changes: HoldingParts = {}) {
  const question = ask(place, method, { ...changes, castIn: { id, ...changes.castIn } });
  return { taped, question, draft: findAssembly(question) };
}

/** Variances along x and y of the members of one group, or of a single insert. */
function variances(members: readonly ReturnType<typeof held>[]): readonly (readonly [number, number])[] {
  const stop = members.map(({ taped, question: { castIn, way, place } }) => ({ taped, castIn, way, place }));
  const drafts = new Map(members.map(({ question: { castIn }, draft }) => [castIn, draft]));
  const found = findScatters([stop], drafts, 'II');
  return stop.map(({ castIn }) => {
    const { x, y } = found.get(castIn)!;
    return [x ** 2, y ** 2];
  });
}

function board(place: FormPlace, changes: HoldingParts = {}) {
  return [
    held(place, 'template board', [2300, 600], '1', changes),
    held(place, 'template board', [2500, 600], '2', changes),
  ];
}

function expectAll(found: readonly (readonly [number, number])[], x: number, y: number): void {
  expect(found.length).toBeGreaterThan(0);
  for (const [alongX, alongY] of found) {
    expect(alongX).toBeCloseTo(x, 9);
    expect(alongY).toBeCloseTo(y, 9);
  }
}

describe('the scatter of a group on a template board', () => {
  it('on the form: the middle as taped and the holes of the board, which is fast', () => {
    expectAll(variances(board('mould face')), AT_2400 + HOLES, SHORT + HOLES);
  });

  it('at the trowelled face the whole board moves: ± 10, so 5² more', () => {
    expectAll(variances(board('trowelled face')), AT_2400 + HOLES + 25, SHORT + HOLES + 25);
  });

  it('what a yard has measured of it counts at either face: 1.2²', () => {
    const changes = { way: { scatter: { position_mm: 1.2, level_mm: 1 } } };
    for (const place of ['mould face', 'trowelled face'] as const)
      expectAll(variances(board(place, changes)), AT_2400 + HOLES + 1.44, SHORT + HOLES + 1.44);
  });
});

describe('the scatter of what is taped one by one', () => {
  it('a single insert by its two lengths and ± 5 of holding', () => {
    expectAll(variances([held('mould face', 'magnet', [2400, 600], '1')]), AT_2400 + 6.25, SHORT + 6.25);
  });

  it('a group of which only one is on a board: each by its own offset and holding, ± 2 and ± 5', () => {
    const found = variances([
      held('mould face', 'template board', [2300, 600], '1'),
      held('mould face', 'magnet', [2500, 600], '2', { way: { id: 'OTHER' } }),
    ]);
    expect(found.map(([x]) => x)).toEqual([
      expect.closeTo(AT_2400 + SHORT + 1, 9),
      expect.closeTo(AT_2400 + SHORT + 6.25, 9),
    ]);
  });

  it('from the middle of the extent, as it is printed: 2900 and twice 3090 lie beside 2995, not beside their mean of 3027', () => {
    // Up to 3000 mm the tape is off by 0.9; beyond it would be by 1.1.
    const found = variances([2900, 3090, 3090].map((x, i) => held('mould face', 'magnet', [x, 600 + 100 * i], `${i}`)));
    for (const [x] of found) expect(x).toBeCloseTo(AT_2400 + SHORT + 6.25, 9);
  });
});
