import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { PanelSetOut } from '../../../src/assess/set-out/set-out.ts';
import { setOutPanel } from '../../../src/assess/set-out/set-out-panel.ts';
import { bed } from '../../../src/job/documents/yard.ts';
import { indexJob } from '../../../src/job/job-index.ts';
import { mustRead } from '../../job/read.ts';
import { type Json, sampleBed, sampleCastIn, sampleConnection, sampleJob, samplePanel } from '../../job/sample-job.ts';
import { readBack, worstError } from './read-back.ts';

const faces = ['outside', 'inside'] as const;
const turns = [0, 90, 180, 270] as const;
const corners = ['bottom-left', 'bottom-right', 'top-left', 'top-right'] as const;

/** A gable with a skew side: no two of its corners are alike, so that no mirror can hide. */
const gable = [
  [0, 0],
  [5200, 0],
  [5200, 2200],
  [0, 3600],
];
const skew = Math.hypot(5200, 1400);

const onFaces = [
  sampleCastIn('1', 731.4, 512.6),
  sampleCastIn('2', 1130.5, 511.5),
  sampleCastIn('3', 4011.49, 1020.51, { face: 'inside' }),
  sampleCastIn('4', 333.3, 2999.9, { face: 'inside' }),
];
const onEdges = [
  sampleCastIn('5', 1200.4, 71.6, { face: 'edge', edge: 0 }),
  sampleCastIn('6', 900.7, 100.3, { face: 'edge', edge: 1 }),
  sampleCastIn('7', 0.35 * skew, 90, { face: 'edge', edge: 2 }),
  sampleCastIn('8', 1999.5, 60.5, { face: 'edge', edge: 3 }),
];

/** An L: two of its sides (from corner 3 to 5) are in no rail and no end of the form. */
const ell = [
  [0, 0],
  [5200, 0],
  [5200, 1500],
  [2100, 1500],
  [2100, 3600],
  [0, 3600],
];
const inEll = [
  sampleCastIn('1', 731.4, 512.6),
  sampleCastIn('11', 1200.4, 71.6, { face: 'edge', edge: 0 }),
  sampleCastIn('12', 400.7, 100.3, { face: 'edge', edge: 1 }),
  sampleCastIn('13', 700.2, 80, { face: 'edge', edge: 2 }),
  sampleCastIn('14', 620.5, 90, { face: 'edge', edge: 3 }),
  sampleCastIn('15', 1300.6, 110, { face: 'edge', edge: 4 }),
  sampleCastIn('16', 1999.5, 60.5, { face: 'edge', edge: 5 }),
];

function setOut(changes: Json, castIns: readonly Json[] = [...onFaces, ...onEdges]): PanelSetOut {
  const file = mustRead(
    sampleJob({
      panels: [samplePanel({ outline_mm: gable, ...changes })],
      castIns,
      connections: [
        sampleConnection({ inserts: [{ insert: '1', hole: null }], fixture: null, actions: { kind: 'none' } }),
      ],
      beds: [sampleBed()],
    }),
  );
  return setOutPanel(indexJob(file), 'P1', bed.parse(sampleBed()));
}

const lies = faces.flatMap((drawnFace) =>
  faces.flatMap((faceDown) =>
    turns.flatMap((turn_deg) => corners.map((datum) => ({ drawnFace, faceDown, inForm: { turn_deg, datum } }))),
  ),
);

