import { describe, expect, it } from 'vitest';
import { faultCases } from './fault-cases.ts';
import { faultsOf, mustRead } from './read.ts';
import {
  type Json,
  sampleCastIn,
  sampleConnection,
  sampleFixture,
  sampleItem,
  sampleJob,
  samplePanel,
} from './sample-job.ts';

const two = [sampleCastIn('1', 900, 500), sampleCastIn('2', 1100, 500)];

describe('faults of a job file', () => {
  it('finds none in the sample', () => {
    expect(faultsOf(sampleJob())).toEqual([]);
  });
  it.each(faultCases)('%s', (_what, parts, lines) => {
    expect(faultsOf(sampleJob(parts))).toEqual(lines);
  });
  it('checks the pins', () => {
    const file = sampleJob();
    const library = file.library as Json; // safe: the sample is written so
    const changed = { ...file, library: { ...library, rules: { ...(library.rules as Json), edition: '2' } } }; // safe: as above
    expect(faultsOf(changed)).toEqual([
      'job.pins.rules.edition: the job pins rules edition 1, but the file holds 2; expected the pinned one',
    ]);
  });
  it('finds faults of shape and of meaning at once, without faults that only follow from another', () => {
    const lines = faultsOf(
      sampleJob({
        panels: [samplePanel({ thickness_mm: 'thick' }), samplePanel({ key: 'p2', mark: 'P2', concrete: 'C50' })],
        castIns: [...two, sampleCastIn('3', 9999, 0, { panel: 'P2' })],
      }),
    );
    expect(lines).toEqual([
      'job.panels[0].thickness_mm: "thick" is not allowed; expected a number in mm',
      'job.panels[1].concrete: there is no concrete C50; did you mean C40?',
      'job.castIns[2].x_mm: position (9999, 0) lies outside the outline of panel P2; expected a place in the concrete',
    ]);
  });
  // By hand: bolt 16 in a hole of 18 has 1 mm of play; a slot of 20 adds 10 mm along it, none across.
  it.each([
    [[-89.5, 0], 0],
    [[-88.5, 0], 1],
    [[-100, 0.9], 0],
    [[-100, 1.1], 1],
  ])('lets a bolt move along a slot: hole at %j, %d faults', (at_mm, count) => {
    const holes = [
      { id: '1', at_mm, diameter_mm: 18, slot_mm: 20 },
      { id: '2', at_mm: [100, 0], diameter_mm: 18 },
    ];
    expect(
      faultsOf(sampleJob({ connections: [sampleConnection({ fixture: sampleFixture({ holes }) })] })),
    ).toHaveLength(count);
  });
  it('reads a rated brace insert, mixed types, and a single insert with loads but no plate', () => {
    const rated = sampleItem({
      id: 'B16',
      ratedLoads: [{ role: 'brace', load_kN: 10, document: 'D', conditions: 'none' }],
    });
    const file = mustRead(
      sampleJob({
        items: [sampleItem(), rated],
        castIns: [
          two[0]!,
          sampleCastIn('2', 1100, 500, { item: 'B16' }),
          sampleCastIn('3', 2000, 500, { role: 'brace', item: 'B16' }),
          sampleCastIn('4', 2500, 500),
        ],
        connections: [
          sampleConnection(),
          sampleConnection({
            key: 'c2',
            mark: 'C2',
            origin_mm: [2500, 500],
            fixture: null,
            inserts: [{ insert: '4', hole: null }],
          }),
        ],
      }),
    );
    expect(file.job.castIns).toHaveLength(4);
  });
});
