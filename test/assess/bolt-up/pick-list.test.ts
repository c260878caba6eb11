import { expect, it } from 'vitest';
import { listPicks } from '../../../src/assess/bolt-up/pick-list.ts';
import { demoFile, pieceOf } from '../yard/yard-sample.ts';
import { AsCastSample } from './bolt-up-sample.ts';

const P13 = pieceOf(demoFile(), 'P13', '1');

it('sums bolts, washers and packers over the bags of a panel, what may not be fetched yet left out', () => {
  const [x, y] = P13.context.index.connectionsOf('P13').find(({ mark }) => mark === 'C45')!.fixture!.holes[0]!.at_mm;
  const slot = { id: '1', x_mm: x, y_mm: y, diameter_mm: 18, slot_mm: 12, angle_deg: 0, takesShear: true };
  const made = new AsCastSample(
    P13,
    {},
    {
      C41: { state: 'needs a remedy' },
      C45: {
        decision: { remedy: 'holes slotted', holes: [slot], washer_mm: { side: 60, thickness: 8 }, packers_mm: 5 },
      },
    },
  );
  made.tighten('C47');
  const [list, ...none] = listPicks([made.boltUp()]);
  expect(none).toEqual([]);
  const bagOf = (mark: string) => list!.bags.find(({ card }) => card.connection.mark === mark);
  expect(bagOf('C47')).toBeUndefined();
  expect(bagOf('C41')).toMatchObject({ lines: [], open: [expect.stringContaining('choose a remedy')] });
  // 15 + 3.3 + 8 + 5 + 10 + 16 = 57.3 to 15 + 3 + 8 + 5 + 10 + 36 = 77; the other 49.3 to 69: 60 for both.
  expect(bagOf('C45')!.lines.map(({ kind, count }) => [kind.id, count])).toEqual([
    ['bolt M16 x 60 8.8 galvanised', 2],
    ['plate washer 60 x 60 x 8, hole for M16, galvanised', 1],
    ['washer M16 ISO 7089 galvanised', 2],
    ['packers 5', 2],
  ]);
  const total = list!.bags.reduce((sum, bag) => sum + bag.lines.reduce((s, { count }) => s + count, 0), 0);
  expect(list!.lines.reduce((sum, { count }) => sum + count, 0)).toBe(total);
  expect(list!.lookAlikes.join()).toContain('look alike');
});

it('is one for each panel at each place, those without a place last', () => {
  const at = (mark: string, place: string | null) => {
    const made = new AsCastSample(pieceOf(demoFile(), mark, '1'));
    if (place !== null) made.tablet.write('setter', null, { kind: 'located', body: { place } });
    return made.boltUp();
  };
  const lists = listPicks([at('P13', null), at('P02', 'Level 10'), at('P01', 'Level 2'), at('P11', 'Level 2')]);
  expect(lists.map(({ place, panel }) => [place, panel])).toEqual([
    ['Level 2', 'P01'],
    ['Level 2', 'P11'],
    ['Level 10', 'P02'],
    [null, 'P13'],
  ]);
});
