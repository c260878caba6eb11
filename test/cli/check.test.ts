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
    expect(connections).toHaveLength(40);
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
    for (const words of ['Taken as given', 'Why not', 'Not computed', '40 connections:', 'not lifting inserts'])
      expect(stdout).toContain(words);
    expect(stdout).toMatch(/NOT COVERED/);
    expect(stdout).toMatch(/strength not checked/);
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
      [['check', DEMO, '--connection', 'X9'], /--connection X9: not in this job/],
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
    expect(stdout).toContain('40 connections:');
    expect(stdout).toContain('5 connections:');
    expect(stdout).toMatch(/\nNext\n {2}npx onepour check demo\/job\.json --connection \S+ --steps/);
  });
});
