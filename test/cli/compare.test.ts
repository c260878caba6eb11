import { describe, expect, it } from 'vitest';
import { onepour } from './run-command.ts';

const DEMO = 'demo/job.json';
const ALSO = ['--also', 'ACI 318M-19'];

interface Compared {
  readonly mark: string;
  readonly differs: boolean;
  readonly answers: readonly {
    readonly standard: string;
    readonly state: string;
    readonly ratio: number | null;
    readonly reasons: readonly string[];
  }[];
}

const read = (args: readonly string[]) => JSON.parse(onepour(args).stdout);

describe('onepour check --also', () => {
  const all = onepour(['check', DEMO, ...ALSO]);

  it('shows each connection by each edition, what differs, and why not by each', () => {
    expect(all.stderr).toBe('');
    expect(all.status).toBe(1);
    for (const words of [
      'side by side by EN 1992-4, ACI 318M-19',
      'What differs',
      'Why not, by EN 1992-4',
      'Why not, by ACI 318M-19',
      'EN 1992-4    60 connections: ',
      'ACI 318M-19  60 connections: ',
      'load factors of one code do not go with the resistances of another',
    ])
      expect(all.stdout.replaceAll(/\n {2,4}(?! *-)/g, ' ')).toContain(words);
  });
  it('says which edition each governing mode is of, and nothing twice where they agree', () => {
    const plain = all.stdout.replaceAll(/\s+/g, ' ');
    expect(plain).toContain('EN 1992-4: tension with shear, concrete; ACI 318M-19: tension with shear');
    expect(all.stdout).toMatch(/^C02 .*DIFFERS: concrete cone$/m);
    expect(all.stdout).toMatch(/^C03 .* bending of the plate$/m);
    expect(plain).toContain('- C02: FAILS 107 %, concrete cone (wind out)');
  });
  it('names the farthest ratios only where they lie a point of per cent apart', () => {
    // C03: the plate's bending governs by both, 40 %.
    expect(onepour(['check', DEMO, ...ALSO, '--connection', 'C03']).stdout).not.toContain('ratios most of all');
    expect(onepour(['check', DEMO, ...ALSO, '--connection', 'C02']).stdout).toContain(
      'ratios most of all in C02: 107 %',
    );
  });
  it('fits 100 signs with two editions and with four', () => {
    const four = onepour(['check', DEMO, ...ALSO, '--also', 'AS 5216', '--also', 'ACI 318-19']).stdout;
    for (const text of [...all.stdout.split('\n'), ...four.split('\n')])
      expect(text.length, text).toBeLessThanOrEqual(100);
  });
  it('in JSON: the first edition answers as the job alone does', () => {
    const { standards, connections, counts } = read(['check', DEMO, ...ALSO, '--json']) as {
      standards: readonly string[];
      connections: readonly Compared[];
      counts: readonly Record<string, unknown>[];
    };
    const alone = read(['check', DEMO, '--json']);
    expect(standards).toEqual(['EN 1992-4', 'ACI 318M-19']);
    expect(counts[0]).toEqual({ standard: 'EN 1992-4', ...alone.counts });
    for (const [k, { mark, answers, differs }] of connections.entries()) {
      const { state, ratio, mark: known } = alone.connections[k];
      expect([mark, answers[0]!.state, answers[0]!.ratio]).toEqual([known, state, ratio]);
      expect(differs).toBe(answers[0]!.state !== answers[1]!.state);
    }
    // Inserts whose document is for EN 1992-4 alone never pass by ACI, and say so beside their numbers.
    for (const { answers } of connections.filter(({ answers }) =>
      answers[1]!.reasons.some((text) => text.includes('no qualification document for ACI 318')),
    ))
      expect(answers[1]!.state).not.toBe('passes');
  });
  it('one connection: mode by mode as well', () => {
    const { stdout } = onepour(['check', DEMO, ...ALSO, '--connection', 'C02']);
    expect(stdout).toContain('Mode by mode');
    expect(stdout).toMatch(/^concrete cone +107 % +\d+ %$/m);
    expect(stdout).toContain('EN 1992-4    1 connection: 1 FAILS');
    const { modes, connections } = read(['check', DEMO, ...ALSO, '--connection', 'C02', '--json']);
    expect(connections).toHaveLength(1);
    expect(modes[0].mode).toBe('concrete-cone');
  });
  it('one panel', () => {
    const { connections } = read(['check', DEMO, ...ALSO, '--panel', 'P01', '--json']);
    expect(connections.map(({ mark }: Compared) => mark)).toEqual(['C01', 'C02', 'C03', 'C04']);
  });
  it('refuses a name that is not known, the own one, one named twice, and steps', () => {
    for (const [args, expected] of [
      [['--also', 'ACI 318'], '--also "ACI 318": not known, expected "AS 5216" or "ACI 318-19" or "ACI 318M-19"\n'],
      [
        ['--also', 'EN 1992-4'],
        `--also "EN 1992-4": the standard of the job's own rules, expected "AS 5216" or "ACI 318-19" or "ACI 318M-19"\n`,
      ],
      [[...ALSO, ...ALSO], '--also "ACI 318M-19": named twice, expected "AS 5216" or "ACI 318-19"\n'],
      [[...ALSO, '--connection', 'C02', '--steps'], '--steps: not together with --also, one edition at a time\n'],
      [
        [...ALSO, '--connection', 'X9'],
        expect.stringMatching(/^--connection X9: not in this job, expected one of C01, .*\n$/),
      ],
    ] as const)
      expect(onepour(['check', DEMO, ...args])).toEqual({ status: 2, stdout: '', stderr: expected });
  });
});
