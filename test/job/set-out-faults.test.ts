import { describe, expect, it } from 'vitest';
import { faultsOf } from './read.ts';
import {
  type Json,
  type SampleParts,
  sampleBed,
  sampleCastIn,
  sampleItem,
  sampleJob,
  samplePanel,
  samplePour,
} from './sample-job.ts';

const plate = { id: 'PL', name: 'Plate', kind: 'fixing plate', height_mm: 10, reusable: true };
const chair = { id: 'CH', name: 'Chair', kind: 'chair', height_mm: 60, reusable: false };
const way = (changes: Json): Json => ({ id: 'W', name: 'Way', method: 'stick-on plate', ...changes });
const onPlate = (changes: Json = {}) => way({ parts: [{ part: 'PL', count: 1 }], ...changes });

/** Two lots of the sample's panel, 4000 along the bed and 3000 across. */
const twoPieces = (first: Json, second: Json) => [
  samplePour({
    pieces: [
      { panel: 'P1', serial: '1', ...first },
      { panel: 'P1', serial: '2', ...second },
    ],
  }),
];
const turned = samplePanel({ inForm: { turn_deg: 90, datum: 'top-left' } });

/** One thing wrong each: what, the change, and all lines that must come of it. */
const cases: readonly (readonly [string, SampleParts, readonly string[]])[] = [
  [
    'a way on chairs without any',
    { ways: [way({ method: 'chair' })] },
    ['library.holding.ways[0].chairs: W holds on chairs and lists none; expected at least one'],
  ],
  [
    'chairs of another method',
    { parts: [chair], ways: [way({ method: 'bridging bar', chairs: ['CH'] })] },
    [
      'library.holding.ways[0].chairs: W lists chairs but holds by another method (bridging bar); expected none, or the method chair',
    ],
  ],
  [
    'a plate for a chair',
    { parts: [plate, chair], ways: [way({ method: 'chair', chairs: ['CH', 'PL'] })] },
    ['library.holding.ways[0].chairs[1]: PL is no chair but a fixing plate; expected parts of kind chair'],
  ],
  [
    'a chair without a height',
    { parts: [{ ...chair, height_mm: null }], ways: [way({ method: 'chair', chairs: ['CH'] })] },
    [
      'library.holding.ways[0].chairs[0]: the chair CH has no height; expected height_mm, from the form to the foot that stands on it',
    ],
  ],
  [
    'a part that nothing has',
    { parts: [plate], ways: [onPlate({ parts: [{ part: 'PLL', count: 1 }] })] },
    ['library.holding.ways[0].parts[0].part: there is no holding part PLL; did you mean PL?'],
  ],
  [
    'a loss of what is used up',
    { parts: [{ ...plate, reusable: false, lossPerUse: 0.1 }] },
    [
      'library.holding.parts[0].lossPerUse: PL is used up each time, yet 0.1 of it is lost with each use; expected 0, or reusable: true',
    ],
  ],
  [
    'a recess deeper than the plate',
    { parts: [plate], ways: [onPlate({ recess_mm: 12 })] },
    [
      'library.holding.ways[0].recess_mm: W keeps the top 12 mm below the face, but its parts are 10 mm thick; expected at most 10 mm',
    ],
  ],
  [
    'the width of no recess',
    { parts: [plate], ways: [onPlate({ recessWidth_mm: 50 })] },
    [
      'library.holding.ways[0].recessWidth_mm: W leaves a recess 50 mm wide and 0 mm deep; expected recess_mm, or no width',
    ],
  ],
  [
    'a plate of another thread than its way',
    { parts: [{ ...plate, thread: 'M20' }], ways: [onPlate({ thread: 'M16' })] },
    ['library.holding.ways[0].parts[0].part: PL is for thread M20, the way W for M16; expected one thread'],
  ],
  [
    'a way for another thread than the insert',
    {
      parts: [plate],
      ways: [onPlate({ thread: 'M20' })],
      castIns: [sampleCastIn('1', 900, 500, { holding: 'W' }), sampleCastIn('2', 1100, 500)],
    },
    ['job.castIns[0].holding: W holds thread M20, F16 has M16; expected a way for M16'],
  ],
  [
    'a way that nothing has',
    { castIns: [sampleCastIn('1', 900, 500, { holding: 'W' }), sampleCastIn('2', 1100, 500)] },
    ['job.castIns[0].holding: there is no way of holding W; expected a way of holding, but there are none'],
  ],
  [
    'two sides of a bed with one name',
    { beds: [sampleBed({ names: { start: 'stop end', finish: 'stop end', railA: 'wall rail', railB: 'gate rail' } })] },
    ['library.yard.beds[0].names.finish: stop end is the name of two sides of bed B1; expected four names that differ'],
  ],
  [
    'tops aimed deeper than allowed',
    { rules: { belowFace: { aim_mm: 6, most_mm: 5 } } },
    [
      'library.rules.belowFace.aim_mm: tops are aimed 6 mm below the face, deeper than the 5 mm that are allowed; expected at most 5 mm',
    ],
  ],
  [
    'a day that is none',
    { beds: [sampleBed()], pours: [samplePour({ date: '2026-11-31' })] },
    ['job.pours[0].date: "2026-11-31" is not allowed; expected a day of the calendar as YYYY-MM-DD'],
  ],
  [
    'a bed that nothing has',
    { pours: [samplePour()] },
    ['job.pours[0].bed: there is no bed B1; expected a bed, but there are none'],
  ],
  [
    'a piece twice',
    { beds: [sampleBed()], pours: twoPieces({ along_mm: 0 }, { along_mm: 5000, serial: '1' }) },
    ['job.pours[0].pieces[1].serial: piece 1 of panel P1 is used more than once; each needs its own'],
  ],
  // By hand: the second piece begins 1 mm before the first, 4000 long from 0, ends.
  [
    'pieces on each other',
    { beds: [sampleBed()], pours: twoPieces({ along_mm: 0 }, { along_mm: 3999 }) },
    [
      'job.pours[0].pieces[1].along_mm: piece 2 of panel P1 lies from 3999 to 7999 mm on piece 1 of panel P1, from 0 to 4000 mm; expected them apart',
    ],
  ],
  [
    'pieces on each other, the later one first',
    { beds: [sampleBed()], pours: twoPieces({ along_mm: 3999 }, { along_mm: 0 }) },
    [
      'job.pours[0].pieces[1].along_mm: piece 2 of panel P1 lies from 0 to 4000 mm on piece 1 of panel P1, from 3999 to 7999 mm; expected them apart',
    ],
  ],
  [
    'beyond the end of the bed',
    { beds: [sampleBed({ length_mm: 4499 })], pours: [samplePour()] },
    [
      'job.pours[0].pieces[0].along_mm: piece 1 of panel P1 begins at 500 mm and is 4000 mm long as it lies, bed B1 4499 mm; expected its end on the bed',
    ],
  ],
  [
    'longer than the bed wherever it lies',
    { beds: [sampleBed({ length_mm: 3999 })], pours: [samplePour({ pieces: [{ panel: 'P1', serial: '1' }] })] },
    [
      'job.pours[0].pieces[0].panel: piece 1 of panel P1 is 4000 mm long as it lies, bed B1 3999 mm; expected its end on the bed',
    ],
  ],
  [
    'wider than the bed',
    { beds: [sampleBed({ width_mm: 2999 })], pours: [samplePour()] },
    [
      'job.pours[0].pieces[0].panel: piece 1 of panel P1 is 3000 mm wide as it lies, bed B1 2999 mm; expected a wider bed, or the panel turned',
    ],
  ],
  [
    'wider than the bed as turned',
    { panels: [turned], beds: [sampleBed({ width_mm: 3999 })], pours: [samplePour()] },
    [
      'job.pours[0].pieces[0].panel: piece 1 of panel P1 is 4000 mm wide as it lies, bed B1 3999 mm; expected a wider bed, or the panel turned',
    ],
  ],
];

