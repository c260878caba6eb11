import { describe, expect, it } from 'vitest';
import { addClashes } from '../../../src/assess/clash/add-clashes.ts';
import { formClashWords } from '../../../src/assess/clash/form-clash-words.ts';
import { setOutPanel } from '../../../src/assess/set-out/set-out-panel.ts';
import { bed } from '../../../src/job/documents/yard.ts';
import { indexJob } from '../../../src/job/job-index.ts';
import { mustRead } from '../../job/read.ts';
import { type Json, sampleBed, sampleCastIn, sampleJob, samplePanel } from '../../job/sample-job.ts';

const one = [sampleCastIn('1', 1000, 1500)];

function lay(panel: Json, castIns: readonly Json[] = one) {
  const index = indexJob(mustRead(sampleJob({ panels: [samplePanel(panel)], castIns, connections: [] })));
  return { index, setOut: setOutPanel(index, 'P1', bed.parse(sampleBed())) };
}

const words = (panel: Json) => formClashWords(lay(panel).setOut);

describe('clashes in the words of the form', () => {
  // Drawn face down: x of the drawing runs against the bed's x, y along it.
  it('points at the side that a direction of the drawing has in the form', () => {
    const mirrored = words({ drawnFace: 'outside', faceDown: 'outside' });
    expect([mirrored.toward([1, 0]), mirrored.toward([0, 1])]).toEqual(['fixed stop end', 'gangway rail']);
    const upright = words({ drawnFace: 'inside', faceDown: 'outside' });
    expect([upright.toward([1, 0]), upright.toward([0, -1])]).toEqual(['loose stop end', 'wall rail']);
    // Turned by 90° counter-clockwise: x of the drawing runs across the bed.
    const turned = words({ drawnFace: 'inside', faceDown: 'outside', inForm: { turn_deg: 90 } });
    expect([turned.toward([1, 0]), turned.toward([0, 1])]).toEqual(['gangway rail', 'fixed stop end']);
  });

  it('tells a skew direction from the first of the two sides that it lies between', () => {
    const { toward } = words({ drawnFace: 'inside', faceDown: 'outside' });
    expect(toward([Math.cos(0.3), Math.sin(0.3)])).toBe(
      'between loose stop end and gangway rail, 17.2° from toward the first',
    );
  });

  it('tells a move step by step, and on an edge higher or lower by which face is down', () => {
    const up = words({ drawnFace: 'inside', faceDown: 'outside' });
    expect(up.steps('outside', -3, 2)).toEqual(['3 mm toward fixed stop end', '2 mm toward gangway rail']);
    expect(up.steps('edge', 4, 1)).toEqual([
      '4 mm along the side, away from its first corner in the drawing',
      '1 mm higher',
    ]);
    expect(words({ faceDown: 'inside' }).steps('edge', 0, 1)).toEqual(['1 mm lower']);
  });

  it('tells a turned cross bar by where it lies then', () => {
    const turn = (face: 'outside' | 'edge', direction_deg: number, edge: number | null = null) =>
      ({ kind: 'turn cross bar', id: '1', face, edge, turn_deg: -25, direction_deg }) as const;
    // Drawn face up the plan has the drawing's sense; drawn face down it is mirrored: 155° from x is 25° from along the bed.
    const up = words({ drawnFace: 'inside', faceDown: 'outside' });
    const down = words({ drawnFace: 'outside', faceDown: 'outside' });
    const from = (angle: number) => `so that it lies ${angle}° counter-clockwise from along the bed, seen from above`;
    expect([up.turned(turn('outside', 155)), down.turned(turn('outside', 155))]).toEqual([from(155), from(25)]);
    expect([up.turned(turn('outside', 0)), down.turned(turn('outside', 90))]).toEqual([
      'so that it lies along the bed',
      'so that it lies across the bed',
    ]);
    // In the side from corner 2 to corner 3 it turns upright, from corner 3 toward the inside face, which is up or down.
    const inside = words({ drawnFace: 'inside', faceDown: 'inside' });
    const slope = (corner: number) =>
      `so that it lies 20° out of level, its end toward corner ${corner} the higher one`;
    expect([up.turned(turn('edge', 20, 1)), up.turned(turn('edge', 160, 1))]).toEqual([slope(3), slope(2)]);
    expect([inside.turned(turn('edge', 20, 1)), inside.turned(turn('edge', 160, 1))]).toEqual([slope(2), slope(3)]);
    expect(up.turned(turn('edge', 20, 3))).toBe(slope(1));
    expect([up.turned(turn('edge', 0, 1)), up.turned(turn('edge', 90, 1))]).toEqual([
      'so that it lies level',
      'so that it lies upright',
    ]);
  });

  it('calls a side by the rail or the end that it lies at, else by its corners', () => {
    const upright = words({ drawnFace: 'inside', faceDown: 'outside' });
    expect([0, 1, 2, 3].map(upright.edge)).toEqual(['wall rail', 'loose stop end', 'gangway rail', 'fixed stop end']);
    const mirrored = words({ drawnFace: 'outside', faceDown: 'outside' });
    expect([0, 1, 2, 3].map(mirrored.edge)).toEqual(['wall rail', 'fixed stop end', 'gangway rail', 'loose stop end']);
    const outline_mm = [
      [0, 0],
      [4000, 0],
      [4000, 1800],
      [2500, 1800],
      [2500, 3000],
      [200, 3000],
    ];
    const stepped = words({ drawnFace: 'inside', faceDown: 'outside', outline_mm });
    expect([2, 3, 4, 5].map(stepped.edge)).toEqual([
      'the side from corner 3 to corner 4',
      'the side from corner 4 to corner 5',
      'gangway rail',
      'the side from corner 6 to corner 1',
    ]);
  });

  it('calls inserts by the number of the sheet', () => {
    const { setOut } = lay({ drawnFace: 'inside' });
    const [first] = setOut.items;
    expect(formClashWords(setOut).insert(first!.castIn.id)).toBe('no. 1');
  });
});

