import type { InsertReport } from '../../../../assess/yard/piece-report.ts';
import type { AsPlaced, PlacingAnswer } from '../../../../assess/yard/placing-answer.ts';
import { writeRuns } from '../../../../say/number-runs.ts';
import { showRatio } from '../../../../say/numbers.ts';
import { nameMode, STATE_WORDS } from '../../../../say/words.ts';
import { type ShownState, StateMark } from '../../../parts/state-mark.tsx';
import { writeQuantity } from '../../../parts/units.ts';
import styles from './yard.module.css';

function tellPlate({ plate }: AsPlaced): string | null {
  switch (plate.kind) {
    case 'shifted':
      return `plate goes on, shifted ${writeQuantity('length', plate.by)}`;
    case 'turned':
      return `plate goes on, turned ${plate.turn_deg.toFixed(1)}° and shifted ${writeQuantity('length', plate.by)}`;
    case 'does not go on':
      return `plate does not go on: ${writeQuantity('length', plate.lacks)} missing at ${plate.hole}`;
    case 'as designed':
    case 'no plate':
      return null;
  }
}

/** Whether it works where it is: strength, plate and what it meets together. */
const VERDICTS: Readonly<Record<PlacingAnswer['verdict'], ShownState>> = {
  works: 'passes',
  'does not work': 'fails',
  'not known': 'strength not checked',
};

/** The strength as placed, beside that of the design: its state too where that was another. */
function tellStrength({ connection, before, after }: AsPlaced): string {
  const designed = before.state === after.state ? '' : `${STATE_WORDS[before.state]}, `;
  const why = after.why === null ? '' : `; decisive: ${nameMode(after.why)}`;
  return `${connection}: strength as placed ${STATE_WORDS[after.state]}, ${showRatio(after.ratio)}; as designed ${designed}${showRatio(before.ratio)}${why}`;
}

/** Whose places are not known though they count; null: of every other one both lengths were taken. */
function tellUnmeasured({ item, answer }: InsertReport): string | null {
  const numbers = answer?.asPlaced?.unmeasured.filter((number) => number !== item.number) ?? [];
  return numbers.length === 0 ? null : `not taped in full, taken as designed: no. ${writeRuns(numbers)}`;
}

/** The connection with its inserts as they are, beside what it was. */
export function Computed({ of }: { readonly of: InsertReport }) {
  const { answer } = of;
  const placed = answer?.asPlaced ?? null;
  if (answer === null || placed === null) return <>–</>;
  const { verdict } = answer;
  const more = [tellPlate(placed), ...placed.findings, tellUnmeasured(of)];
  return (
    <span class={styles.line}>
      <StateMark state={VERDICTS[verdict]} words={verdict} />
      <span>{tellStrength(placed)}</span>
      {more.map((words) => words !== null && <span key={words}>{words}</span>)}
    </span>
  );
}
