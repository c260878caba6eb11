import { strengthByEurocode } from '../../engine/material/strength-at-age.ts';
import type { PieceState } from '../../records/fold/piece-state.ts';
import type { RecordOf } from '../../records/record.ts';
import type { PiecePlan } from './piece-plan.ts';
import type { YardContext } from './piece-report.ts';
import { ofKind } from './piece-slots.ts';

/** What is known of the strength of a piece that is not 28 days old. Strengths MPa, ages hours. */
export interface EarlyAge {
  /**
   * `reached`, `not reached`: by test cylinders. `by model only`: no cylinder was tested, so that nothing is known. `no strength asked`: nobody said
   * which strength it needs.
   */
  readonly kind: 'not poured' | 'no strength asked' | 'reached' | 'not reached' | 'by model only';
  /** Since it was poured. */
  readonly age: number | null;
  /** Before it is lifted out of the form, as the lifting design says. */
  readonly asked: number | null;
  /** The latest cylinders: the least of them counts. */
  readonly tested: { readonly least: number; readonly age: number; readonly count: number } | null;
  /** Mean strength by the model at the age of now; null: no concrete, or not poured. */
  readonly model: number | null;
  readonly notes: readonly string[];
  /** What may not be done to it yet. */
  readonly mayNot: readonly string[];
}

const HOUR = 3_600_000;
/** Ages of specimens are written down in whole hours. */
const ROUNDED = 1;
const HOURS_A_DAY = 24;
const SECOND = 1000;

/** The cement whose strength comes slowest: nobody says here which it is. */
const SLOWEST = 'S';

/** When it was poured, by the server's clock where the device's was known to be wrong [ms]; of several records the latest, so that it is never taken for older than it is. */
function findPouredAt(state: PieceState): number | null {
  const poured = ofKind(
    state.history.filter(({ id }) => !state.withdrawn.has(id)),
    'poured',
  );
  const moments = poured.map(({ measuredAt, clock_s }) => Date.parse(measuredAt) + (clock_s ?? 0) * SECOND);
  return moments.length === 0 ? null : Math.max(...moments);
}

function findTested(results: readonly RecordOf<'strength-result'>[]): EarlyAge['tested'] {
  const cylinders = results.filter(({ body }) => body.specimen === 'cylinder');
  if (cylinders.length === 0) return null;
  const age = Math.max(...cylinders.map(({ body }) => body.age_hours));
  const values = cylinders.filter(({ body }) => body.age_hours === age).flatMap(({ body }) => body.values_MPa);
  return { least: Math.min(...values), age, count: values.length };
}

const UNTIL_REACHED = [
  'do not lift it out of the form, or turn or tilt it',
  'do not hang it, brace it or load it by an insert, and tighten no bolt in one',
] as const;

const ALWAYS = 'fixing inserts are not lifting inserts unless their maker rates them so';

/** What may not be done, by what is known. Nothing is ever said to be ready: that is for the lifting design. */
function listMayNot(kind: EarlyAge['kind'], asked: number | null): readonly string[] {
  if (kind === 'not poured') return [];
  if (kind === 'reached')
    return [
      'lift it only as the lifting design says, at its lifting inserts',
      'connections have a strength of their own to wait for',
      ALWAYS,
    ];
  const until =
    asked === null
      ? 'until the lifting design says which strength it needs and cylinders show it'
      : `until cylinders show ${asked} MPa`;
  return [...UNTIL_REACHED.map((words) => `${words} ${until}`), ALWAYS];
}

/**
 * What the strength of a piece is at an early age, and what may not be lifted or loaded yet. Cylinders decide; a model alone never does.
 * @param pour id of its pour; null: none
 * @param now ms since 1970
 */
export function judgeEarlyAge(
  { index }: YardContext,
  plan: PiecePlan,
  state: PieceState,
  pour: string | null,
  now: number,
): EarlyAge {
  const pouredAt = findPouredAt(state);
  const asked = index.file.job.pours.find(({ id }) => id === pour)?.strengthAtStrip_MPa ?? null;
  const results = ofKind(state.beside.get('strength-result') ?? [], 'strength-result');
  const age = pouredAt === null ? null : Math.max(0, (now - pouredAt) / HOUR);
  const ofItsAge = results.filter(({ body }) => age === null || body.age_hours <= age + ROUNDED);
  const tested = findTested(ofItsAge);
  const concrete = index.concretes.get(plan.setOut.panel.concrete);
  const model =
    age === null || age === 0 || concrete === undefined
      ? null
      : strengthByEurocode(concrete.strength28_MPa, SLOWEST, age / HOURS_A_DAY).mean;
  const kind = ((): EarlyAge['kind'] => {
    if (pouredAt === null) return 'not poured';
    if (asked === null) return 'no strength asked';
    if (tested === null) return 'by model only';
    return tested.least >= asked ? 'reached' : 'not reached';
  })();
  const cubes = results.filter(({ body }) => body.specimen === 'cube').length;
  const notes = [
    ...(kind === 'by model only'
      ? ['by model only: mean strength at 20 °C with the slowest cement, a guess before 3 days; test cylinders decide']
      : []),
    ...(cubes > 0 ? ['cubes are recorded and not turned into strengths of cylinders'] : []),
    ...(ofItsAge.length < results.length
      ? ['specimens that are older than the piece are left out: look at whose they are']
      : []),
    ...(asked === null ? ['no strength before lifting out is given: ask whoever made the lifting design'] : []),
  ];
  return { kind, age, asked, tested, model, notes, mayNot: listMayNot(kind, asked) };
}
