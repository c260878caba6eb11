import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { CastIn } from '../../../src/job/documents/cast-in.ts';
import { castIn } from '../../../src/job/documents/cast-in.ts';
import { panel as panelSchema } from '../../../src/job/documents/panel.ts';
import { lookFrom, nameSide, tellAside } from '../../../src/web/pieces/survey/stand.ts';
import { askConnection, askEach, listOpen } from '../../../src/web/pieces/survey/tape-asks.ts';
import { rankTapeSides } from '../../../src/web/pieces/survey/tape-edges.ts';
import type { TapeEntry } from '../../../src/web/pieces/survey/tape-entries.ts';
import { findTapedPlaces, makeTapedSurvey } from '../../../src/web/pieces/survey/taped-survey.ts';

const panel = panelSchema.parse({
  key: 'p',
  mark: 'P1',
  concrete: 'C',
  drawnFace: 'outside',
  faceDown: 'outside',
  outline_mm: [
    [0, 0],
    [3000, 0],
    [3000, 2000],
    [0, 2000],
  ],
  thickness_mm: 150,
});

function insert(id: string, x: number, y: number): CastIn {
  return castIn.parse({ key: id, id, panel: 'P1', role: 'fixing', item: null, face: 'inside', x_mm: x, y_mm: y });
}

const side = (item: string, slot: 0 | 1, edge: number, typed: number | null): TapeEntry => ({
  kind: 'side',
  item,
  slot,
  edge,
  typed,
});

describe('how somebody sees a hard panel', () => {
  it('from the inside its left is the right of a drawing of the outside; up stays up', () => {
    const view = lookFrom(panel, { face: 'inside', turn: 0 });
    expect(view.toView([400, 300])).toEqual([2600, 300]);
    expect(nameSide(panel, { face: 'inside', turn: 0 }, 3)).toBe('right side');
    expect(nameSide(panel, { face: 'outside', turn: 0 }, 3)).toBe('left side');
    expect(nameSide(panel, { face: 'inside', turn: 0 }, 0)).toBe('bottom');
  });

  it('turned by a quarter, its drawn top is at the left', () => {
    const view = lookFrom(panel, { face: 'outside', turn: 90 });
    expect(view.toView([0, 2000])).toEqual([0, 0]);
    expect([view.width, view.height]).toEqual([2000, 3000]);
    expect(nameSide(panel, { face: 'outside', turn: 90 }, 2)).toBe('left side');
  });

  it('a way goes to the view and back, and is as long, however one stands', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('outside', 'inside'),
        fc.constantFrom(0, 90, 180, 270),
        fc.integer({ min: -50, max: 50 }),
        fc.integer({ min: -50, max: 50 }),
        (face, turn, x, y) => {
          const view = lookFrom(panel, { face, turn });
          const seen = view.turnToView([x, y]);
          expect(view.turnToDrawn(seen).map((part) => part + 0)).toEqual([x, y]);
          const [from, to] = [view.toView([1000, 900]), view.toView([1000 + x, 900 + y])];
          expect([to[0] - from[0], to[1] - from[1]]).toEqual(seen.map((part) => part + 0));
        },
      ),
      { seed: 7, numRuns: 60 },
    );
  });

  it('says what is off in the words of him who stands there', () => {
    expect(tellAside([4.2, -1.6], { face: 'outside', turn: 0 })).toBe('4 mm to the right, 2 mm down');
    expect(tellAside([0.3, 0], { face: 'outside', turn: 0 })).toBe('where it was drawn');
  });
});

describe('what is asked', () => {
  it('takes the two nearest sides that cross; not two that are parallel', () => {
    expect(rankTapeSides(panel, [200, 300]).slice(0, 2)).toEqual([3, 0]);
    // In the middle of a narrow part both long sides are nearer than the short ones.
    expect(rankTapeSides(panel, [1500, 990]).slice(0, 2)).toEqual([0, 1]);
  });

  it('two inserts from a scaffold are four numbers, and a fifth that checks them; more are taped to each other', () => {
    const two = [insert('a', 500, 500), insert('b', 800, 500)].map((one) => ({ castIn: one }));
    expect(askConnection(panel, two).map(({ kind }) => kind)).toEqual(['side', 'side', 'side', 'side', 'between']);
    const four = [...two, { castIn: insert('c', 500, 800) }, { castIn: insert('d', 800, 800) }];
    const kinds = askConnection(panel, four).map(({ kind }) => kind);
    expect(kinds.filter((kind) => kind === 'between')).toHaveLength(6);
    expect(kinds.filter((kind) => kind === 'side')).toHaveLength(3);
  });

  it('what was said to be out of reach is not asked again; another side answers the same question', () => {
    const asks = askEach(panel, [{ castIn: insert('a', 200, 300) }]);
    expect(asks.map(({ kind }) => kind)).toEqual(['side', 'side', 'depth']);
    expect(listOpen(asks, [side('a', 0, 1, 2800), side('a', 1, 0, null)])).toEqual([{ kind: 'depth', item: 'a' }]);
  });
});

describe('what comes of it', () => {
  it('two distances give the place and are recorded; what was not taken is not', () => {
    const one = insert('a', 200, 300);
    const entries: readonly TapeEntry[] = [
      side('a', 0, 3, 209),
      side('a', 1, 0, 298),
      { kind: 'depth', item: 'a', typed: -2 },
      { kind: 'tilt', item: 'a', x: 3, y: 0, over: 95 },
    ];
    const found = findTapedPlaces(panel, [one, insert('b', 900, 300)], entries);
    const at = found.kind === 'found' ? found.places.get('a')! : [0, 0];
    expect(at[0]).toBeCloseTo(209, 6);
    expect(at[1]).toBeCloseTo(298, 6);
    expect(makeTapedSurvey(panel, { basis: 'tape', entries }, null, null)).toMatchObject({
      tapes: [
        { item: 'a', to: { kind: 'edge', from_mm: [0, 2000], end_mm: [0, 0] }, distance_mm: 209 },
        { item: 'a', to: { kind: 'edge', from_mm: [0, 0], end_mm: [3000, 0] }, distance_mm: 298 },
      ],
      stances: [{ item: 'a', depth_mm: -2, tilt: { x_mm: 3, y_mm: 0, over_mm: 95 } }],
    });
    expect(makeTapedSurvey(panel, { basis: 'tape', entries: [side('a', 0, 3, null)] }, null, null)).toBeNull();
    // By one distance it may still lie anywhere along the side.
    expect(findTapedPlaces(panel, [one], [side('a', 0, 3, 209)])).toMatchObject({ network: { freeMoves: 1 } });
    expect(findTapedPlaces(panel, [one], []).kind).toBe('open');
  });
});
