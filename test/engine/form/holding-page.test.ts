// The tables of docs/holding.md against what the engine holds, so that the page cannot say another thing.

import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { findHoldingMethod, findHoldingStage, holdingMethodNames } from '../../../src/engine/form/holding-methods.ts';
import { findUsualScatter } from '../../../src/engine/form/holding-scatter.ts';

const page = readFileSync(new URL('../../../docs/holding.md', import.meta.url), 'utf8');
const rows = page.split('\n').filter((line) => line.startsWith('| '));
const cellsOf = (row: string) =>
  row
    .slice(1, -1)
    .split('|')
    .map((cell) => cell.trim());

describe('the page about holding', () => {
  it('says where, when and on what each method holds', () => {
    for (const name of holdingMethodNames) {
      const [row] = rows.filter((line) => line.startsWith(`| ${name} | `));
      const stages = (['mould face', 'trowelled face', 'edge'] as const).map((place) => {
        const stage = findHoldingStage(name, place);
        return stage === null ? '–' : `stage ${stage}`;
      });
      expect(cellsOf(row!)).toEqual([name, ...stages, findHoldingMethod(name).form ?? 'any']);
    }
  });

  it('has the scatter that is taken', () => {
    const sigmaOf = (start: string) =>
      Number.parseFloat(cellsOf(rows.find((row) => row.startsWith(`| ${start}`))!)[2]!);
    expect(sigmaOf('template board on the form')).toBe(findUsualScatter('template board', 'mould face').position);
    expect(sigmaOf('single insert')).toBe(findUsualScatter('magnet', 'edge').position);
    expect(sigmaOf('trowelled face')).toBe(findUsualScatter('chair', 'trowelled face').position);
    expect(sigmaOf('level')).toBe(findUsualScatter('chair', 'trowelled face').level);
  });
});
