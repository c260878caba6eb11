import { describe, expect, it } from 'vitest';
import { boardKind } from '../../../src/assess/parts/board-kind.ts';
import { setOutPanel } from '../../../src/assess/set-out/set-out-panel.ts';
import { indexJob } from '../../../src/job/job-index.ts';
import { mustRead } from '../../job/read.ts';
import { sampleJob } from '../../job/sample-job.ts';

const board = {
  id: 'BOARD',
  name: 'Board',
  kind: 'template board',
  thread: null,
  height_mm: null,
  reusable: true,
  lossPerUse: 0,
  turnRound_days: 1,
  packSize: 1,
  leadTime_days: null,
} as const;
const [example] = setOutPanel(indexJob(mustRead(sampleJob())), 'P1', null).items;
const kindOf = (places: readonly (readonly [number, number])[]) =>
  boardKind(
    board,
    places.map((plan) => ({ ...example!, plan })),
  ).id;

describe('template boards', () => {
  it('are one kind wherever the same holes are, to a millimetre', () => {
    const square = [
      [0, 0],
      [200, 0],
      [0, 200],
      [200, 200],
    ] as const;
    expect(kindOf(square)).toBe('BOARD 4xM16 200x200');
    expect(kindOf(square.map(([x, y]) => [x + 1234.5, y + 77.25] as const))).toBe('BOARD 4xM16 200x200');
    expect(
      kindOf([
        [0, 0],
        [150, 0],
      ]),
    ).toBe('BOARD 2xM16 150x0');
  });

  it('of a handed partner are another kind, unless the pattern is its own mirror image', () => {
    const hand = [
      [0, 0],
      [200, 0],
      [0, 150],
    ] as const;
    const mirrored = hand.map(([x, y]) => [-x, y] as const);
    expect(kindOf(hand)).toBe('BOARD 3xM16 200x150 at 0/0 0/150 200/0');
    expect(kindOf(mirrored)).not.toBe(kindOf(hand));
    expect(
      kindOf([
        [0, 0],
        [200, 100],
      ]),
    ).not.toBe(
      kindOf([
        [0, 100],
        [200, 0],
      ]),
    );
  });
});
