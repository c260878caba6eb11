import { describe, expect, it } from 'vitest';
import { findPullBasis, type PullBasis } from '../../../src/assess/proof-load/pull-basis.ts';
import { poolPulls, reportPullTests } from '../../../src/assess/proof-load/pull-tests.ts';
import type { JobFile } from '../../../src/job/documents/job-file.ts';
import { foldPiece } from '../../../src/records/fold/fold-piece.ts';
import type { BodyOf } from '../../../src/records/record.ts';
import { tellAgainstPlan, tellPullsDone } from '../../../src/say/pull-words.ts';
import { demoFile, PieceTablet, pieceOf, type Who } from '../yard/yard-sample.ts';

const sample = pieceOf(demoFile(), 'P02', '1');
const keyOf = (number: number) => sample.plan.setOut.items.find((item) => item.number === number)!.castIn.key;
function basisOf(change: (file: JobFile) => JobFile, ...numbers: readonly number[]) {
  const { context, plan } = pieceOf(demoFile(change), 'P02', '1');
  return findPullBasis(
    context.index,
    plan,
    plan.setOut.items.filter(({ number }) => numbers.includes(number)),
  );
}

describe('what pull tests are planned from', () => {
  it('is the greatest design tension, the least that the steel yields at, where the cone starts', () => {
    const basis = basisOf((file) => file, 12, 13) as PullBasis;
    // C05: 32 kN out on four bolts about its middle; embedment 96, no recess.
    expect(basis.design).toBeCloseTo(8, 6);
    expect(basis.depth).toBe(96);
    // Below the section at the cross hole, 219.5 mm² of 355 MPa = 77.9 kN: the thread, one diameter long, strips first.
    expect(basis.steelYield).toBeGreaterThan(70);
    expect(basis.steelYield).toBeLessThan(77.9);
  });

  it('takes the wall around the thread where it is the least', () => {
    const thin = (file: JobFile): JobFile => ({
      ...file,
      library: {
        ...file.library,
        catalogue: {
          ...file.library.catalogue,
          items: file.library.catalogue.items.map((item) =>
            item.id === 'F16-103' ? { ...item, bodyDiameter_mm: 20, crossHole: null } : item,
          ),
        },
      },
    });
    // π/4 (20² − 16.34²) = 104.5 mm² of 355 MPa; so thin a wall has no rule for stripping.
    expect((basisOf(thin, 12) as PullBasis).steelYield).toBeCloseTo(37.08, 1);
  });

  it('counts inserts of the type in the concrete over all pieces that are planned', () => {
    const only = (file: JobFile): JobFile => ({
      ...file,
      job: {
        ...file.job,
        pours: file.job.pours
          .filter(({ pieces }) => pieces.some(({ panel }) => panel === 'P02'))
          .map((pour) => ({ ...pour, pieces: pour.pieces.filter(({ panel }) => panel === 'P02') })),
      },
    });
    // P02 has twelve F16-103: four in C05, four in C06, two in C07 and C08 each.
    const { file } = pieceOf(demoFile(only), 'P02', '1').context.index;
    const pieces = file.job.pours.reduce((sum, pour) => sum + pour.pieces.length, 0);
    expect((basisOf(only, 12) as PullBasis).lot).toBe(12 * pieces);
  });

  it('is of one known type, and never of a lifting insert', () => {
    expect(basisOf((file) => file)).toBe('none chosen');
    expect(basisOf((file) => file, 10, 12)).toBe('several types');
    expect(basisOf((file) => file, 5)).toBe('not for pulling');
  });
});

const PLANNED: BodyOf<'proof-planned'> = {
  items: [keyOf(12), keyOf(13)],
  load_kN: 12,
  hold_min: 1,
  movement_mm: 0.1,
  role: 'qa',
  reason: 'test',
};
const GOOD: BodyOf<'proof-loaded'> = {
  load_kN: 12,
  held_min: 1,
  movement_mm: 0.05,
  failure: null,
  support_mm: 150,
  gauge: { name: null, serial: 'G 1', calibratedUntil: '2027-01-01' },
  at: null,
  note: null,
};

type Pull = readonly [number: number, change?: Partial<BodyOf<'proof-loaded'>>];

function report(pulls: readonly Pull[], planned: Partial<BodyOf<'proof-planned'>> = {}, who: Who = 'qa') {
  const tablet = new PieceTablet(1, sample);
  tablet.write(who, null, { kind: 'proof-planned', body: { ...PLANNED, ...planned } });
  for (const [number, change] of pulls)
    tablet.write('setter', number, { kind: 'proof-loaded', body: { ...GOOD, ...change } });
  return reportPullTests(sample.context, sample.plan, foldPiece(sample.plan.piece, tablet.known.values()));
}

