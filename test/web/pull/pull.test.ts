import { describe, expect, it } from 'vitest';
import { draftPull, planPull } from '../../../src/web/pieces/pull/plan-pull.ts';
import { NO_PULL, readPull } from '../../../src/web/pieces/pull/read-pull.ts';
import { NO_TOOL } from '../../../src/web/pieces/survey/read-tool.ts';
import { demoFile, pieceOf } from '../../assess/yard/yard-sample.ts';

const sample = pieceOf(demoFile(), 'P02', '1');
const keyOf = (number: number) => sample.plan.setOut.items.find((item) => item.number === number)!.castIn.key;
const itemsOf = (...numbers: readonly number[]) =>
  sample.plan.setOut.items.filter(({ number }) => numbers.includes(number));

describe('a plan of pull tests as it is asked for', () => {
  it('takes 1.25 times the design load where none is given, and never more than the steel may see', () => {
    const asked = { items: itemsOf(12, 13), load_kN: null, hold_min: null, movement_mm: null };
    const usual = planPull(sample, asked);
    if (usual.kind !== 'planned') throw new Error('not planned');
    const body = draftPull(usual, asked.items, { role: 'qa', reason: 'test' });
    expect(body).toMatchObject({ load_kN: 10, hold_min: 1, movement_mm: 0.1, items: [keyOf(12), keyOf(13)] });
    const given = planPull(sample, { ...asked, load_kN: 12 });
    if (given.kind !== 'planned') throw new Error('not planned');
    expect(draftPull(given, asked.items, { role: 'qa', reason: 'test' }).load_kN).toBe(12);
    const greedy = planPull(sample, { ...asked, load_kN: 500 });
    if (greedy.kind !== 'planned') throw new Error('not planned');
    expect(draftPull(greedy, asked.items, { role: 'qa', reason: 'test' }).load_kN).toBeLessThanOrEqual(
      0.9 * greedy.basis.steelYield,
    );
    expect(greedy.plan.isCutBySteel).toBe(true);
    // The brace insert carries no load of the job: somebody must give one.
    expect(planPull(sample, { ...asked, items: itemsOf(10) }).kind).toBe('no load');
  });
});

describe('a pull as it is typed', () => {
  const typed = { ...NO_PULL, load: '12,5', hold: '1', failure: null } as const;
  it('takes a comma, and leaves out what was not read', () => {
    expect(readPull(typed, NO_TOOL)).toMatchObject({ load_kN: 12.5, movement_mm: null, support_mm: null, gauge: null });
    expect(readPull({ ...typed, movement: '.05', support: '150' }, { ...NO_TOOL, serial: 'G 1' })).toMatchObject({
      movement_mm: 0.05,
      support_mm: 150,
      gauge: { serial: 'G 1', calibratedUntil: null },
    });
  });

  it('says what is missing or no number', () => {
    expect(readPull(NO_PULL, NO_TOOL)).toMatch(/load/);
    expect(readPull({ ...typed, hold: 'x' }, NO_TOOL)).toMatch(/minutes/);
    expect(readPull({ ...typed, movement: '1e3' }, NO_TOOL)).toMatch(/movement/);
    expect(readPull({ ...typed, support: '0' }, NO_TOOL)).toMatch(/feet/);
    expect(readPull({ ...typed, failure: undefined }, NO_TOOL)).toMatch(/held/);
    expect(readPull(typed, { ...NO_TOOL, until: '2027-02-30' })).toMatch(/no day/);
  });
});
