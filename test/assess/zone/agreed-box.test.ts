import { describe, expect, it } from 'vitest';
import { setOutPanel } from '../../../src/assess/set-out/set-out-panel.ts';
import { judgePlacing } from '../../../src/assess/yard/judge-placing.ts';
import { planPiece } from '../../../src/assess/yard/plan-piece.ts';
import { drawCheckSheets } from '../../../src/drawing/sheets/check-sheet.ts';
import { PAPERS } from '../../../src/drawing/sheets/paper.ts';
import type { Connection } from '../../../src/job/documents/connection.ts';
import type { JobFile } from '../../../src/job/documents/job-file.ts';
import type { Rules } from '../../../src/job/documents/rules.ts';
import { indexJob } from '../../../src/job/job-index.ts';
import { findBoxStanding, hashZoneBasis } from '../../../src/job/position-box.ts';
import { textOf } from '../../drawing/picture-checks.ts';
import { demo } from '../../job/edit/demo.ts';

const MARK = 'C50';
const PANEL = 'P13';
const AGREED = { agreedBy: 'S. Specifier', capacity: 'engineer, No. 1', document: 'letter 12', date: '2026-12-01' };

const connectionOf = (file: JobFile) => file.job.connections.find(({ mark }) => mark === MARK)!;

function withRules(file: JobFile, change: Partial<Rules>): JobFile {
  return { ...file, library: { ...file.library, rules: { ...file.library.rules, ...change } } };
}

function withConnection(file: JobFile, change: (connection: Connection) => Connection): JobFile {
  const connections = file.job.connections.map((one) => (one.mark === MARK ? change(one) : one));
  return { ...file, job: { ...file.job, connections } };
}

/** The demo job with ± 7 mm taken over for C50, agreed or not. */
function take(file: JobFile, isAgreed = true): JobFile {
  const agreed = withRules(file, { positionZones: isAgreed ? AGREED : null });
  const computedFrom = hashZoneBasis(indexJob(agreed), connectionOf(agreed));
  return withConnection(agreed, (one) => ({ ...one, positionBox: { within_mm: 7, computedFrom } }));
}

const standingOf = (file: JobFile) => findBoxStanding(indexJob(file), connectionOf(file));
const setOutOf = (file: JobFile) => setOutPanel(indexJob(file), PANEL, null);
const itemOf = (file: JobFile) => setOutOf(file).items.find(({ connection }) => connection === MARK)!;
const keysOf = (file: JobFile) => planPiece(indexJob(file), { id: 'piece', mark: PANEL, bed: null });

describe('the box of a position zone in place of the tolerance', () => {
  const taken = take(demo);

  it('counts where it was agreed, for the inserts of its connection alone', () => {
    expect(standingOf(demo)).toEqual({ kind: 'none' });
    expect(standingOf(taken)).toEqual({ kind: 'stands', within_mm: 7, agreement: AGREED });
    expect([itemOf(demo).tolerance, itemOf(taken).tolerance]).toEqual([5, 7]);
    const others = setOutOf(taken).items.filter(({ connection }) => connection !== MARK);
    expect(others.every(({ tolerance, agreement }) => tolerance === 5 && agreement === null)).toBe(true);
  });

  it('does not count where nobody agreed, and that is told', () => {
    const file = take(demo, false);
    expect(standingOf(file)).toEqual({ kind: 'not agreed' });
    expect(itemOf(file)).toMatchObject({ tolerance: 5, agreement: null });
    expect(setOutOf(file).problems.some(({ text }) => text.startsWith('connection C50: the rules name nobody'))).toBe(
      true,
    );
  });

  it('does not count any more once something that it was computed from is another', () => {
    const changes: readonly ((file: JobFile) => JobFile)[] = [
      (file) => withConnection(file, (one) => ({ ...one, origin_mm: [one.origin_mm[0] + 1, one.origin_mm[1]] })),
      (file) => withConnection(file, (one) => ({ ...one, packers_mm: one.packers_mm + 5 })),
      (file) => withRules(file, { clearance_mm: 6 }),
      (file) => ({
        ...file,
        job: { ...file.job, panels: file.job.panels.map((one) => ({ ...one, thickness_mm: one.thickness_mm + 10 })) },
      }),
      (file) => ({
        ...file,
        job: {
          ...file.job,
          castIns: file.job.castIns.map((one) => (one.panel === PANEL && one.id === '1' ? { ...one, x_mm: 999 } : one)),
        },
      }),
      (file) => ({
        ...file,
        job: { ...file.job, concretes: file.job.concretes.map((one) => ({ ...one, strength28_MPa: 35 })) },
      }),
    ];
    for (const change of changes) {
      const file = change(taken);
      expect(standingOf(file), String(change)).toEqual({ kind: 'outdated' });
    }
    const outdated = changes[1]!(taken);
    expect(itemOf(outdated).tolerance).toBe(5);
    expect(setOutOf(outdated).problems.some(({ text }) => text.includes('computed before something'))).toBe(true);
  });

  it('stays where only marks, words, prices or tolerances change', () => {
    const changes: readonly JobFile[] = [
      withRules(taken, { tolerances: { ...demo.library.rules.tolerances, position_mm: 3 } }),
      withRules(taken, { statements: ['another'], edition: '9' }),
      withConnection(taken, (one) => ({ ...one, key: 'another' })),
      { ...taken, job: { ...taken.job, project: { ...taken.job.project, name: 'Another' } } },
    ];
    for (const file of changes) expect(standingOf(file).kind).toBe('stands');
  });

  it('an own tolerance of an insert goes before it', () => {
    const own = {
      ...taken,
      job: {
        ...taken.job,
        castIns: taken.job.castIns.map((one) =>
          one.panel === PANEL && one.id === itemOf(taken).castIn.id ? { ...one, tolerance_mm: 2 } : one,
        ),
      },
    };
    expect(itemOf(own)).toMatchObject({ tolerance: 2, agreement: null });
  });

  it('opens only the inserts whose tolerance is another', () => {
    const [before, after] = [keysOf(demo), keysOf(taken)];
    const changed = [...before.keys].filter(([key, hash]) => after.keys.get(key) !== hash).map(([key]) => key);
    expect(changed).toEqual([itemOf(taken).castIn.key]);
    // Who agreed is no work of the yard: another letter opens nothing.
    const again = keysOf(withRules(taken, { positionZones: { ...AGREED, document: 'letter 13' } }));
    expect([...again.keys]).toEqual([...after.keys]);
  });

  it('is what an insert is judged by', () => {
    const judge = (file: JobFile) => {
      const plan = keysOf(file);
      const item = plan.setOut.items.find(({ connection }) => connection === MARK)!;
      const found = { x: item.taped[0] + 6.5, y: item.taped[1], level: null };
      return judgePlacing({ index: indexJob(file), bed: null }, plan, item, found, new Map());
    };
    expect(judge(demo).advice).not.toBe('good');
    expect(judge(taken)).toMatchObject({ advice: 'good', decides: 'nobody asks' });
  });

  it('is printed on the check sheet with who agreed', () => {
    const textFor = (file: JobFile) =>
      drawCheckSheets(setOutOf(file), { mark: PANEL, title: 'Check sheet', lines: [] }, PAPERS.A3, [], ['code'], {
        wanted: new Set(),
        voidWords: 'void',
      })
        .map(({ marks }) => textOf(marks))
        .join(' ');
    const { number } = itemOf(taken);
    expect(textFor(taken)).toContain(`± 7 along and across for no. ${number}`);
    expect(textFor(taken)).toContain('S. Specifier');
    expect(textFor(demo)).not.toContain('Agreed by');
  });
});
