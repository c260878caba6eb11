import { describe, expect, it } from 'vitest';
import { listBagLabels, listBench } from '../../../src/assess/parts/bench.ts';
import { findJobParts } from '../../../src/assess/parts/job-parts.ts';
import { indexParts } from './parts-job.ts';

const RULE = { share: 0.05, atLeast: 1 };

const pourOf = (id: string) => findJobParts(indexParts()).pours.find(({ plan }) => plan.pour.id === id)!;

// By hand: pour T1 casts P1 twice and P2 once.
describe('the bench of a pour', () => {
  it('has a bin a kind, with spares and the panels that it is for', () => {
    const bench = listBench(pourOf('T1'), RULE);
    expect(bench.map(({ kind, count, spares }) => [kind.id, count, spares])).toEqual([
      ['F16', 7, 1],
      ['F16L', 2, 1],
      ['bar 10 x 250', 2, 1],
      ['BOARD 2xM16 200x0', 2, 0],
      ['NAIL', 14, 1],
      ['PLATE-16', 7, 0],
      ['duct: conduit box', 2, 0],
    ]);
    expect(bench[0]!.panels).toEqual([
      { mark: 'P1', each: 3, serials: ['1', '2'] },
      { mark: 'P2', each: 1, serials: ['1'] },
    ]);
    expect(bench[1]!.panels.map(({ mark }) => mark)).toEqual(['P1']);
  });

  it('adds up to what its castings take', () => {
    for (const { count, panels } of listBench(pourOf('T1'), RULE))
      expect(panels.reduce((sum, { each, serials }) => sum + each * serials.length, 0)).toBe(count);
  });
});

describe('labels of bags', () => {
  const named = (lines: ReturnType<typeof listBagLabels>[number]['inBag']) =>
    lines.map(({ kind, count }) => `${count} ${kind.id}`);

  it('name each casting with what it takes; boards and what others bring lie beside the bag', () => {
    const [first, second, third] = listBagLabels(pourOf('T1'));
    expect(first).toMatchObject({ pour: 'T1', date: '2026-12-14', bed: 'Bed 1', panel: 'P1', serial: '1' });
    expect(named(first!.inBag)).toEqual(['3 F16', '1 F16L', '1 bar 10 x 250', '6 NAIL', '3 PLATE-16']);
    expect(named(first!.beside)).toEqual(['1 BOARD 2xM16 200x0', '1 duct: conduit box']);
    expect(second).toMatchObject({ panel: 'P1', serial: '2' });
    expect(named(third!.inBag)).toEqual(['1 F16', '2 NAIL', '1 PLATE-16']);
  });

  it('say of each piece by which revision it was planned', () => {
    const index = indexParts({
      revision: { letter: 'C', status: 'for construction', date: '2026-11-20' },
      pours: [
        {
          id: 'T1',
          bed: 'B1',
          date: '2026-12-14',
          pieces: [
            { panel: 'P2', serial: '1' },
            { panel: 'P2', serial: '2', revision: 'B' },
          ],
        },
      ],
    });
    const [pour] = findJobParts(index).pours;
    expect(listBagLabels(pour!).map(({ serial, revision }) => [serial, revision])).toEqual([
      ['1', 'C'],
      ['2', 'B'],
    ]);
  });

  it('are none for a casting that takes nothing', () => {
    const index = indexParts({ castIns: [], connections: [] });
    const [pour] = findJobParts(index).pours;
    expect(listBagLabels(pour!)).toEqual([]);
    expect(listBench(pour!, RULE)).toEqual([]);
  });
});
