import type { AsPlaced, Move, PlacingAnswer } from '../assess/yard/placing-answer.ts';
import { isWithin } from '../engine/checks/verdict.ts';
import { nameMode } from './words.ts';

/** What a person saw of an insert: true, it is as it must be. */
export interface Sight {
  readonly type: boolean;
  readonly face: boolean;
  readonly firm: boolean;
}

/** What is said before anybody pushes a forgotten insert into wet concrete. */
export const WET_SETTING_CAUTION =
  'An insert pushed into wet concrete is not a cast-in insert: nothing here computes it. Stop; the design engineer decides.';

/** Said of every insert of another type than is asked for. */
const WRONG_TYPE =
  'Wrong type: take it out and put in the one shown. Another type is a change of the design; the design engineer decides.';

/** Farther off than this nobody sets an insert [mm]: it was read or typed wrong, or taped from another corner. */
const FARTHEST = 100;

/** A ratio above this says nothing more by its digits. */
const FAR_ABOVE = 10;

/** A load ratio as a share of what is carried, never rounded across 1: `0.83 of what it carries`. */
export function tellShare(ratio: number): string {
  if (!Number.isFinite(ratio)) return 'nothing is left of what it carries';
  if (ratio > FAR_ABOVE) return `more than ${FAR_ABOVE} times what it carries`;
  const hundredths = isWithin(ratio) ? Math.min(100, Math.round(100 * ratio)) : Math.max(101, Math.round(100 * ratio));
  const shown = ratio < 1 && hundredths === 100 ? 99 : hundredths;
  return `${(shown / 100).toFixed(2)} of what it carries`;
}

/** The way back: `9 mm toward loose stop end, 4 mm up`. */
function tellMoves(moves: readonly Move[]): string {
  return moves.map(({ by, toward }) => `${by} mm ${toward}`).join(', ');
}

function capitalise(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}

function listNumbers(numbers: readonly number[]): string {
  return `no. ${numbers.join(', ')}`;
}

/** Up to the next whole mm: what is told must be enough. */
function upToWhole(length: number): number {
  return Math.max(1, Math.ceil(length - 1e-6));
}

function upToTenth(angle: number): string {
  return (Math.ceil(10 * angle - 1e-6) / 10).toFixed(1);
}

function tellPlate(plate: AsPlaced['plate']): string | null {
  switch (plate.kind) {
    case 'does not go on':
      return `the plate does not go on, hole ${plate.hole} lacks ${upToWhole(plate.lacks)} mm`;
    case 'shifted':
      return `the plate goes on when it is shifted ${upToWhole(plate.by)} mm`;
    case 'turned':
      return `the plate goes on when it is turned ${upToTenth(plate.turn_deg)}° and shifted ${upToWhole(plate.by)} mm: it will stand askew by that`;
    case 'as designed':
    case 'no plate':
      return null;
  }
}

/** What the strength comes to: its mode or reason, and the share; never more than was computed. */
function tellStrength({ after }: AsPlaced): string {
  const { state, ratio, why } = after;
  if (state === 'passes') return ratio === null ? 'works' : `works, ${tellShare(ratio)}`;
  if (state === 'fails') {
    const mode = why === null ? '' : `: ${nameMode(why)}`;
    return `does not work${mode}${ratio === null ? '' : `, ${tellShare(ratio)}`}`;
  }
  // A state in its own words: what was not checked is neither good nor bad.
  return why === null ? state : `${state}: ${why}`;
}

/** What it comes to as it is, without who decides. */
function tellComputed({ asPlaced, findings, verdict }: PlacingAnswer): string {
  if (asPlaced === null)
    return verdict === 'does not work'
      ? `does not work: ${findings.join('; ')}`
      : 'it belongs to no connection, nothing is computed';
  if (verdict !== 'does not work' || asPlaced.after.state === 'fails') return tellStrength(asPlaced);
  const plate = asPlaced.plate.kind === 'does not go on' ? tellPlate(asPlaced.plate) : null;
  return `does not work: ${[...findings, ...(plate === null ? [] : [plate])].join('; ')}`;
}

const DECIDES: Readonly<Record<PlacingAnswer['decides'], string>> = {
  'nobody asks': '',
  qa: '; QA may accept it',
  'design engineer': '; the design engineer decides',
};

