import { describe, expect, it } from 'vitest';
import { arrangePanels } from '../../src/assess/arrange-panels.ts';
import { assessJob } from '../../src/assess/assess-job.ts';
import { findNextStep } from '../../src/assess/next-step.ts';
import { listContents, listPanelStatus } from '../../src/assess/panel-status.ts';
import { drawThumbnail } from '../../src/drawing/thumbnail.ts';
import type { JobFile } from '../../src/job/documents/job-file.ts';
import { listIssueWarnings } from '../../src/say/issue-words.ts';
import { tellJob, tellNextStep } from '../../src/say/next-step-words.ts';
import { demo } from '../job/edit/demo.ts';

const answered = assessJob(demo).connections;
const answers = new Map(demo.job.connections.map(({ key }, k) => [key, answered[k]!]));
const statuses = listPanelStatus(listContents(demo), answers);
const of = (mark: string, panels = statuses) => panels.find(({ panel }) => panel.mark === mark)!;
const change = (job: Partial<JobFile['job']>): JobFile => ({ ...demo, job: { ...demo.job, ...job } });

describe('what is known of each panel', () => {
  it('counts every connection once, under its own state', () => {
    for (const { counts, connections, computing } of statuses) {
      expect(computing).toBe(0);
      expect(Object.values(counts).reduce((sum, one) => sum + one, 0)).toBe(connections.length);
    }
    // What the check at the shell says of the demo: 6 fail, 5 not covered, 1 without loads.
    const total = (state: keyof (typeof statuses)[number]['counts']) =>
      statuses.reduce((sum, { counts }) => sum + counts[state], 0);
    expect([total('fails'), total('not covered'), total('strength not checked')]).toEqual([6, 5, 1]);
  });

  it('holds a panel to be no better than its worst connection, and says the one thing to do next', () => {
    expect(findNextStep(of('P01'))).toMatchObject({ kind: 'fails', connection: { mark: 'C02' }, more: 0 });
    expect(findNextStep(of('P04'))).toMatchObject({ kind: 'not covered', connection: { mark: 'C12' } });
    expect(findNextStep(of('P02'))).toMatchObject({ kind: 'strength not checked', connection: { mark: 'C08' } });
    expect(findNextStep(of('P07'))).toEqual({ kind: 'pour', pour: 'T14' });
    expect(findNextStep(of('P05'))).toEqual({ kind: 'unplanned' });
  });

  it('lists under "passes" only panels whose every connection does, under any other state those with one', () => {
    const marks = (state: 'passes' | 'fails') =>
      arrangePanels(statuses, { words: '', state, order: 'job' }).map(({ panel }) => panel.mark);
    expect(marks('fails')).toContain('P01');
    expect(marks('passes')).toContain('P07');
    const passing = statuses.filter(({ worst }) => worst?.state === 'passes').map(({ panel }) => panel.mark);
    expect(marks('passes')).toEqual(passing);
  });

  it('calls nothing done while answers are missing; a failure is told at once', () => {
    const some = new Map(
      [...answers].filter(([key]) => key !== demo.job.connections.find(({ panel }) => panel === 'P07')!.key),
    );
    expect(findNextStep(of('P07', listPanelStatus(listContents(demo), some)))).toEqual({ kind: 'computing' });
    const failing = demo.job.connections.find(({ mark }) => mark === 'C02')!.key;
    const only = new Map([[failing, answers.get(failing)!]]);
    expect(findNextStep(of('P01', listPanelStatus(listContents(demo), only)))).toMatchObject({ kind: 'fails' });
  });

  it('tells inserts in no connection, undecided holding and empty panels apart', () => {
    const none = listPanelStatus(listContents(change({ connections: [] })), answers);
    expect(findNextStep(of('P07', none))).toEqual({ kind: 'loose', inserts: 8 });
    const castIns = demo.job.castIns.map((one) => ({ ...one, holding: null }));
    const unheld = of('P07', listPanelStatus(listContents(change({ castIns })), answers));
    expect(findNextStep(unheld)).toEqual({ kind: 'unheld', inserts: 8 });
    const empty = of('P07', listPanelStatus(listContents(change({ castIns: [], connections: [] })), answers));
    expect(findNextStep(empty)).toEqual({ kind: 'empty' });
  });

  it('is told in words, never as a pass where it is none', () => {
    const tell = (mark: string) => tellNextStep(findNextStep(of(mark)), null);
    expect(tell('P01')).toBe('C02 fails by concrete cone, 107 %: move it from the edge or take a longer insert');
    expect(tellNextStep(findNextStep(of('P01')), 'P99')).toBe('C02 fails by concrete cone, 107 %: change it in P99');
    expect(tell('P02')).toBe('no load is given for C08: strength not checked');
    expect(tell('P07')).toBe('next: the folder of pour T14');
    expect(tellJob(statuses)).toMatch(
      /^Of 14 panels, 6 have connections that fail, 2 have some that are not covered, 1 has strength not checked\. Begin with P09: C31 fails/,
    );
    expect(tellJob(statuses.filter(({ panel }) => panel.mark === 'P07'))).toBe('All 3 connections pass.');
    expect(tellJob(listPanelStatus(listContents(demo), new Map()))).toMatch(/^60 connections being computed/);
  });

  it('names before an issue every connection that does not pass, by state', () => {
    expect(listIssueWarnings(answered).map(({ text }) => text)).toEqual([
      expect.stringMatching(/^6 fail: C02, C09, /),
      expect.stringMatching(/^5 not covered: C12, /),
      '1 strength not checked: C08',
    ]);
  });
});

