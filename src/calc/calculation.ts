import * as z from 'zod';
import { ENGINE_VERSION } from '../engine/version.ts';
import { anchorageCalc } from './anchorage.ts';
import { asCastCalc } from './as-cast.ts';
import { boltCalc } from './bolt.ts';
import { CalcError } from './calc-error.ts';
import { carriesAtMostCalc } from './carries-at-most.ts';
import { chairStackCalc } from './chair-stack.ts';
import { clearanceProbabilityCalc } from './clearance-probability.ts';
import { coatingLifeCalc } from './coating-life.ts';
import { fixtureForcesCalc } from './fixture-forces.ts';
import { holeFitCalc } from './hole-fit.ts';
import { maturityCalc } from './maturity.ts';
import { mouldViewCalc } from './mould-view.ts';
import { positionZoneCalc } from './position-zone.ts';
import { strengthAtAgeCalc } from './strength-at-age.ts';
import { tapePositionCalc } from './tape-position.ts';

/** The contract's version; a breaking change of any calculation raises it. */
const CONTRACT = 1;

/** One calculation of the contract: schemas with units in the keys, and the function behind them. */
interface Calculation {
  readonly name: string;
  readonly gives: string;
  readonly input: z.ZodType;
  readonly output: z.ZodType;
  answer(given: unknown, keepsSteps: boolean): object;
}

/** Ties schema and function together, so that a calculation never sees an input that was not checked. */
function tie<I extends z.ZodType, O extends object>(calc: {
  readonly name: string;
  readonly gives: string;
  readonly input: I;
  readonly output: z.ZodType<O>;
  run(given: z.output<I>, keepsSteps: boolean): O;
}): Calculation {
  return {
    ...calc,
    answer(given, keepsSteps) {
      const read = calc.input.safeParse(given);
      if (!read.success) throw describeIssue(read.error);
      return calc.run(read.data, keepsSteps);
    },
  };
}

const CALCULATIONS: readonly Calculation[] = [
  tie(anchorageCalc),
  tie(carriesAtMostCalc),
  tie(positionZoneCalc),
  tie({ ...fixtureForcesCalc, gives: 'forces of bolts and contact under a rigid plate' }),
  tie(boltCalc),
  tie(strengthAtAgeCalc),
  tie(maturityCalc),
  tie(coatingLifeCalc),
  tie(mouldViewCalc),
  tie(chairStackCalc),
  tie(tapePositionCalc),
  tie(holeFitCalc),
  tie(clearanceProbabilityCalc),
  tie(asCastCalc),
];

/** The calculations, a line each: name and what it gives. */
export function listCalculations(): readonly { readonly name: string; readonly gives: string }[] {
  return CALCULATIONS.map(({ name, gives }) => ({ name, gives }));
}

/**
 * JSON Schema of a calculation's input and output.
 * @throws CalcError when there is no calculation of that name
 */
export function describeCalculation(name: string): object {
  const calc = findCalculation(name);
  return {
    name: calc.name,
    gives: calc.gives,
    input: z.toJSONSchema(calc.input, { io: 'input' }),
    output: z.toJSONSchema(calc.output),
  };
}

/**
 * Runs a calculation of the contract: JSON in, JSON out.
 * @param given the input with its key `calc`
 * @param keepsSteps true: the result carries its steps where the calculation has any
 * @throws CalcError with one line that names the key, what was wrong and what was expected
 */
export function calculate(given: unknown, keepsSteps = false): object {
  if (typeof given !== 'object' || given === null || Array.isArray(given))
    throw new CalcError('input', 'expected a JSON object with the key "calc"');
  const name: unknown = 'calc' in given ? given.calc : undefined;
  if (typeof name !== 'string') throw new CalcError('calc', `expected one of ${nameAll()}`);
  const answer = findCalculation(name).answer(given, keepsSteps);
  return { contract: CONTRACT, engine: ENGINE_VERSION, ...answer };
}

function findCalculation(name: string): Calculation {
  const calc = CALCULATIONS.find((candidate) => candidate.name === name);
  if (calc === undefined) throw new CalcError('calc', `"${name}" is not known, expected one of ${nameAll()}`);
  return calc;
}

function nameAll(): string {
  return CALCULATIONS.map(({ name }) => `"${name}"`).join(', ');
}

/** The first fault of a schema check as one line; the deepest branch of a choice is the one that was meant. */
function describeIssue(error: z.ZodError): CalcError {
  const { path, message } = deepest(error.issues[0]!);
  return new CalcError(writePath(path), message);
}

function deepest(issue: z.core.$ZodIssue): { readonly path: readonly PropertyKey[]; readonly message: string } {
  if (issue.code === 'unrecognized_keys')
    return {
      path: [...issue.path, issue.keys[0]!],
      message: 'is not a key of this calculation; expected only the keys that the schema names',
    };
  if (issue.code === 'invalid_type' && issue.message.startsWith('Invalid input'))
    return { path: issue.path, message: `expected ${SHAPES[issue.expected] ?? issue.expected}` };
  return issue;
}

/** What a key holds, for people, where its schema has no sentence of its own. */
const SHAPES: Readonly<Record<string, string>> = {
  object: 'an object { … } with the keys that the schema names',
  array: 'a list [ … ]',
};

function writePath(path: readonly PropertyKey[]): string {
  let text = '';
  for (const key of path) {
    if (typeof key === 'number') text += `[${key}]`;
    else text += text === '' ? String(key) : `.${String(key)}`;
  }
  return text === '' ? 'input' : text;
}
