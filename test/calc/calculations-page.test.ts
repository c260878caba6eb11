import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { calculate, describeCalculation, listCalculations } from '../../src/calc/calculation.ts';

const page = readFileSync(new URL('../../docs/calculations.md', import.meta.url), 'utf8');
const examples = [...page.matchAll(/```json\n([\s\S]*?)```/g)].map(([, text]) => JSON.parse(text!));

/** Every key that a JSON Schema names, at any depth. */
function keysOf(schema: unknown, keys = new Set<string>()): Set<string> {
  if (typeof schema !== 'object' || schema === null) return keys;
  if ('properties' in schema && typeof schema.properties === 'object')
    for (const key of Object.keys(schema.properties ?? {})) keys.add(key);
  for (const value of Object.values(schema)) keysOf(value, keys);
  return keys;
}

describe('the page of the calculation contract', () => {
  it('has an example of each calculation, and each is answered', () => {
    expect(examples.map(({ calc }) => calc)).toEqual(listCalculations().map(({ name }) => name));
    for (const example of examples) expect(calculate(example)).toMatchObject({ contract: 1 });
  });

  it('names every key of every calculation', () => {
    for (const { name } of listCalculations())
      for (const key of keysOf(describeCalculation(name))) {
        // Steps are described by `--steps`; their own keys say what they are.
        if (['symbol', 'unit', 'formula', 'numbers', 'result', 'steps', 'kind', 'from', 'to'].includes(key)) continue;
        expect(page, `${name}: ${key}`).toMatch(new RegExp(`\\b${key}\\b`));
      }
  });
});