describe('the set-out of a panel, read back from its printed numbers and words alone', () => {
  it.each(lies)('lies as designed: $drawnFace drawn, $faceDown down, $inForm', (lie) => {
    expect(worstError(setOut(lie))).toBeLessThanOrEqual(0.5 + 1e-9);
  });

  it.each(lies)('a mirrored panel is caught: $drawnFace drawn, $faceDown down, $inForm', (lie) => {
    const other = lie.drawnFace === 'outside' ? 'inside' : 'outside';
    const mirrored = setOut({ ...lie, drawnFace: other });
    const meant = setOut(lie);
    expect(worstError({ ...mirrored, panel: meant.panel }, readBack)).toBeGreaterThan(100);
  });

  it.each(lies)('in every side of an L: $drawnFace drawn, $faceDown down, $inForm', (lie) => {
    const found = setOut({ ...lie, outline_mm: ell }, inEll);
    expect(worstError(found)).toBeLessThanOrEqual(0.5 + 1e-9);
    const sideOf = (id: string) => found.items.find(({ castIn }) => castIn.id === id)!.side;
    expect([sideOf('13'), sideOf('14')]).toEqual([
      'the side from corner 3 to corner 4',
      'the side from corner 4 to corner 5',
    ]);
    // The other four are in the rails and ends of the form, each in one of its own.
    const { start, finish, railA, railB } = found.words;
    expect(['11', '12', '15', '16'].map(sideOf).sort()).toEqual([start, finish, railA, railB].sort());
  });

  it('tapes along the step of an L from its corner nearer to the datum corner', () => {
    // Seen from above the drawing is mirrored: datum at corner 2, (5200, 0). Corner 3 is 1500 from it, corner 4 is 3443.8, corner 5 is 4750.8.
    const { items } = setOut({ outline_mm: ell }, inEll);
    const printed = new Map(items.map((item) => [item.castIn.id, item.printed]));
    expect(printed.get('13')).toMatchObject({ along: 700, from: 'corner 3' });
    expect(printed.get('14')).toMatchObject({ along: 621, from: 'corner 4' });
  });

  it('has nothing to say of a panel without items', () => {
    expect(() => worstError({ ...setOut({}), items: [] })).toThrow('panel P1: no item to read back');
  });

  it('holds anywhere on the panel (property)', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...lies),
        fc.array(
          fc.tuple(fc.double({ min: 100, max: 5000, noNaN: true }), fc.double({ min: 100, max: 1400, noNaN: true })),
          {
            minLength: 1,
            maxLength: 4,
          },
        ),
        (lie, places) => {
          const castIns = places.map(([x, y], i) =>
            sampleCastIn(String(i + 1), x, y, {
              face: i % 2 === 0 ? 'outside' : 'inside',
              item: null,
              role: 'other',
              description: 'a thing',
            }),
          );
          const file = mustRead(
            sampleJob({ panels: [samplePanel({ outline_mm: gable, ...lie })], castIns, connections: [] }),
          );
          const found = setOutPanel(indexJob(file), 'P1', bed.parse(sampleBed()));
          expect(worstError(found)).toBeLessThanOrEqual(0.5 + 1e-9);
        },
      ),
    );
  });

  it('says which face is down and whether the drawing shows the mirror image', () => {
    const seen = setOut({ drawnFace: 'outside', faceDown: 'outside' });
    expect([seen.faceDown, seen.isMirrored]).toEqual(['outside', true]);
    expect(setOut({ drawnFace: 'inside', faceDown: 'outside' }).isMirrored).toBe(false);
  });

  it("names place and side in the yard's words", () => {
    const { items } = setOut({ drawnFace: 'inside', faceDown: 'outside' });
    const by = new Map(items.map((item) => [item.castIn.id, item]));
    expect([by.get('1')!.place, by.get('3')!.place]).toEqual(['mould face', 'trowelled face']);
    expect(['5', '6', '7', '8'].map((id) => by.get(id)!.side)).toEqual([
      'wall rail',
      'loose stop end',
      'the side from corner 3 to corner 4',
      'fixed stop end',
    ]);
  });

  it('warns where the datum corner is in the air, and of inserts whose holding is not decided', () => {
    const [datum, ...others] = setOut({ drawnFace: 'inside', inForm: { datum: 'top-right' } }).problems;
    expect(datum).toMatchObject({ kind: 'datum', severity: 'warning' });
    expect(datum!.text).toContain('loose stop end / gangway rail');
    expect(others.filter(({ kind }) => kind === 'not decided').map(({ insert }) => insert)).toEqual([
      '1',
      '2',
      '3',
      '4',
      '5',
      '6',
      '7',
      '8',
    ]);
  });

  it('refuses a panel that the job has not', () => {
    expect(() => setOutPanel(indexJob(mustRead(sampleJob())), 'P9', null)).toThrow('no panel P9');
  });

  it('speaks of ends and rails by number where no bed is named', () => {
    const found = setOutPanel(indexJob(mustRead(sampleJob())), 'P1', null);
    expect([found.words.start, found.datumWords]).toEqual(['end 1', 'end 1 / rail 1']);
  });
});
