import type { ComputedAnswer } from '../assess/out-of-place/answer.ts';
import type { Limit } from '../assess/out-of-place/limits.ts';
import { FIELD_NAMES } from './case-fault-words.ts';
import { CAUTIONS } from './cautions.ts';
import { findGoverningClause } from './governing-clause.ts';
import { sayVerdict } from './out-of-place-text.ts';
import { CONDITIONS, listTold, sayAssumption, saySteps } from './out-of-place-words.ts';
import { type SpokenUnits, writerOf } from './quantities.ts';
import { nameMode } from './words.ts';

/** What the neighbours are called where they are asked for. */
export const NEIGHBOUR_WORDS = ['none', 'one', 'two, in a line with it', 'three, corners of a square'] as const;

/** What limits a load, with its clause; a load that nothing limits, or nothing resists. */
function sayWhy(mode: Limit['mode'], force: number | null, { standard }: ComputedAnswer): string {
  if (mode === null) return force === null ? 'nothing computed here limits it' : 'nothing resists it';
  const clause = findGoverningClause(standard, mode);
  return clause === null ? nameMode(mode) : `${nameMode(mode)}: ${clause}`;
}

/** Everything that the page of an answer says, in a person's units. */
export function sayOutOfPlacePage(answer: ComputedAnswer, units: SpokenUnits) {
  const writer = writerOf(units);
  const { length, strength, force, limit } = writer;
  const { given, filled, state } = answer;
  const ASSUMED = ' (assumed)';
  const withLoad = (value: number | null) => (value === null ? 'not said' : force(value * 1000));
  const said: readonly (readonly [string, string])[] = [
    [FIELD_NAMES.role, 'fixing'],
    [FIELD_NAMES.thread, filled.thread.name],
    [FIELD_NAMES.length_mm, length(filled.length)],
    [FIELD_NAMES.edge1_mm, length(filled.nearest)],
    [FIELD_NAMES.edge2_mm, length(filled.second)],
    [FIELD_NAMES.neighbours, NEIGHBOUR_WORDS[filled.neighbours]],
    ...(filled.neighbours === 0 ? [] : [[FIELD_NAMES.spacing_mm, length(filled.spacing)] as const]),
    [FIELD_NAMES.thickness_mm, `${length(filled.thickness)}${given.thickness_mm === null ? ASSUMED : ''}`],
    [FIELD_NAMES.strength_MPa, `${strength(filled.strength)}${given.strength_MPa === null ? ASSUMED : ''}`],
    [FIELD_NAMES.isPoured, `${filled.isPoured ? 'yes' : 'no'}${given.isPoured === null ? ASSUMED : ''}`],
    [FIELD_NAMES.tension_kN, withLoad(given.tension_kN)],
    [FIELD_NAMES.shear_kN, withLoad(given.shear_kN)],
  ];
  return {
    rules: `${answer.document} · Onepour ${answer.version}`,
    said,
    limits: listTold(answer, writer).map(({ words, limit: { force: most, mode } }) => ({
      words,
      most: most === null ? 'no limit found' : limit(most),
      why: sayWhy(mode, most, answer),
    })),
    verdict: sayVerdict(answer, writer),
    isStop: state !== 'passes',
    reasons: answer.reasons,
    assumed: filled.assumptions.map((one) => sayAssumption(one, writer).sentence),
    conditions: CONDITIONS,
    ...saySteps(answer),
    cautions: CAUTIONS,
    sketch: {
      nearest: length(filled.nearest),
      second: length(filled.second),
      spacing: length(filled.spacing),
      asDrawn: 'as drawn',
    },
  };
}