describe('findings with clashes', () => {
  const bars = (through_mm: Json | readonly number[] | null, kind = 'bars') => ({
    reinforcement: {
      bars: [{ face: 'outside', direction_deg: 90, diameter_mm: 10, spacing_mm: 400, cover_mm: 30, kind, through_mm }],
      edge: 'none',
      limitsCrackWidth: true,
    },
  });
  it('is a warning with a way out for a loose bar, an error for a mesh', () => {
    const loose = lay(bars([1000, 0]));
    const [found] = addClashes(loose.index, loose.setOut).problems.filter(({ kind }) => kind === 'clash');
    expect(found).toMatchObject({ severity: 'warning', insert: '1' });
    // Body 24, bar 10, clearance 5: axes must be 22 apart.
    expect(found!.text).toMatch(/^the body of no\. 1 meets bar .* Shift bar .* by 22 mm toward (fixed|loose) stop end/);
    const mesh = lay(bars([1000, 0], 'mesh'), [sampleCastIn('1', 1000, 1500, { tolerance_mm: 1 })]);
    const [fixed] = addClashes(mesh.index, mesh.setOut).problems.filter(({ kind }) => kind === 'clash');
    expect(fixed).toMatchObject({ severity: 'error' });
  });

  it('names the side that steel comes out at, and an opening from 1', () => {
    const opening = [
      [1000, 1000],
      [1400, 1000],
      [1400, 1400],
      [1000, 1400],
    ];
    // 240 long, so 120 to either side.
    const bar = (direction_deg: number) => ({ direction_deg, diameter_mm: 8, length_mm: 240 });
    const { index, setOut } = lay({ drawnFace: 'inside', openings_mm: [opening] }, [
      sampleCastIn('1', 3900, 1500, { crossBar: bar(0) }),
      sampleCastIn('2', 1200, 900, { crossBar: bar(90) }),
    ]);
    const texts = addClashes(index, setOut).problems.map(({ text }) => text);
    expect(texts).toContainEqual(
      expect.stringMatching(/^the cross bar of no\. \d comes out at loose stop end\. Turn /),
    );
    expect(texts).toContainEqual(expect.stringMatching(/^the cross bar of no\. \d comes out at opening 1\. Turn /));
  });

  it('says what could not be looked at', () => {
    const { index, setOut } = lay(bars(null));
    expect(addClashes(index, setOut).problems.map(({ text }) => text)).toContainEqual(
      expect.stringMatching(/^not looked at for clashes: layer 1 .*where its bars lie is not given$/),
    );
  });

  it('leaves too little cover at a side to the covers of its assembly', () => {
    const { index, setOut } = lay({}, [sampleCastIn('1', 60, 1500)]);
    const clashes = addClashes(index, setOut).problems.filter(
      ({ kind, insert }) => kind === 'clash' && insert !== null,
    );
    expect(clashes).toEqual([]);
  });
});
