import { describe, expect, it } from 'vitest';
import { UsageError } from '../../src/cli/exit-codes.ts';
import { makeFolder } from '../../src/cli/folder-command.ts';
import { PAPERS } from '../../src/drawing/sheets/paper.ts';
import { findReusedLetter } from '../../src/job/difference/compare-for-pour.ts';
import { compareJobs } from '../../src/job/difference/compare-jobs.ts';
import { findCut, findOverlaps } from '../files/read-pdf.ts';
import { faultsOf, mustRead } from '../job/read.ts';
import { type Json, sampleBed, sampleCastIn, sampleJob, samplePanel, samplePour } from '../job/sample-job.ts';
import { readFolder } from './folder-reading.ts';

const issued = { letter: 'B', status: 'for construction', date: '2026-12-01' };
const other = (id: string, x: number, y: number): Json =>
  sampleCastIn(id, x, y, { role: 'other', item: null, description: 'a thing' });

function jobOf(panel: Json, castIns: readonly Json[], more: Json = {}) {
  const mark = String(panel.mark ?? 'P1');
  return sampleJob({
    panels: [samplePanel(panel)],
    castIns: castIns.map((castIn) => ({ ...castIn, panel: mark })),
    connections: [],
    beds: [sampleBed()],
    pours: [samplePour({ pieces: [{ panel: mark, serial: '1' }] })],
    revision: issued,
    ...more,
  });
}

const many = Array.from({ length: 200 }, (_, i) => other(String(i + 1), 60 + 19.5 * i, 100 + ((i * 137) % 2800)));
const round = Array.from({ length: 40 }, (_, i) => {
  const angle = (2 * Math.PI * i) / 40;
  return [2000 + 1900 * Math.cos(angle), 1500 + 1400 * Math.sin(angle)];
});
const longMark = 'A mark of sixty signs, as long as a mark is ever allowed here';

const cases: readonly (readonly [string, Json])[] = [
  ['200 inserts', jobOf({}, many)],
  ['an outline of 40 corners', jobOf({ outline_mm: round }, [other('1', 2000, 1500)])],
  ['a mark of sixty signs', jobOf({ mark: longMark.slice(0, 60) }, [other('1', 2000, 1500)])],
  [
    'a long panel',
    jobOf(
      {
        outline_mm: [
          [0, 0],
          [12000, 0],
          [12000, 900],
          [0, 900],
        ],
      },
      [other('1', 11000, 450)],
    ),
  ],
  ['nothing cast in', jobOf({}, [])],
];

describe.each(cases)('the folder of a panel with %s', (_, document) => {
  it.each(['A3', 'A4'] as const)('is written on %s with no text on another and nothing cut', async (paper) => {
    const { reading } = await readFolder(mustRead(document), 'T1', paper);
    const overlaps = reading.pages.flatMap((_page, i) =>
      findOverlaps(reading.texts.filter(({ page }) => page === i + 1)),
    );
    expect(overlaps.map(([a, b]) => `page ${a.page}: "${a.text}" on "${b.text}"`)).toEqual([]);
    expect(findCut(reading)).toEqual([]);
    const status = reading.texts.filter(({ text }) => text === 'FOR CONSTRUCTION');
    expect(status).toHaveLength(reading.pages.length);
  });
});

describe('what a folder cannot draw, or must not let pass', () => {
  it('is told in one line with pour, panel and text', () => {
    const file = mustRead(jobOf({}, [{ ...other('1', 2000, 1500), description: '仮' }]));
    const draw = () => makeFolder(file, 'T1', PAPERS.A3, null);
    expect(draw).toThrow(UsageError);
    expect(draw).toThrow(/^pour T1: .*U\+4EEE/);
  });

  it('says on the list what has no room on the plan', async () => {
    const { reading } = await readFolder(mustRead(jobOf({}, many)), 'T1', 'A4');
    expect(
      reading.texts.some(({ text }) => text.startsWith('No room on the plan for the figures of stage 1 along x')),
    ).toBe(true);
  });

  it('marks what is another since the earlier revision, and stops where a letter is used for two contents', async () => {
    const before = mustRead(
      jobOf({}, [other('1', 2000, 1500), other('2', 3000, 1500)], { revision: { ...issued, letter: 'A' } }),
    );
    const after = mustRead(jobOf({}, [other('1', 2000, 1510), other('2', 3000, 1500)]));
    const { reading } = await readFolder(after, 'T1', 'A3', before);
    expect(reading.texts.filter(({ text }) => text.startsWith('▲ OTHER'))).toHaveLength(1);
    expect(findReusedLetter(compareJobs(before, after))).toBeNull();
    const same = mustRead(jobOf({}, [other('1', 2000, 1500), other('2', 3000, 1500)]));
    expect(findReusedLetter(compareJobs(same, after))).toMatch(/^revision B was given before to another content/);
    expect(makeFolder(after, 'T1', PAPERS.A3, same).isReady).toBe(false);
    expect(findReusedLetter(compareJobs(after, after))).toBeNull();
  });

  it('tells changed rules and beds', async () => {
    const before = mustRead(jobOf({}, [], { revision: { ...issued, letter: 'A' } }));
    const tolerances = { position_mm: 3, level_mm: 3 };
    const after = mustRead(jobOf({}, [], { rules: { tolerances } }));
    const { reading } = await readFolder(after, 'T1', 'A3', before);
    expect(reading.texts.some(({ text }) => /^▲ rules: .*tolerances, place 3 mm \(was 5\)/.test(text))).toBe(true);
  });

  it('does not read two pours of one bed and day that lie on each other', () => {
    const pour = (id: string, serial: string, along_mm: number) =>
      samplePour({ id, pieces: [{ panel: 'P1', serial, along_mm }] });
    const twice = (second: number, date = '2026-12-14') =>
      faultsOf(jobOf({}, [], { pours: [pour('T1', '1', 0), { ...pour('T2', '2', second), date }] }));
    expect(twice(1000)).toEqual([expect.stringContaining('piece 2 of panel P1 lies from 1000 to 5000 mm on piece 1')]);
    expect(twice(4000)).toEqual([]);
    expect(twice(1000, '2026-12-15')).toEqual([]);
  });
});
