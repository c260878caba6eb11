import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { onepour, ROOT } from './run-command.ts';

const DEMO = 'demo/job.json';
const TYPED = 'demo/typed-by-hand';

let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'check-'));
});
afterAll(() => rmSync(folder, { recursive: true }));

/** A copy of the job typed by hand with one file changed. */
function changeTyped(name: string, file: string, change: (text: string) => string): string {
  const path = join(folder, name);
  cpSync(join(ROOT, TYPED), path, { recursive: true });
  writeFileSync(join(path, file), change(readFileSync(join(path, file), 'utf8')));
  return path;
}

describe('onepour check', () => {
  it('answers the demo: every state apart, and no unchecked one among the passed', () => {
    const { status, stdout, stderr } = onepour(['check', DEMO, '--json']);
    expect(stderr).toBe('');
    expect(status).toBe(1);
    const { counts, connections } = JSON.parse(stdout);
    expect(connections).toHaveLength(60);
    const count = (state: string) => connections.filter((c: { state: string }) => c.state === state).length;
    for (const [state, number] of Object.entries(counts)) expect(count(state)).toBe(number);
    for (const state of ['passes', 'fails', 'not covered', 'strength not checked'])
      expect(counts[state]).toBeGreaterThan(0);
    for (const { state, ratio } of connections) {
      if (state === 'passes') expect(ratio).toBeLessThanOrEqual(1 + 1e-9);
      if (state === 'fails') expect(ratio === null || ratio > 1).toBe(true);
      if (state === 'strength not checked') expect(ratio).toBeNull();
    }
  });

  it('fails demo connections for at least five different reasons', () => {
    const { stdout } = onepour(['check', DEMO, '--json']);
    const modes = JSON.parse(stdout)
      .connections.filter((c: { state: string }) => c.state === 'fails')
      .map((c: { governing: { mode: string } }) => c.governing.mode);
    expect(new Set(modes).size).toBeGreaterThanOrEqual(5);
  });

  it('prints a table, reasons, assumptions, totals and cautions for a person', () => {
    const { stdout } = onepour(['check', DEMO]);
    for (const words of ['Taken as given', 'Why not', 'Not computed', '60 connections:', 'not lifting inserts'])
      expect(stdout).toContain(words);
    expect(stdout).toMatch(/NOT COVERED/);
    expect(stdout).toMatch(/strength not checked/);
  });

  it('says first what fails and where to go on, and last what many share', () => {
    const { stdout } = onepour(['check', DEMO]);
    const section = stdout.slice(stdout.indexOf('Why not, and'), stdout.indexOf('\nTaken as given'));
    const lines = section.split('\n');
    expect(lines[1]).toBe('  - C02: FAILS 107 %, concrete cone (wind out)');
    const failing = JSON.parse(onepour(['check', DEMO, '--json']).stdout).counts.fails;
    expect(lines.filter((line) => line.includes(': FAILS '))).toHaveLength(failing);
    expect(lines[failing + 1]).toContain('onepour choose JOB MARK tries other inserts');
    expect(section.trimEnd()).toMatch(/- C01, C02, C03, C05 and \d+ more: inserts: hot-dip (?:(?!\n {2}- )[\s\S])*$/);
    expect(section.indexOf('C25: mixed types')).toBeLessThan(section.indexOf('of cover behind'));
    expect(stdout).toMatch(/^60 connections: \d+ pass, \d+ FAIL, \d+ NOT COVERED, 1 strength not checked$/m);
  });

  it('checks by another edition, as --also does, and says so; step by step as well', () => {
    const by = ['--by', 'ACI 318M-19'];
    const { standard, counts } = JSON.parse(onepour(['check', DEMO, ...by, '--json']).stdout);
    expect(standard).toBe('ACI 318M-19');
    const compared = JSON.parse(onepour(['check', DEMO, '--also', 'ACI 318M-19', '--json']).stdout);
    expect({ standard, ...counts }).toEqual(compared.counts[1]);
    const one = onepour(['check', DEMO, ...by, '--connection', 'C31', '--steps']);
    expect(one.status).toBe(0);
    expect(one.stdout).toMatch(/^Connection C31, panel P09, outside, by ACI 318M-19: passes$/m);
    for (const words of ['Step by step', 'load factors of one code', 'not lifting inserts'])
      expect(one.stdout.replace(/\s+/g, ' ')).toContain(words);
    expect(JSON.parse(onepour(['check', DEMO, ...by, '--panel', 'P09', '--json']).stdout).connections).toHaveLength(3);
    // The job's own standard is no other: no caution of load factors.
    expect(onepour(['check', DEMO, '--by', 'EN 1992-4']).stdout).toBe(onepour(['check', DEMO]).stdout);
  });

  it.each([
    ['100', 100],
    ['80', 80],
    ['60', 60],
    // Narrower than that is not followed; what is no number is no width.
    ['40', 60],
    ['240', 100],
    ['wide', 100],
  ])('keeps every page within the width of COLUMNS=%s', (columns, width) => {
    for (const args of [
      ['check', DEMO],
      ['check', DEMO, '--connection', 'C02'],
      ['check', DEMO, '--also', 'ACI 318M-19', '--also', 'AS 5216', '--also', 'ACI 318-19'],
      ['carries', DEMO],
      ['carries', DEMO, 'C35'],
      ['choose', DEMO, 'C02', '--move', '150', '--drill', '--bolt-class', '--pour-in', '20'],
      ['editions'],
    ]) {
      const lines = onepour(args, undefined, columns).stdout.split('\n');
      for (const line of lines) {
        expect(line.length, `${args.join(' ')}: ${line}`).toBeLessThanOrEqual(width);
        expect(line).not.toMatch(/\u00a0/);
      }
      // A number and its unit stay together.
      for (const [k, line] of lines.entries())
        if (/\d$/.test(line)) expect(lines[k + 1], `${args.join(' ')}: ${line}`).not.toMatch(/^ *(%|N m|mm|MPa|days)/);
    }
  });

  it('reads the job typed by hand', () => {
    const { status, stdout } = onepour(['check', TYPED]);
    expect(status).toBe(1);
    expect(stdout).toContain('5 connections:');
  });

  it('shows one connection in full, and step by step', () => {
    const short = onepour(['check', DEMO, '--connection', 'C02']);
    expect(short.status).toBe(1);
    expect(short.stdout).toContain('Connection C02');
    expect(short.stdout).not.toContain('Step by step');
    const long = onepour(['check', DEMO, '--connection', 'C02', '--steps']);
    expect(long.stdout).toContain('Step by step');
    expect(long.stdout).toMatch(/N0_Rk,c = k1 \* sqrt\(f_ck\) \* h_ef\^1\.5/);
  });

  it('gives the forces on the inserts beside each result in JSON', () => {
    const { combinations } = JSON.parse(onepour(['check', DEMO, '--connection', 'C02', '--json']).stdout);
    // 90 kN at the middle of four inserts: a quarter each.
    expect(combinations[0].actions).toEqual(['5', '6', '7', '8'].map((id) => ({ id, N_kN: 22.5, Vx_kN: 0, Vy_kN: 0 })));
  });

  it('fits 100 signs', () => {
    for (const job of [DEMO, TYPED])
      for (const line of onepour(['check', job]).stdout.split('\n')) expect(line.length, line).toBeLessThanOrEqual(100);
  });

  it('ends with 0 where all passes, with 3 where strength was not checked', () => {
    const marks = (state: string) =>
      JSON.parse(onepour(['check', DEMO, '--json']).stdout)
        .connections.filter((c: { state: string }) => c.state === state)
        .map((c: { mark: string }) => c.mark);
    expect(onepour(['check', DEMO, '--connection', marks('passes')[0]]).status).toBe(0);
    const unchecked = onepour(['check', DEMO, '--connection', marks('strength not checked')[0]]);
    expect(unchecked.status).toBe(3);
    expect(unchecked.stdout).toContain('Resistances alone');
    expect(onepour(['check', DEMO, '--connection', marks('not covered')[0]]).status).toBe(1);
  });

  it('names file, row, column and value of every fault, and reads nothing by half', () => {
    const path = changeTyped('faults', 'inserts.csv', (text) =>
      text.replace(',500,2650,', ',5oo,2650,').replace('W1,2,fixing,M16x103', 'W7,2,fixing,M16x130'),
    );
    const { status, stdout, stderr } = onepour(['check', path]);
    expect(status).toBe(2);
    expect(stdout).toBe('');
    expect(stderr).toMatch(/inserts\.csv row 2, column x_mm: .*"5oo"/);
    expect(stderr).toMatch(/inserts\.csv row 3, column panel: .*W7/);
    expect(stderr).toMatch(/inserts\.csv row 3, column type: .*M16x130/);
    expect(stderr).toContain('nothing was read');
  });

  it('refuses what is not there, in one line', () => {
    for (const [args, expected] of [
      [['check', 'nowhere'], /nowhere: cannot be read/],
      [['check', DEMO, '--connection', 'X9'], /--connection X9: not in this job, expected one of C01, .*and 50 more/],
      [['check', DEMO, '--connection', 'C2'], /--connection C2: not in this job, did you mean C02\?/],
      [['check', DEMO, '--panel', 'p1'], /--panel p1: not in this job, did you mean P01\?/],
      [['check', DEMO, '--by', 'ACI 318'], /--by "ACI 318": not known, expected "EN 1992-4" or/],
      [['check', DEMO, '--by', 'AS 5216', '--also', 'ACI 318-19'], /--by: not together with --also/],
      [['check', DEMO, '--panel', 'X9'], /--panel X9: not in this job/],
      [['check', DEMO, '--steps'], /--steps: needs --connection/],
      [['check'], /missing required argument 'job'/],
    ] as const) {
      const { status, stderr } = onepour(args);
      expect(status).toBe(2);
      expect(stderr).toMatch(expected);
    }
  });
});

describe('onepour schedules', () => {
  it('writes a job as CSV that checks alike, and overwrites nothing', () => {
    const path = join(folder, 'written');
    expect(onepour(['schedules', DEMO, path]).status).toBe(0);
    const answer = (job: string) =>
      JSON.parse(onepour(['check', job, '--json']).stdout).connections.map(
        (c: { mark: string; state: string; ratio: number }) => [c.mark, c.state, c.ratio],
      );
    expect(answer(path)).toEqual(answer(DEMO));
    const again = onepour(['schedules', DEMO, path]);
    expect(again.status).toBe(2);
    expect(again.stderr).toContain('is not empty');
  });
});

describe('onepour tour', () => {
  it('shows the demo and says what to do next', () => {
    const { status, stdout } = onepour(['tour']);
    expect(status).toBe(0);
    expect(stdout).toContain('60 connections:');
    expect(stdout).toContain('5 connections:');
    expect(stdout).toMatch(/\nNext\n {2}npx onepour check demo\/job\.json --connection \S+ --steps/);
  });
});
