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
    expect(layTable(columns, rows, 26)).toContain('      not       given');
  });
  it('presses every column down to its longest word before it gives up being a table', () => {
    const narrow = layTable(
      [{ head: 'mark' }, { head: 'state' }, { head: 'used', align: 'right' }],
      [['C1', 'not covered', '26 %']],
      21,
    );
    expect(narrow.split('\n')).toEqual([
      'mark  state    used',
      '----  -------  ----',
      'C1    not      26 %',
      '      covered',
    ]);
  });
  it('lays each row by itself where the page is too narrow for that', () => {
    expect(layTable(columns, rows.slice(1), 16).split('\n')).toEqual(['mark C2', '  answer  passes', '  why     cone']);
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
  it.each([
    ['so much as 26 % of it', 12, 'so much as\n26 % of it'],
    ['at most 141 N m (thread)', 14, 'at most\n141 N m\n(thread)'],
    ['no less than 35 mm2 here', 17, 'no less than\n35 mm2 here'],
    ['used > 1000 % of all', 8, 'used\n> 1000 %\nof all'],
    // A unit is a word by itself: "3 may" and "4 Nails" break.
    ['of 4 Nails', 6, 'of 4\nNails'],
  ])('keeps a number and its unit on one line: %s', (text, width, expected) => {
    expect(layText(text, width, '', '')).toBe(expected);
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
