import type { CharacteristicLoad, ProofLoadAnswer, TestVerdict } from '../assess/proof-load/evaluate-tests.ts';
import type { PlanValue, ProofLoadPlan } from '../assess/proof-load/test-plan.ts';

/** Beside every plan. */
export const PROOF_LOAD_CAUTION =
  'Nobody stands in the line of pull or under it. A proof load shows what these inserts carry today; it is no design, and no test for lifting.';

const whose = ({ from }: PlanValue) => (from === 'engineer' ? 'as given' : 'common practice');

/** The plan, line by line; the caution goes before it. */
export function tellProofLoadPlan(plan: ProofLoadPlan): readonly string[] {
  const { count, load, hold, displacement, isCutBySteel, isConfined, supportNeeded, shown } = plan;
  const lines = [
    `Pull ${count.value} (${whose(count)}), drawn at random.`,
    `Load ${load.value.toFixed(1)} kN (${whose(load)}), held for ${hold.value} s (${whose(hold)}).`,
    `At the end of the hold it has moved ${displacement.value.toFixed(2)} mm at most (${whose(displacement)}), and holds.`,
    `If none fails, at most ${Math.round(100 * shown)} % of all would fail, with 90 % confidence.`,
  ];
  if (isCutBySteel)
    lines.push('The load is cut down to 0.9 of what the steel yields at: the concrete sees less than was asked for.');
  lines.push(
    isConfined
      ? `Confined: the feet stand nearer than ${Math.round(supportNeeded)} mm to the axis and hold the cone down. It does not test the cone.`
      : `The feet stand ${Math.round(supportNeeded)} mm or more from the axis on each side, off the cone.`,
  );
  return lines;
}

const STATES: Readonly<Record<TestVerdict['state'], string>> = {
  passes: 'passes',
  fails: 'fails',
  'not shown': 'not shown: something is missing',
};
const WHY: Readonly<Record<TestVerdict['why'][number], string>> = {
  failed: 'it gave way at the proof load or below',
  'load not reached': 'the load was not reached',
  'moved too far': 'it moved too far',
  'displacement not read': 'the displacement was not read at the end of the hold',
  'hold not shown': 'how long it was held is not written down',
  'held too short': 'it was held too short',
};
const GAPS: Readonly<Record<ProofLoadAnswer['gaps'][number], string>> = {
  'no serial of the gauge': 'Write down the serial number of the gauge.',
  'no calibration date': 'The gauge has no calibration date: what it read is not shown to be true.',
  'calibration has run out': "The gauge's calibration does not cover the day of the test.",
  'tests are missing': 'Fewer were pulled than planned.',
  'the cone is not tested': 'The bridge held the concrete down: the cone is not tested.',
};

/** What stands against one test or all together beside what was read, a sentence each. */
export function tellGaps({ gaps }: Pick<ProofLoadAnswer, 'gaps'>): readonly string[] {
  return gaps.map((gap) => GAPS[gap]);
}

/** Why one test does not pass as it was read; empty: it was read as planned. */
export function tellWhy({ why }: Pick<TestVerdict, 'why'>): readonly string[] {
  return why.map((one) => WHY[one]);
}

/** One test in a line. */
export function tellTest(test: TestVerdict): string {
  const why = tellWhy(test);
  return `${test.name}: ${STATES[test.state]}${why.length === 0 ? '' : ` – ${why.join('; ')}`}`;
}

/** A characteristic value with its method, or why there is none. */
export function tellCharacteristic(found: ProofLoadAnswer['characteristic']): string {
  if (found.kind === 'value') return tellValue(found);
  const { count, least } = found;
  return count === 0
    ? `No characteristic value: none gave way with its cone free, ${least} are needed (common practice). Loads that were held show only that each carries that much.`
    : `No characteristic value: too few gave way with their cones free, ${count} of ${least} (common practice).`;
}

function tellValue({ count, mean, variation, distribution, at75, at90, annexD }: CharacteristicLoad): string {
  return `Characteristic value (5 % fractile, ${distribution}, deviation from the sample) of ${count} that gave way at ${mean.toFixed(1)} kN in the mean, variation ${Math.round(100 * variation)} %: ${at75.toFixed(1)} kN with 75 % confidence and ${at90.toFixed(1)} kN with 90 % (one-sided tolerance factor, ISO 16269-6), ${annexD.toFixed(1)} kN by EN 1990, Annex D.`;
}

/** What all tests come to. */
export function tellProofLoadAnswer(answer: ProofLoadAnswer): readonly string[] {
  return [`Together: ${STATES[answer.state]}.`, ...tellGaps(answer), tellCharacteristic(answer.characteristic)];
}