/** What the connection was as designed, where that was no pass: then the place is not what is to blame. */
function tellDesign({ connection, before, after }: AsPlaced): readonly string[] {
  switch (before.state) {
    case 'passes':
    case 'strength not checked':
      return [];
    case 'fails':
    case 'cannot be computed':
    case 'not covered': {
      const is = before.state === 'not covered' ? 'is not covered' : before.state;
      return after.state === before.state
        ? [`Connection ${connection} ${is} as designed too: that is not the fault of its place.`]
        : [`Connection ${connection} ${is} as designed: that is to be settled first.`];
    }
  }
}

/** A length that no insert is off by is looked at again before anything is moved. */
function doubtReading({ x, y, level }: PlacingAnswer['deviation']): readonly string[] {
  const most = Math.max(...[x, y, level].map((off) => Math.abs(off ?? 0)));
  return most > FARTHEST ? ['So far off? Read the tape again, from the datum corner, before anything is moved.'] : [];
}

function isOnBoard({ way }: PlacingAnswer['item']): boolean {
  return way?.method === 'template board';
}

/** What else is to be known of an insert that was computed where it is. */
function tellMore({ asPlaced, findings, item, verdict }: PlacingAnswer): readonly string[] {
  const isTold = verdict === 'does not work' && asPlaced?.after.state !== 'fails';
  const isLoaded = item.castIn.role === 'lifting' || item.castIn.role === 'brace';
  const role = isLoaded
    ? ['Lifting and bracing are not computed here: what it carries where it is, its maker and the lifting design say.']
    : [];
  if (asPlaced === null) return role;
  const { plate, unmeasured } = asPlaced;
  const others = unmeasured.filter((number) => number !== item.number);
  const plateWords = tellPlate(plate);
  return [
    ...(isTold ? [] : findings.map((words) => `${capitalise(words)}.`)),
    ...(plateWords === null || (isTold && plate.kind === 'does not go on') ? [] : [`${capitalise(plateWords)}.`]),
    ...tellDesign(asPlaced),
    ...(others.length === 0
      ? []
      : [
          `Not taped in full, and taken ${isOnBoard(item) ? 'as the board lies' : 'as drawn'}: ${listNumbers(others)}.`,
        ]),
    ...role,
  ];
}

/** What to do about an insert that is not as shown, wherever it stands; empty: all three are right. */
export function tellSight({ type, face, firm }: Sight): readonly string[] {
  if (!(type || face || firm))
    return [
      'It is not there, or all of it is wrong: set the one shown, before the concrete, and look again.',
      WET_SETTING_CAUTION,
    ];
  if (!type) return [WRONG_TYPE];
  return [
    ...(face ? [] : ['Wrong face, or the wrong way round: take it out and set it as shown.']),
    ...(firm ? [] : ['Not firm: fasten it, then tape it again.']),
  ];
}

/**
 * The answer to where an insert was found, for the person who stands beside it: what to do first, then what it would be as it is, and who decides.
 * Sentences, the first one large.
 * @param sight what was seen of it, if anybody looked: an insert of the wrong type is never good, wherever it stands
 */
export function tellPlacing(answer: PlacingAnswer, sight: Sight | null = null): readonly string[] {
  const wrong = sight === null ? [] : tellSight(sight);
  return sight !== null && !sight.type ? wrong : [...wrong, ...tellPlace(answer, wrong.length > 0)];
}

function tellPlace(answer: PlacingAnswer, isWrong: boolean): readonly string[] {
  const { advice, item, moves, decides } = answer;
  switch (advice) {
    case 'nothing measured':
      return isWrong ? [] : ['Nothing taped yet.'];
    case 'good':
      return [isWrong ? 'Its place is good.' : 'Good.'];
    case 'move': {
      const isBoard = isOnBoard(item);
      const what = isBoard ? 'Move the board' : 'Move it';
      const how = moves.length === 0 ? `${what} to its place` : `${what} ${tellMoves(moves)}`;
      const board = isBoard ? ['The other inserts of the board go with it: tape them again.'] : [];
      return [
        `${how}.`,
        ...doubtReading(answer.deviation),
        ...board,
        `If it stays: ${tellComputed(answer)}${DECIDES[decides]}.`,
        ...tellMore(answer),
      ];
    }
    case 'leave':
      return [
        `${answer.verdict === 'works' ? 'Leave it.' : 'Leave it, and hold the piece.'} Computed as placed: ${tellComputed(answer)}${DECIDES[decides]}.`,
        ...doubtReading(answer.deviation),
        ...tellMore(answer),
      ];
  }
}
