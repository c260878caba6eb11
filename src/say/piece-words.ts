import type { PartBack } from '../assess/yard/after-stripping.ts';
import type { EarlyAge } from '../assess/yard/early-age.ts';
import type { ExactHits } from '../assess/yard/exact-hits.ts';
import type { OpenPoint } from '../assess/yard/piece-report.ts';
import { writeRuns } from './number-runs.ts';

/** Who lifts an open point, in words that go on after `lifted by`. */
export const LIFTER_WORDS: Readonly<Record<OpenPoint['liftedBy'], string>> = {
  'checking it': 'checking it',
  setter: 'the form setter',
  qa: 'QA',
  'design engineer': 'the design engineer',
};

/** Open points that say the same of several inserts, as one line each: `no. 3–5, 9: not looked at`. */
export function gatherPoints(points: readonly OpenPoint[]): readonly (Omit<OpenPoint, 'number'> & {
  readonly numbers: readonly number[];
})[] {
  const lines = new Map<string, { point: OpenPoint; said: string; numbers: number[] }>();
  for (const point of points) {
    const said = point.number === null ? point.words : point.words.replace(`no. ${point.number}: `, '');
    const key = JSON.stringify([point.number === null, said, point.liftedBy, point.isHard]);
    const line = lines.get(key) ?? { point, said, numbers: [] };
    lines.set(key, line);
    if (point.number !== null) line.numbers.push(point.number);
  }
  return [...lines.values()].map(({ point: { liftedBy, isHard }, said, numbers }) => ({
    words: numbers.length === 0 ? said : `no. ${writeRuns(numbers)}: ${said}`,
    numbers,
    liftedBy,
    isHard,
  }));
}

/** A part counted back: `Nail-on fixing plate M16: 12 out, 10 back, 2 missing`. */
export function tellPartBack({ name, out, back }: PartBack): string {
  if (back === null) return `${name}: ${out} out, not counted back`;
  if (back === out) return `${name}: ${out === 1 ? '1' : `all ${out}`} back`;
  const rest = back < out ? `${out - back} missing` : `${back - out} more than went out`;
  return `${name}: ${out} out, ${back} back, ${rest}`;
}

/** All parts counted back, those that are missing or left over first. */
export function tellPartsBack(parts: readonly PartBack[]): readonly string[] {
  const isOdd = ({ out, back }: PartBack) => back !== out;
  return [...parts.filter(isOdd), ...parts.filter((part) => !isOdd(part))].map(tellPartBack);
}

function asSentence(words: string): string {
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}.`;
}

/** What may not be done to a piece yet, a sentence each. */
export function tellMayNot({ mayNot }: EarlyAge): readonly string[] {
  return mayNot.map(asSentence);
}

function showStrength(strength: number): string {
  return `${strength.toFixed(1)} MPa`;
}

/** Strength at an early age: what is known first, then what it rests on. Never that it is ready. */
export function tellEarlyAge({ kind, age, asked, tested, model, notes }: EarlyAge): readonly string[] {
  if (kind === 'not poured') return ['Not poured.'];
  const since = age === null ? '' : ` Poured ${Math.floor(age)} h ago.`;
  const cylinders = tested && `${tested.count} cylinders at ${tested.age} h: ${showStrength(tested.least)} the least`;
  const head = {
    'no strength asked': 'Nobody said which strength it needs before it is lifted out.',
    reached: `The strength asked before lifting out (${asked} MPa) is reached by cylinders; the lifting design decides.`,
    'not reached': `NOT REACHED: ${asked} MPa asked before lifting out.`,
    'by model only': `NOT KNOWN: ${asked} MPa asked before lifting out, no cylinder tested.`,
  }[kind];
  return [
    `${head}${since}`,
    ...(cylinders === null ? [] : [`${cylinders}.`]),
    ...(model === null ? [] : [`The model gives ${showStrength(model)} on average at 20 °C: no proof of anything.`]),
    ...notes.map(asSentence),
  ];
}

/** How often somebody read just what is printed: `14 of 40 readings are the printed length, 8 expected`. */
export function tellExactHits({ readings, exact, expected, verdict }: ExactHits): string {
  const count = `${exact} of ${readings} readings are the printed length to the millimetre`;
  if (verdict === 'too few to say') return `${count}: too few to say anything`;
  const wanted = `honest taping gives about ${Math.round(expected)}`;
  if (verdict === 'as by taping') return `${count}; ${wanted}`;
  return `${count}; ${wanted}: look whether they were taped or copied from the sheet`;
}
