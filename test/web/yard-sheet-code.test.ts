import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type PieceCode, readPieceCode, writePieceCode } from '../../src/job/piece-code.ts';
import { type JobOnDevice, judgeCode, nameProject } from '../../src/web/yard/screens/scan/judge-code.ts';
import { planCuts } from '../../src/web/yard/screens/scan/read-picture.ts';
import { sayVoid } from '../../src/web/yard/screens/scan/void-words.ts';
import { demo } from '../job/edit/demo.ts';

const hashOf = (digit: string) => digit.repeat(64);
const issued = (letter: string, status: JobOnDevice['revisions'][number]['status'], digit: string) => ({
  letter,
  status,
  issuedAt: '2026-11-03T09:00:00.000Z',
  fingerprint: hashOf(digit),
});
const DEVICE: JobOnDevice = {
  revisions: [
    issued('A', 'for construction', 'a'),
    issued('B', 'for approval', 'b'),
    issued('C', 'for construction', 'c'),
  ],
  inForce: { letter: 'C', fingerprint: hashOf('c'), file: demo },
};
const CODE: PieceCode = {
  project: nameProject(demo.job),
  mark: 'P13',
  serial: '2',
  letter: 'C',
  fingerprint: hashOf('c').slice(0, 12),
};

describe('the code of a sheet, held against what the device knows', () => {
  it('opens the piece by the permanent key of its panel when the sheet is in force, its serial with it', () => {
    const panel = demo.job.panels.find(({ mark }) => mark === 'P13');
    expect(judgeCode(CODE, DEVICE)).toEqual({ kind: 'in force', panelKey: panel?.key, mark: 'P13', serial: '2' });
    expect(judgeCode({ ...CODE, serial: null }, DEVICE)).toMatchObject({ kind: 'in force', serial: null });
  });

  it('is read as the sheet wrote it', () => {
    expect(readPieceCode(writePieceCode(CODE))).toEqual(CODE);
  });

  it('names a mark that the job in force does not have', () => {
    expect(judgeCode({ ...CODE, mark: 'Z9' }, DEVICE)).toEqual({ kind: 'no such mark', mark: 'Z9', inForce: 'C' });
  });

  it.each([
    ['an older revision for construction', { fingerprint: 'a'.repeat(12), letter: 'A' }, DEVICE, 'older'],
    ['one that was for approval only', { fingerprint: 'b'.repeat(12), letter: 'B' }, DEVICE, 'not for construction'],
    ['a state that nobody issued', { fingerprint: 'd'.repeat(12) }, DEVICE, 'never issued'],
    ['another project', { fingerprint: 'd'.repeat(12), project: 'Elsewhere' }, DEVICE, 'other project'],
    // A code with fewer digits than a sheet prints could be the start of anything.
    ['a fingerprint cut short', { fingerprint: 'ccc' }, DEVICE, 'never issued'],
    ['the last revision, when nothing is in force any more', {}, { ...DEVICE, inForce: null }, 'older'],
  ])('is void by %s', (_, change, device, why) => {
    const judged = judgeCode({ ...CODE, ...change }, device);
    expect(judged).toMatchObject({ kind: 'void', reason: { why } });
    if (judged.kind !== 'void') return;
    const words = sayVoid(judged);
    expect(words.sheet).toContain(`revision ${judged.sheetLetter}`);
    expect(words.now).toMatch(device.inForce === null ? /Nothing is in force/ : /In force: revision C/);
  });

  it('says each reason in other words', () => {
    const reasons = [
      { fingerprint: 'a'.repeat(12) },
      { fingerprint: 'b'.repeat(12) },
      { fingerprint: 'd'.repeat(12) },
    ].map((change) => {
      const judged = judgeCode({ ...CODE, ...change }, DEVICE);
      return judged.kind === 'void' ? sayVoid(judged).why : 'not void';
    });
    expect(new Set(reasons).size).toBe(3);
    expect(reasons).not.toContain('not void');
  });
});

describe('where a code is looked for in a photograph', () => {
  it('leaves no part out, and shows any spot of a third of a cut whole', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1500, max: 6000 }),
        fc.integer({ min: 1500, max: 6000 }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (width, height, u, v) => {
          const cuts = planCuts(width, height);
          for (const { x, y, width: w, height: h } of cuts) {
            expect(x + w).toBeLessThanOrEqual(width + 1);
            expect(y + h).toBeLessThanOrEqual(height + 1);
          }
          const finest = cuts.slice(-9);
          const side = Math.min(finest[0]!.width, finest[0]!.height) / 3;
          const [left, top] = [u * (width - side - 4), v * (height - side - 4)];
          expect(
            finest.some(
              (cut) =>
                cut.x <= left + 1 &&
                cut.y <= top + 1 &&
                cut.x + cut.width >= left + side - 1 &&
                cut.y + cut.height >= top + side - 1,
            ),
          ).toBe(true);
        },
      ),
    );
  });

  it('is one look only where the picture is small', () => {
    expect(planCuts(1280, 720)).toEqual([{ x: 0, y: 0, width: 1280, height: 720, scale: 1 }]);
  });
});
