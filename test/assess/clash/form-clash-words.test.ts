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
