import type { Connection } from '../../job/documents/connection.ts';
import type { FixtureHole } from '../../job/documents/fixture.ts';
import { showLength } from '../../job/resolve/local-member-type.ts';
import type { ConnectionAnswer } from '../connection-answer.ts';
import { MOST_TURN } from '../yard/fit-plate.ts';
import type { Act } from '../yard/rights.ts';
import type { Remedy, RemedyKind } from './as-cast-report.ts';
import {
  assessPlaced,
  type Change,
  findTightest,
  listPlaceFindings,
  NO_CHANGE,
  type RemedyQuestion,
  standBolts,
} from './attempt.ts';
import { membersOf } from './cast-panel.ts';
import { leansTooMuch, MOST_TILT } from './judge-insert.ts';

/** Remedies that leave the design as it is: an installer may decide them himself, within limits. */
const ON_SITE: readonly RemedyKind[] = ['as is', 'plate moved', 'packers or other bolts'];

/** Lengths that lie this close together [mm] are the same. */
const ROUNDING = 1e-6;

/** Something that may be done, to be computed. */
export interface Attempt {
  readonly kind: RemedyKind;
  readonly words: string;
  /** Where the plate lies and what it is, with which inserts and packers. */
  readonly placed: Connection;
  /** All holes of the plate as they would be; null: no plate. */
  readonly holes: readonly FixtureHole[] | null;
  readonly change: Change;
  readonly conditions: readonly string[];
  /** What else speaks against it. In words. */
  readonly faults: readonly string[];
  /** How much better another movement of the plate may be at most [mm]. */
  readonly provenWithin: number;
}

function tellStrength({ state, governing, reasons, ratio }: ConnectionAnswer): readonly string[] {
  if (state === 'passes') return [];
  if (state === 'fails') {
    const used = ratio === null || !Number.isFinite(ratio) ? '' : ` (${Math.round(ratio * 100)} %)`;
    return [
      `its strength fails${used}: ${governing === null ? 'no load is carried' : governing.mode.replaceAll('-', ' ')}`,
    ];
  }
  return [`${state}${reasons[0] === undefined ? '' : `: ${reasons[0]}`}`];
}

/** A remedy that cuts into the plate or leaves a bolt out changes the design, whatever a record calls it. */
function leavesDesign({ kind, change }: Attempt): boolean {
  return ON_SITE.includes(kind) && change.holes.length === 0 && change.unused.length === 0;
}

/**
 * Whether somebody on site may decide without the design engineer: it works, did so as designed, and no insert that gets a bolt is farther off than the limits that the design
 * engineer set for others; without limits none may be beyond its tolerance. Where an insert is that nobody surveyed, nobody on site answers for: a tape is at hand.
 */
function isForSite(question: RemedyQuestion, attempt: Attempt, verdict: Remedy['verdict']): boolean {
  const { cast, before } = question;
  const { placed, change } = attempt;
  if (!leavesDesign(attempt) || verdict !== 'works' || before.state !== 'passes') return false;
  if (Math.abs(change.move?.turn_deg ?? 0) > MOST_TURN + ROUNDING) return false;
  const { acceptance, tolerances } = cast.index.file.library.rules;
  return membersOf(cast, placed).every(({ insert: { item, place, state } }) => {
    if (state === 'conflict' || state === 'not surveyed' || place === null) return false;
    const position = Math.max(acceptance?.position_mm ?? 0, item.tolerance) + ROUNDING;
    const level = Math.max(acceptance?.level_mm ?? 0, tolerances.level_mm) + ROUNDING;
    const isNear = Math.abs(place.dx) <= position && Math.abs(place.dy) <= position;
    return isNear && (place.depthOff === null || Math.abs(place.depthOff) <= level);
  });
}

/** Computes what may be done by the full path: places, strength, plate, what the inserts meet. */
export function completeRemedy(question: RemedyQuestion, attempt: Attempt): Remedy {
  const { kind, words, placed, holes, change, conditions } = attempt;
  const answer = assessPlaced(question, placed);
  const bolts = holes === null ? [] : standBolts(question, placed, holes);
  const tightest = findTightest(bolts);
  const lacking =
    tightest !== null && tightest.room < 0
      ? [`the plate does not go on: hole ${tightest.hole} lacks ${showLength(-tightest.room)}`]
      : [];
  const against = [...lacking, ...attempt.faults, ...listPlaceFindings(question, placed)];
  const leaning = membersOf(question.cast, placed).filter(({ insert }) => leansTooMuch(insert.place));
  const leans = leaning.map(
    ({ insert: { item, place } }) =>
      `no. ${item.number} leans by ${place!.tilt!.total.toFixed(1)}°, more than ${MOST_TILT.toFixed(1)}° (1 in 20, common practice): tightening bends its bolt, which is not computed`,
  );
  const verdict = ((): Remedy['verdict'] => {
    if (against.length > 0 || answer.state === 'fails') return 'does not work';
    return answer.state === 'passes' && leaning.length === 0 ? 'works' : 'not known';
  })();
  const act: Extract<Act, 'decide on site' | 'change the design'> = isForSite(question, attempt, verdict)
    ? 'decide on site'
    : 'change the design';
  return {
    kind,
    words,
    verdict,
    why: [...against, ...tellStrength(answer), ...leans],
    state: answer.state,
    ratio: answer.ratio,
    clearance: tightest === null ? null : { margin: tightest.room, provenWithin: attempt.provenWithin },
    act,
    change,
    holes,
    connection: placed,
    conditions: [...conditions, ...(leaning.length > 0 ? ['a bevelled washer under each leaning bolt'] : [])],
  };
}

/** A remedy that cannot be, with why. */
export function refuseRemedy(
  question: RemedyQuestion,
  kind: RemedyKind,
  words: string,
  why: readonly string[],
): Remedy {
  const { connection, fixture, before } = question;
  return {
    kind,
    words,
    verdict: 'does not work',
    why,
    state: before.state === 'passes' ? 'cannot be computed' : before.state,
    ratio: null,
    clearance: null,
    act: 'change the design',
    change: NO_CHANGE,
    holes: fixture?.holes ?? null,
    connection,
    conditions: [],
  };
}