const statesOf = ({ inserts }: ReturnType<typeof report>) => inserts.map(({ item, state }) => [item.number, state]);

describe('what pull tests of a piece come to', () => {
  it('pass where every planned insert passes', () => {
    const all = report([[12], [13]]);
    expect(statesOf(all)).toEqual([
      [12, 'passes'],
      [13, 'passes'],
    ]);
    expect(all.answer).toMatchObject({ state: 'passes', missing: 0, gaps: [] });
    const one = report([[12]]);
    expect(one.answer).toMatchObject({ state: 'not shown', missing: 1, gaps: ['tests are missing'] });
    expect(tellPullsDone(one)).toBe('1 of 2 planned inserts pulled');
  });

  it('leave a gap where feet stand in the cone or were not measured, or the gauge is not shown, and may be made again', () => {
    const near = report([[12, { support_mm: 143.9 }], [13]]);
    expect(near.answer).toMatchObject({ state: 'not shown', gaps: ['the cone is not tested'] });
    const unmeasured = report([[12, { support_mm: null }]]).inserts[0]!.tests[0]!;
    expect(tellAgainstPlan(unmeasured.answer, unmeasured.record.body)).toEqual([
      'Nobody measured where the feet stood: that the cone was tested is not shown.',
    ]);
    const gauge = { name: null, serial: null, calibratedUntil: null };
    expect(report([[12, { gauge }]]).inserts[0]!.tests[0]!.answer!.gaps).toEqual([
      'no serial of the gauge',
      'no calibration date',
    ]);
    const expired = { ...GOOD.gauge!, calibratedUntil: '2026-12-13' };
    expect(statesOf(report([[12, { gauge: expired }]]))[0]).toEqual([12, 'not shown']);
    expect(report([[12, { gauge: expired }], [12], [13]]).answer).toMatchObject({ state: 'passes', gaps: [] });
  });

  it('fail for good where one gave way at the load, whatever was pulled after it', () => {
    const failed = report([[12, { failure: 'concrete cone', load_kN: 11 }], [12], [13]]);
    expect(statesOf(failed)[0]).toEqual([12, 'fails']);
    expect(failed.answer!.state).toBe('fails');
    expect(report([[12, { movement_mm: 0.11 }], [13]]).answer!.state).toBe('fails');
    // A movement that nobody asked for is not missed.
    expect(report([[12, { movement_mm: null }], [13]], { movement_mm: null }).answer!.state).toBe('passes');
  });

  it('hold against no plan of somebody who may not plan', () => {
    const without = report([[12], [13]], {}, 'checker');
    expect([without.isWithoutRight, without.answer, without.plan]).toEqual([true, null, null]);
    expect(statesOf(without)).toEqual([
      [12, 'not shown'],
      [13, 'not shown'],
    ]);
    expect(report([[12]], {}, 'unregistered').isWithoutRight).toBe(true);
  });

  it('name planned inserts that the revision does not have, and judge one that was not planned too', () => {
    const gone = report([[12]], { items: [keyOf(12), 'no such key'] });
    expect([gone.gone, gone.answer!.state, gone.answer!.missing]).toEqual([1, 'not shown', 1]);
    const other = report([[12], [13], [14, { failure: 'steel', load_kN: 5 }]]);
    expect(other.inserts.map(({ isPlanned }) => isPlanned)).toEqual([true, true, false]);
    expect(other.answer!.state).toBe('fails');
  });
});

describe('a characteristic value', () => {
  const failing = (support_mm: number | null): Partial<BodyOf<'proof-loaded'>> => ({
    failure: 'concrete cone',
    load_kN: 30,
    support_mm,
  });

  it('comes from those that gave way with their cones free, over all pieces of a job', () => {
    const three = report([
      [12, failing(150)],
      [13, failing(150)],
      [14, failing(100)],
      [15, failing(null)],
      [6, failing(150)],
    ]);
    expect(three.answer!.characteristic).toEqual({ kind: 'too few', count: 3, least: 5 });
    const two = report([
      [12, failing(150)],
      [13, failing(150)],
    ]);
    const [pool, ...rest] = poolPulls([three, two, report([])]);
    expect(rest).toEqual([]);
    // All at 30 kN: no scatter.
    expect(pool).toMatchObject({ type: 'F16-103', concrete: 'C40', pulled: 7 });
    expect(pool!.characteristic).toMatchObject({ kind: 'value', count: 5, at75: 30, annexD: 30 });
  });
});
