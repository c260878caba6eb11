import type { ProofLoadAnswer } from '../assess/proof-load/evaluate-tests.ts';
import type { NoBasis } from '../assess/proof-load/pull-basis.ts';
import type { PooledPulls, PulledInsert, PullReport } from '../assess/proof-load/pull-tests.ts';
import type { BodyOf } from '../records/record.ts';
import { countOf } from './part-words.ts';
import { tellCharacteristic, tellGaps, tellWhy } from './proof-load-words.ts';

type Pulled = BodyOf<'proof-loaded'>;

/** What an insert that shall be pulled comes to. */
export const PULL_STATES: Readonly<Record<PulledInsert['state'], string>> = {
  passes: 'passes',
  fails: 'FAILS',
  'not shown': 'not shown: something is missing',
  'not pulled': 'not pulled yet',
};

/** How an insert gave way. */
export const FAILURES: Readonly<Record<NonNullable<Pulled['failure']>, string>> = {
  'concrete cone': 'a cone of concrete',
  steel: 'steel broke',
  thread: 'the thread stripped',
  'pulled out': 'it was pulled out',
  'concrete edge': 'the edge broke',
  'moved on': 'it moved on and on',
};

/** Why nothing can be planned, and what to do. */
export const NO_BASIS: Readonly<Record<NoBasis, string>> = {
  'none chosen': 'Choose the inserts that are pulled.',
  'a type is not known': 'An insert has no type of the catalogue: what its steel may see is not known.',
  'several types': 'These inserts are of several types: one plan is for inserts of one type.',
  'not for pulling': "A lifting insert is tested by its maker's rules, not here.",
};

function plain(value: number, digits = 2): string {
  return String(Number(value.toFixed(digits)));
}

/** One pull as it was read: `25 kN for 1 min, moved 0.05 mm, feet 200 mm from the axis; it held`. */
export function tellPull({ load_kN, held_min, movement_mm, failure, support_mm, note }: Pulled): string {
  const moved = movement_mm === null ? 'movement not read' : `moved ${plain(movement_mm)} mm`;
  const feet = support_mm === null ? 'feet not measured' : `feet ${plain(support_mm, 0)} mm from the axis`;
  const end = failure === null ? 'it held' : `it gave way: ${FAILURES[failure]}`;
  return `${plain(load_kN)} kN for ${plain(held_min)} min, ${moved}, ${feet}; ${end}${note === null ? '' : `; ${note}`}`;
}

/** The gauge of a pull by its sticker. */
export function tellGauge({ gauge }: Pulled): string {
  if (gauge === null) return 'gauge not written down';
  const { name, serial, calibratedUntil } = gauge;
  const number = serial === null ? 'no number' : `no. ${serial}`;
  return `${name ?? 'gauge'}, ${number}, ${calibratedUntil === null ? 'no calibration date' : `calibrated until ${calibratedUntil}`}`;
}

/** What one pull comes to against its plan, a sentence each. */
export function tellAgainstPlan(answer: ProofLoadAnswer | null, { support_mm }: Pulled): readonly string[] {
  if (answer === null) return ['no plan to hold it against'];
  const { gaps } = answer;
  // Feet that nobody measured are taken as standing in the cone; said is what is known.
  const isUnmeasured = support_mm === null && gaps.includes('the cone is not tested');
  const open = [
    ...answer.tests.flatMap(tellWhy),
    ...tellGaps({ gaps: isUnmeasured ? gaps.filter((gap) => gap !== 'the cone is not tested') : gaps }),
    ...(isUnmeasured ? ['Nobody measured where the feet stood: that the cone was tested is not shown.'] : []),
  ];
  return open.length === 0 ? ['load, hold, movement, feet and gauge as planned'] : open;
}

/** How far the tests of a piece are. */
export function tellPullsDone({ inserts, gone }: PullReport): string {
  const planned = inserts.filter(({ isPlanned }) => isPlanned);
  const done = planned.filter(({ state }) => state !== 'not pulled').length;
  const lost = gone === 0 ? '' : `; ${countOf(gone, 'planned insert')} not in the revision in force`;
  return `${done} of ${countOf(planned.length + gone, 'planned insert')} pulled${lost}`;
}

/** Tests of a job by type and concrete. */
export function tellPooled({ type, concrete, pulled, characteristic }: PooledPulls): string {
  return `${type} in ${concrete}: ${countOf(pulled, 'pull')}. ${tellCharacteristic(characteristic)}`;
}