describe('the list of panels', () => {
  const marks = (...choice: Parameters<typeof arrangePanels>) =>
    arrangePanels(...choice).map(({ panel }) => panel.mark);

  it('has what needs work first: states by need, then ratios', () => {
    const need = marks(statuses, { words: '', state: null, order: 'need' });
    expect(need.slice(0, 6).sort()).toEqual(
      statuses
        .filter(({ counts }) => counts.fails > 0)
        .map(({ panel }) => panel.mark)
        .sort(),
    );
    expect(need.slice(6, 9).sort()).toEqual(['P02', 'P04', 'P08']);
    expect(need[8]).toBe('P02');
    const ratios = arrangePanels(statuses, { words: '', state: null, order: 'ratio' }).map(
      ({ highest }) => highest?.ratio ?? -1,
    );
    expect(ratios).toEqual([...ratios].sort((a, b) => b - a));
  });

  it('is searched by marks, connections, types and pours, every word', () => {
    expect(marks(statuses, { words: ' c12 ', state: null, order: 'job' })).toEqual(['P04']);
    expect(marks(statuses, { words: 'T14 p07', state: null, order: 'job' })).toEqual(['P07']);
    expect(marks(statuses, { words: '', state: 'strength not checked', order: 'job' })).toEqual(['P02']);
  });
});

describe('a thumbnail', () => {
  it('keeps the proportions of the panel within its box, with one path a state', () => {
    const { panel, castIns } = of('P01');
    const drawn = drawThumbnail(panel, castIns, ({ id }) => (id === '1' ? 'fails' : 'passes'), {
      width: 128,
      height: 76,
    });
    expect(drawn.width).toBeLessThanOrEqual(128.001);
    expect(drawn.height).toBeLessThanOrEqual(76.001);
    // 6000 × 3200 mm; marks of 2.1 stand over each side.
    expect((drawn.width - 4.2) / (drawn.height - 4.2)).toBeCloseTo(6000 / 3200, 6);
    expect(drawn.ground.match(/Z/g)).toHaveLength(1 + panel.openings_mm.length);
    expect(drawn.marks.map(({ state }) => state).sort()).toEqual(['fails', 'passes']);
  });
});
