import { type DesignPoint, type MatchAnswer, matchPoints } from '../../assess/as-cast/match-points.ts';
import { readSurvey } from '../../files/survey/read-survey.ts';
import type { SurveyChoices, SurveyFile } from '../../files/survey/survey-file.ts';

/** Points of a panel, for surveys without heights and with them. */
export interface SurveyDesign {
  readonly flat: readonly DesignPoint[];
  readonly solid: readonly DesignPoint[];
}

/** A file of points as read, and which of them may be which point of the panel; `match` null: nothing could be read. */
export interface MatchedSurvey {
  readonly file: SurveyFile;
  readonly match: MatchAnswer | null;
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
  if (first === undefined) return { file, match: null };
  const match = matchPoints(
    first.at_mm.length === 2 ? flat : solid,
    file.rows.map(({ name: called, at_mm }) => ({ name: called, at: at_mm })),
  );
  return { file, match };
}
