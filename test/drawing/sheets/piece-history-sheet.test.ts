import { expect, it } from 'vitest';
import { PAPERS } from '../../../src/drawing/sheets/paper.ts';
import {
  drawPieceHistory,
  type HistoryContent,
  type HistoryEntry,
} from '../../../src/drawing/sheets/piece-history-sheet.ts';
import { replaceUndrawable } from '../../../src/drawing/text-size.ts';
import { findOverhang, findOverlaps, textOf } from '../picture-checks.ts';

const entry: HistoryEntry = {
  words: 'M. Nobody checked inserts 4–7 before the cage: type, face, firm as shown.',
  measured: '2026-11-30 06:12',
  typed: '2026-11-30 06:12',
  who: 'M. Nobody',
  chain: 'ab12 7–10',
  withdrawn: null,
};

const content: HistoryContent = {
  head: { mark: 'P13', lines: ['piece no. 1', 'pour T13, Bed 2'], title: 'History of a piece' },
  flags: ['POURED WITHOUT CLEARANCE: a non-conformance'],
  clearance: {
    words: 'held: form racked',
    facts: [{ name: 'head of the server’s log', value: `412:${'f'.repeat(64)}` }],
    open: ['insert 4 is 9 mm off'],
  },
  standing: ['poured'],
  entries: [entry, { ...entry, typed: '2026-11-30 09:40', withdrawn: 'withdrawn by S. Nobody: wrong insert' }],
  logHead: `412:${'f'.repeat(64)}`,
  clockWords: 'Times by the clock of the office (UTC).',
};

const facts = {
  paper: PAPERS.A4,
  project: '4711 Hall',
  revision: { letter: 'B', status: 'for construction', date: '2026-11-27' },
  fingerprint: 'abcdef012345',
  caution: 'NOT FOR LIFTING',
} as const;

it('shows flags before all else, what was withdrawn in its place, the head of the log, and both times', () => {
  const [page] = drawPieceHistory(content, facts);
  const text = textOf(page!.marks);
  const order = [
    'POURED WITHOUT CLEARANCE',
    'held: form racked',
    'insert 4 is 9 mm off',
    'Everything that was recorded',
  ];
  const places = order.map((words) => text.indexOf(words));
  expect(places).toEqual([...places].sort((a, b) => a - b));
  expect(places[0]).toBeGreaterThan(-1);
  const flowing = text.replaceAll('\n', ' ');
  expect(flowing).toContain('WITHDRAWN, does not count (withdrawn by S. Nobody: wrong insert)');
  expect(flowing).toContain('2026-11-30 09:40');
  expect(flowing).toContain('at once');
  expect(text.replaceAll('\n', '')).toContain('f'.repeat(64));
});

it('holds any number of records and any text that a person typed, inside its sheets', () => {
  const wild = 'a😀b\n'.repeat(40) + 'x'.repeat(1900);
  const entries = Array.from({ length: 150 }, (_, k) => (k === 70 ? { ...entry, words: wild } : entry));
  const pages = drawPieceHistory({ ...content, flags: [wild, ...content.flags], entries }, facts);
  expect(pages.length).toBeGreaterThan(3);
  for (const { marks, width, height } of pages) {
    expect(findOverhang(marks, { width, height })).toBe(0);
    expect(findOverlaps(marks)).toEqual([]);
  }
  const text = pages.map(({ marks }) => textOf(marks)).join('\n');
  expect(text).toContain('a\ufffdb');
  expect(text.replaceAll('\n', ' ')).toContain(`cut here; the record has ${wild.length} signs`);
  expect(text.match(/ab12 7–10/g)).toHaveLength(150);
});

it('says so where nothing is recorded, and nobody has decided', () => {
  const [page] = drawPieceHistory({ ...content, flags: [], clearance: null, entries: [], logHead: null }, facts);
  const text = textOf(page!.marks);
  expect(text).toContain('Nobody has cleared or held this piece.');
  expect(text).toContain('Nothing is recorded of this piece.');
  expect(text).toContain('is not known to this device');
});

it('keeps every sign that can be drawn', () => {
  expect(replaceUndrawable('Å – § 12 mm\nnext\tone')).toBe('Å – § 12 mm\nnext one');
});
