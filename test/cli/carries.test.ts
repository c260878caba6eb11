import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { onepour } from './run-command.ts';

const DEMO = 'demo/job.json';

interface Carried {
  readonly load: string;
  readonly toward?: string;
  readonly largest_kN: number | null;
  readonly perInsert_kN: number | null;
  readonly covered: boolean;
}

interface Listed {
  readonly mark: string;
  readonly carries: {
    readonly tension: Carried;
    readonly toward: Carried;
    readonly along: Carried;
    readonly notCovered: readonly string[];
  };
}

const ask = (args: readonly string[]) => JSON.parse(onepour([...args, '--json']).stdout);
const marksIn = (state: string): readonly string[] =>
  ask(['check', DEMO])
    .connections.filter((one: { state: string }) => one.state === state)
    .map((one: { mark: string }) => one.mark);

describe('onepour carries', () => {
  it('says what every connection carries, in a line each, within 100 signs', () => {
    const { status, stdout, stderr } = onepour(['carries', DEMO]);
    expect(stderr).toBe('');
    // Some demo connections are not covered.
    expect(status).toBe(1);
    for (const { mark } of ask(['check', DEMO]).connections) expect(stdout).toMatch(new RegExp(`^${mark} .*\\d`, 'm'));
    for (const words of [
      'N kN',
      'V kN toward',
      'V kN along',
      'None of it is a pass',
      'NOT COVERED',
      'not lifting inserts',
    ])
      expect(stdout.replaceAll(/\s+/g, ' ')).toContain(words);
    expect(stdout).not.toMatch(/\bpasses\b/);
    for (const text of stdout.split('\n')) expect(text.length, text).toBeLessThanOrEqual(100);
  });
  it('as JSON: the same numbers, "not covered" beside them', () => {
    const { standard, connections } = ask(['carries', DEMO]) as { standard: string; connections: readonly Listed[] };
    expect(standard).toBe('EN 1992-4');
    expect(connections).toHaveLength(60);
    const notCovered = connections.filter(({ carries }) => carries.notCovered.length > 0).map(({ mark }) => mark);
    expect(notCovered).toEqual(marksIn('not covered'));
    for (const { carries } of connections) {
      expect(carries.tension.largest_kN).toBeGreaterThan(0);
      expect(carries.tension.covered && carries.toward.covered && carries.along.covered).toBe(
        carries.notCovered.length === 0,
      );
    }
  });
  it('one connection in full: the group, the stated ratio, each insert', () => {
    const { status, stdout } = onepour(['carries', DEMO, 'C02']);
    expect(status).toBe(0);
    for (const words of [
      'With its own loads: FAILS 107 %, concrete cone (wind out)',
      'Basis: f_ck 40 MPa, cracked, at 28 days, no packers',
      'design (factored) kN',
      'No number here is a pass',
      'not lifting inserts',
      'tension',
      'shear toward 270°, edge at',
      'In the ratio of the stated loads',
      'wind out',
      'Each insert by itself',
    ])
      expect(stdout).toContain(words);
    for (const text of stdout.split('\n')) expect(text.length, text).toBeLessThanOrEqual(100);
    const { carries } = ask(['carries', DEMO, 'C02']);
    expect(carries.inserts.map(({ id }: { id: string }) => id)).toEqual(['5', '6', '7', '8']);
    expect(carries.group[0]).toMatchObject({ load: 'tension', governing: 'concrete-cone', covered: true });
    const check = ask(['check', DEMO, '--connection', 'C02']);
    expect(check.carriesAtMost).toEqual(carries);
    // Its ratio under that load is the inverse of the multiple: both modes are in step with the load.
    expect(carries.stated[0].times * check.ratio).toBeCloseTo(1, 8);
  });
  it('is part of the check of one connection, with or without an action, and never a pass', () => {
    const [unchecked] = marksIn('strength not checked');
    const { status, stdout } = onepour(['check', DEMO, '--connection', unchecked!]);
    expect(status).toBe(3);
    expect(stdout).toContain('strength not checked');
    expect(stdout).toContain('Carries at most');
    expect(stdout).not.toContain('In the ratio of the stated loads');
    const [uncovered] = marksIn('not covered');
    const text = onepour(['check', DEMO, '--connection', uncovered!]).stdout;
    expect(text).toContain('NOT COVERED: numbers to be judged, never a pass');
  });
  it('names packers in the basis, and the strength by the symbol of the edition', () => {
    const basis = (...args: readonly string[]) => onepour(['carries', DEMO, 'C36', ...args]).stdout;
    expect(basis()).toMatch(/Basis: f_ck \d+ MPa, cracked, at 28 days, 10 mm of packers/);
    expect(basis('--by', 'ACI 318M-19')).toMatch(/by ACI 318M-19 with engine[\s\S]*Basis: f'c \d/);
    expect(ask(['carries', DEMO, '--by', 'AS 5216']).standard).toBe('AS 5216');
  });
  it('refuses what is not there, in one line', () => {
    for (const [args, expected] of [
      [['carries', 'nowhere'], /^nowhere: cannot be read/],
      [['carries', DEMO, 'X9'], /^X9: not in this job, expected one of C01, .* C10 and 50 more$/m],
      [['carries', DEMO, 'c2'], /^c2: not in this job, did you mean C02\?$/m],
      [['carries'], /missing required argument 'job'/],
    ] as const) {
      const { status, stdout, stderr } = onepour(args);
      expect([status, stdout]).toEqual([2, '']);
      expect(stderr).toMatch(expected);
      expect(stderr.trimEnd()).not.toContain('\n');
    }
  });
  it('runs as a calculation, and names a wrong key in one line with exit code 2', () => {
    const page = readFileSync(new URL('../../docs/calculations.md', import.meta.url), 'utf8');
    const [example] = [...page.matchAll(/```json\n([\s\S]*?)```/g)]
      .map(([, text]) => JSON.parse(text!))
      .filter(({ calc }) => calc === 'carries-at-most');
    const run = (changes: object) => onepour(['calc', '-'], JSON.stringify({ ...example, ...changes }));
    expect(JSON.parse(run({}).stdout).largest_kN).toBeGreaterThan(0);
    const steps = onepour(['calc', '--steps', '-'], JSON.stringify(example)).stdout;
    expect(steps).toMatch(
      /^carries at most \d+\.\d kN on the group \(N [^)]* kN\), design load\nlimited by .* \[EN 1992-4:2018 7\.2\.3\.1\]/,
    );
    expect(steps).toContain('100 %');
    expect(steps).toContain('Step by step');
    for (const [changes, expected] of [
      [{ direction: undefined }, 'direction: expected direction { N, Vx, Vy }, or actions to be multiplied\n'],
      [{ direction: { N: 0, Vx: 0, Vy: 0 } }, 'direction: N, Vx and Vy are all 0, expected at least one that is not\n'],
      [
        { direction: { N: 1, Vx: 0 } },
        'direction.Vy: expected the share of the shear along y, a number from -1000000 to 1000000\n',
      ],
      [
        { actions: [] },
        'actions: insert "A" has no action, expected one for each insert (0 where it carries nothing)\n',
      ],
    ] as const) {
      const { status, stdout, stderr } = run(changes);
      expect([status, stdout, stderr]).toEqual([2, '', expected]);
    }
  });
});
