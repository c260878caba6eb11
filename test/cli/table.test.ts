import { describe, expect, it } from 'vitest';
import { layPairs, layPoint, layTable, layText } from '../../src/cli/print/table.ts';

describe('tables on a page', () => {
  const columns = [{ head: 'mark' }, { head: 'answer', least: 8 }, { head: 'why', least: 10, turn: 1 }];
  const rows = [
    ['C1', 'strength not checked', 'no action given'],
    ['C2', 'passes', 'cone'],
  ];

  it('leaves columns whole where the page is wide enough', () => {
    expect(layTable(columns, rows, 60).split('\n')).toEqual([
      'mark  answer                why',
      '----  --------------------  ---------------',
      'C1    strength not checked  no action given',
      'C2    passes                cone',
    ]);
  });
  it('breaks cells at their spaces, columns of a lower turn first, and cuts nothing off', () => {
    expect(layTable(columns, rows, 31).split('\n')).toEqual([
      'mark  answer    why',
      '----  --------  ---------------',
      'C1    strength  no action given',
      '      not',
      '      checked',
      'C2    passes    cone',
    ]);
    expect(layTable(columns, rows, 20)).toContain('      not       given');
  });
  it('lets a word that is longer than its column stand out', () => {
    const table = layTable([{ head: 'a', least: 3 }], [['unbreakable']], 3);
    expect(table).toBe('a\n-----------\nunbreakable');
  });
  it('puts numbers to the right, broken heads too', () => {
    const table = layTable([{ head: 'action kN', align: 'right', least: 6 }], [['9.01']], 6);
    expect(table.split('\n')).toEqual(['action', '    kN', '------', '  9.01']);
  });
});

describe('sentences on a page', () => {
  it('breaks within the width, indents included, and keeps leading spaces', () => {
    const text = '  = one two three four';
    for (const line of layText(text, 14, '  ', '      ').split('\n')) expect(line.length).toBeLessThanOrEqual(14);
    expect(layText(text, 14, '  ', '      ')).toBe('    = one\n      two\n      three\n      four');
    expect(layPoint('one two', 9)).toBe('  - one\n    two');
  });
  it('lays labels and texts side by side', () => {
    expect(
      layPairs(
        [
          ['bolt', 'M16 8.8 plain'],
          ['', 'x'],
        ],
        14,
      ),
    ).toBe('bolt  M16 8.8\n      plain\n      x');
  });
});
