import { type DesignPoint, type MatchAnswer, matchPoints } from '../../assess/as-cast/match-points.ts';
import { readSurvey } from '../../files/survey/read-survey.ts';
import type { SurveyChoices, SurveyFile } from '../../files/survey/survey-file.ts';

type LargeFace = 'outside' | 'inside';

/** Points of a panel: for surveys without heights as one stands in front of each large face; for those with heights in the drawing's frame. */
export interface SurveyDesign {
  readonly flat: readonly { readonly face: LargeFace; readonly points: readonly DesignPoint[] }[];
  readonly solid: readonly DesignPoint[];
}

/** A file of points as read, and which of them may be which point of the panel; `match` null: nothing could be read. */
export interface MatchedSurvey {
  readonly file: SurveyFile;
  readonly match: MatchAnswer | null;
  /** Of points without heights: the face that they fit, in whose frame they are laid; null: they have heights. */
  readonly face: LargeFace | null;
}

const STATES = ['clear', 'cannot tell', 'none'] as const;

/** Whether one answer lays points better than another: surer, then more of them, then nearer. */
function isBetter(one: MatchAnswer, other: MatchAnswer): boolean {
  const [a, b] = [STATES.indexOf(one.state), STATES.indexOf(other.state)];
  if (a !== b) return a < b;
  const [pairs, others] = [one.best?.pairs.length ?? 0, other.best?.pairs.length ?? 0];
  return pairs === others ? (one.best?.rms ?? 0) < (other.best?.rms ?? 0) : pairs > others;
}

/** Reads a survey and suggests which point is which. */
export function matchSurvey(
  name: string,
  bytes: Uint8Array,
  choices: SurveyChoices,
  { flat, solid }: SurveyDesign,
): MatchedSurvey {
  const file = readSurvey(name, bytes, choices);
  const [first] = file.rows;
  const points = file.rows.map(({ name: called, at_mm }) => ({ name: called, at: at_mm }));
  if (first === undefined) return { file, match: null, face: null };
  if (first.at_mm.length === 3) return { file, match: matchPoints(solid, points), face: null };
  const [best] = flat
    .map((one) => ({ face: one.face, match: matchPoints(one.points, points) }))
    .sort((one, other) => Number(isBetter(other.match, one.match)) - Number(isBetter(one.match, other.match)));
  return best === undefined ? { file, match: null, face: null } : { file, ...best };
}
