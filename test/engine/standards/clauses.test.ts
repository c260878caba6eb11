import { readdirSync, readFileSync } from 'node:fs';
import { compile } from 'mathjs';
import { describe, expect, it } from 'vitest';
import type { Clause } from '../../../src/engine/standards/clause.ts';

const STANDARDS = new URL('../../../src/engine/standards/', import.meta.url);
const RUNS = 300;

/** Exported functions that are no clauses, by the folder of their document. */
const NOT_CLAUSES: Readonly<Record<string, readonly string[]>> = {
  'aci-318-19': ['aciClause', 'findLeastDistances', 'findUncovered', 'resistBlowOut', 'resistBreakout', 'resistEdge'],
  'as-5216-2021': ['asClause', 'restate', 'restateSink'],
  'en-1992-4-2018': ['enClause', 'findUncovered', 'resistBlowOut', 'resistCone', 'resistEdge', 'resistSplitting'],
};

/** Every folder of a document that lists clauses. */
const folders = readdirSync(STANDARDS, { withFileTypes: true })
  .filter((entry) => entry.isDirectory() && readdirSync(new URL(`${entry.name}/`, STANDARDS)).includes('clauses.ts'))
  .map(({ name }) => name);

const listed = await Promise.all(
  folders.map(async (folder) => {
    const found: { readonly CLAUSES: readonly Clause[] } = await import(
      new URL(`${folder}/clauses.ts`, STANDARDS).href
    );
    return { folder, clauses: found.CLAUSES };
  }),
);

/** Even random numbers from 0 to 1, the same in every run (a 32-bit mixing generator). */
function randomFrom(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** Random arguments in range; one in five stands on an end of its range, whole numbers are as likely as broken ones. */
function drawArguments(clause: Clause, random: () => number): number[] {
  return clause.args.map(({ range: [low, high] }) => {
    const choice = random();
    if (choice < 0.1) return low;
    if (choice < 0.2) return high;
    const value = low + random() * (high - low);
    return choice < 0.6 && high - low > 2 ? Math.round(value) : value;
  });
}

it('clauses are found in the folders of every document', () => {
  expect(folders).toEqual(expect.arrayContaining(['aci-318-19', 'as-5216-2021', 'en-1992-4-2018']));
});

describe.each(listed)('clause records of $folder', ({ folder, clauses }) => {
  const sources = readSources(folder);
  const named = clauses.map((clause) => ({ name: `${clause.fn.name}, ${clause.clause}`, clause }));

  it('name every clause function of the folder once', () => {
    // A clause function that only its record uses is not exported; its example tells it from a helper.
    const functions = sources.flatMap((text) =>
      [...text.matchAll(/^(export )?function (\w+)/gm)]
        .filter(([whole, exported]) => exported !== undefined || commentBefore(text, whole).includes('Example: '))
        .map((found) => found[2]!),
    );
    const notClauses = NOT_CLAUSES[folder] ?? [];
    expect(clauses.map(({ fn }) => fn.name).sort()).toEqual(
      functions.filter((name) => !notClauses.includes(name)).sort(),
    );
  });

  it.each(named)('$name: the formula text gives what the function gives', ({ clause }) => {
    const random = randomFrom(1992);
    const formula = compile(clause.formula);
    for (let run = 0; run < RUNS; run++) {
      const args = drawArguments(clause, random);
      const scope = Object.fromEntries(clause.args.map(({ symbol }, i) => [symbol, args[i]!]));
      const fromText: unknown = formula.evaluate(scope);
      const fromFunction = clause.fn(...args);
      expect(Number.isFinite(fromFunction), `arguments ${args.join(', ')}`).toBe(true);
      expect(typeof fromText).toBe('number');
      // 1e-12 relative: the two differ by rounding of a few operations only.
      expect(Math.abs(Number(fromText) - fromFunction), `arguments ${args.join(', ')}`).toBeLessThanOrEqual(
        1e-12 * Math.abs(fromFunction),
      );
    }
  });

  it.each(named)('$name: as many arguments as the function, each in the formula, with a range', ({ clause }) => {
    expect(clause.args.length).toBe(clause.fn.length);
    const words = clause.formula.match(/[A-Za-z_]\w*/g) ?? [];
    for (const { symbol, meaning, range } of clause.args) {
      expect(words).toContain(symbol);
      expect(meaning).not.toBe('');
      expect(range[0]).toBeLessThan(range[1]);
    }
    expect(new Set(clause.args.map(({ symbol }) => symbol)).size).toBe(clause.args.length);
  });

  // Expected values: printed in each function's comment, worked with a calculator; held to half a unit of the last digit.
  it.each(named)('$name: the example of its comment is right', ({ clause }) => {
    const examples = findExamples(sources, clause.fn.name);
    expect(examples.length).toBeGreaterThan(0);
    for (const { args, printed, tolerance } of examples) {
      expect(args.length).toBe(clause.fn.length);
      expect(Math.abs(clause.fn(...args) - printed)).toBeLessThanOrEqual(tolerance);
    }
  });
});

function readSources(folder: string): string[] {
  const place = new URL(`${folder}/`, STANDARDS);
  return readdirSync(place).map((name) => readFileSync(new URL(name, place), 'utf8'));
}

interface Example {
  readonly args: readonly number[];
  readonly printed: number;
  readonly tolerance: number;
}

/** The comment that stands last before a piece of a source. */
function commentBefore(source: string, piece: string): string {
  const before = source.slice(0, source.indexOf(piece));
  return before.slice(before.lastIndexOf('/**'));
}

/** The examples of a function's comment: "Example: a, b, c → result; a, b, c → result." */
function findExamples(sources: readonly string[], name: string): Example[] {
  const source = sources.find(
    (text) => text.includes(`\nexport function ${name}(`) || text.includes(`\nfunction ${name}(`),
  )!;
  const text = commentBefore(source, `function ${name}(`)
    .replace(/\n \*/g, '')
    .match(/Example: (.*)\.\s*\/\s*(?:export )?$/)?.[1];
  return (text ?? '').split(';').flatMap((one) => {
    const [left, right] = one.replace(/\([^)]*\)/g, '').split('→');
    if (left === undefined || right === undefined) return [];
    const digits = right.match(/\d[\d ]*(?:\.(\d+))?/)!;
    const last = 10 ** -(digits[1]?.length ?? 0);
    return [{ args: readNumbers(left), printed: readNumbers(right)[0]!, tolerance: last / 2 + 1e-12 }];
  });
}

/** Numbers of a text: thousands may be set apart by a space, kN counts a thousand times, π/n is an angle. */
function readNumbers(text: string): number[] {
  const found = text.matchAll(/π\/(\d+)|(\d{1,3}(?: \d{3})+|\d+(?:\.\d+)?)( kN)?/g);
  return [...found].map(([, part, value, kilo]) =>
    part !== undefined ? Math.PI / Number(part) : Number(value!.replaceAll(' ', '')) * (kilo === undefined ? 1 : 1000),
  );
}