/** What lies exactly at a limit, and is right. */
const right: readonly (readonly [string, SampleParts])[] = [
  ['pieces side by side', { beds: [sampleBed()], pours: twoPieces({ along_mm: 0 }, { along_mm: 4000 }) }],
  [
    'turned pieces side by side',
    { panels: [turned], beds: [sampleBed()], pours: twoPieces({ along_mm: 0 }, { along_mm: 3000 }) },
  ],
  ['a place that is not planned', { beds: [sampleBed()], pours: twoPieces({ along_mm: 0 }, {}) }],
  [
    'to the end and the rail of the bed',
    { beds: [sampleBed({ length_mm: 4500, width_mm: 3000 })], pours: [samplePour()] },
  ],
  ['a recess as deep as the plate', { parts: [plate], ways: [onPlate({ recess_mm: 10, recessWidth_mm: 60 })] }],
  [
    'a recess of a part of unknown thickness',
    { parts: [{ ...plate, height_mm: null }], ways: [onPlate({ recess_mm: 12 })] },
  ],
  ['tops aimed at what is allowed', { rules: { belowFace: { aim_mm: 5, most_mm: 5 } } }],
  [
    'a way for any thread',
    {
      parts: [chair, plate],
      ways: [way({ method: 'chair', chairs: ['CH'] }), onPlate({ id: 'W2', thread: 'M16' })],
      items: [sampleItem()],
      castIns: [sampleCastIn('1', 900, 500, { holding: 'W' }), sampleCastIn('2', 1100, 500, { holding: 'W2' })],
    },
  ],
];

describe('faults of what the set-out needs', () => {
  it.each(cases)('%s', (_what, parts, lines) => {
    expect(faultsOf(sampleJob(parts))).toEqual(lines);
  });
  it.each(right)('takes %s', (_what, parts) => {
    expect(faultsOf(sampleJob(parts))).toEqual([]);
  });
});
