import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { onepour, ROOT } from './run-command.ts';

const DEMO = 'demo/job.json';
const TYPED = 'demo/typed-by-hand';
const ALL_CHANGES = ['--move', '150', '--drill', '--bolt-class'];

interface Ranked {
  readonly rank: number;
  readonly item: string;
  readonly ratio: number;
  readonly isAsDesigned: boolean;
  readonly delivery: { readonly kind: string };
}

interface Chosen {
  readonly mark: string;
  readonly state: string;
  readonly outcome: string;
  readonly ranked: readonly Ranked[];
  readonly rejected: readonly {
    readonly item: string;
    readonly why: string;
    readonly reasons: readonly string[];
    readonly ratio: number | null;
  }[];
}

let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'choose-'));
});
afterAll(() => rmSync(folder, { recursive: true }));

const ask = (args: readonly string[]) => JSON.parse(onepour([...args, '--json']).stdout);
const statesOf = (job: string): ReadonlyMap<string, string> =>
  new Map(ask(['check', job]).connections.map((one: { mark: string; state: string }) => [one.mark, one.state]));
const marksIn = (job: string, ...states: readonly string[]) =>
  [...statesOf(job)].filter(([, state]) => states.includes(state)).map(([mark]) => mark);

/** The demo job with some of it changed, in a file. */
function changeDemo(name: string, change: (document: ReturnType<typeof readDemo>) => void): string {
  const document = readDemo();
  change(document);
  const path = join(folder, name);
  writeFileSync(path, JSON.stringify(document));
  return path;
}

/** The demo with the first choice of one connection, in a file. */
function applyTo(mark: string, name: string): string {
  const path = join(folder, name);
  onepour(['choose', DEMO, mark, '--apply', path]);
  return path;
}

const readDemo = () => JSON.parse(readFileSync(join(ROOT, DEMO), 'utf8'));

describe('onepour choose on the demo', () => {
  it('ranks inserts for every failing connection, each other with its reason; the first makes the check pass', () => {
    const path = join(folder, 'swapped.json');
    const { connections, applied } = ask(['choose', DEMO, '--apply', path]) as {
      connections: readonly Chosen[];
      applied: string;
    };
    expect(applied).toBe(path);
    const catalogue = readDemo().library.catalogue.items.length;
    expect(connections.map(({ mark }) => mark)).toEqual(marksIn(DEMO, 'fails', 'not covered', 'cannot be computed'));
    for (const { mark, state, outcome, ranked, rejected } of connections) {
      if (state === 'fails') expect([mark, outcome]).toEqual([mark, 'chosen']);
      if (outcome === 'never covered') continue;
      expect(ranked.length + rejected.length).toBe(catalogue);
      for (const { ratio } of ranked) expect(ratio).toBeLessThanOrEqual(1 + 1e-9);
      for (const { why, reasons, ratio } of rejected)
        if (why === 'fails') expect(ratio === null || ratio > 1).toBe(true);
        else expect(reasons.join()).not.toBe('');
    }
    expect(marksIn(path, 'fails')).toEqual([]);
    const after = statesOf(path);
    for (const { mark, outcome } of connections) if (outcome === 'chosen') expect(after.get(mark)).toBe('passes');
  });

  it('cures all that an insert, a move, holes or bolts can cure, when they may be changed', () => {
    const path = join(folder, 'changed.json');
    const { status } = onepour(['choose', DEMO, ...ALL_CHANGES, '--apply', path]);
    const left = ask(['choose', DEMO, ...ALL_CHANGES]).connections.filter((one: Chosen) => one.outcome !== 'chosen');
    expect(status).toBe(left.length === 0 ? 0 : 1);
    // C12: the panel is too thin for all but F12-70, whose bolts want smaller holes: a new plate, which is not drilled.
    expect(left.map(({ mark, outcome }: Chosen) => [mark, outcome])).toEqual([
      ['C12', 'none passes'],
      ['C26', 'never covered'],
    ]);
    const [c12] = left as readonly Chosen[];
    expect(c12!.rejected.find(({ item }) => item === 'F12-70')!.reasons.join()).toContain(
      'a new plate with holes 14 mm (now 18)',
    );
    expect(marksIn(path, 'fails', 'cannot be computed')).toEqual([]);
    expect(marksIn(path, 'not covered')).toEqual(left.map(({ mark }: Chosen) => mark));
  });

  it('prints what a person needs, within 100 signs, every number with its unit', () => {
    const { stdout, stderr } = onepour(['choose', DEMO, ...ALL_CHANGES, '--pour-in', '20']);
    // A slow machine shows how far the work is; nothing else belongs there.
    for (const line of stderr.split('\n').filter((one) => one !== '')) expect(line).toMatch(/: \d+ of \d+ \(\d+ %\)$/);
    for (const words of [
      'which insert to choose, by EN 1992-4',
      'What does not fit, or is made for another role',
      'governing',
      ': look at: ',
      'As before, with the first choices',
      'mm beyond the least)',
      'an insert may stand 5 mm off',
      'How they are ranked',
      'look-alikes',
      'lead time',
      'days: LATE',
      'not known',
      ' EUR',
      'no price',
      'with holes drilled to 22 mm (now 18 mm)',
      'with move',
      'does not fit',
      'its maker rates it for brace',
      'No insert cures that: seismic',
      'the design engineer agrees',
      'are not lifting inserts',
    ])
      expect(stdout).toContain(words);
    for (const line of stdout.split('\n')) expect(line.length, line).toBeLessThanOrEqual(100);
  });

  it('names what does not fit once for a whole job, and in full for one connection', () => {
    const all = onepour(['choose', DEMO]).stdout;
    expect(all.match(/its maker rates it for brace/g)).toHaveLength(1);
    expect(all).toMatch(/^every connection +B20-138 /m);
    const one = onepour(['choose', DEMO, 'C02']).stdout;
    expect(one).toMatch(/^ {2}other role +B20-138 +its maker rates it for brace/m);
    expect(one).not.toContain('What does not fit, or');
    // 180 mm of panel less 140 mm of insert: 40 mm.
    expect(one).toMatch(/F16-140: look at: 40 mm of cover behind the foot: steel that can rust wants/);
    expect(one).toMatch(/F16-140: look at: inserts: hot-dip galvanising/);
    const { lookAt } = ask(['choose', DEMO, 'C02']).connections[0];
    const { warnings } = ask(['check', applyTo('C02', 'look.json'), '--connection', 'C02']);
    expect(lookAt.toSorted()).toEqual(warnings.toSorted());
  });

  it('says LATE where a first choice that is written cannot be had by the pour, and ranks as ever', () => {
    const path = join(folder, 'late.json');
    const { stdout } = onepour(['choose', DEMO, 'C02', '--pour-in', '20', '--apply', path]);
    expect(stdout).toContain('LATE, not to be had by the pour: C02');
    expect(stdout).toMatch(/^C02 +F16-103 +F16-140 +98 % +28 days: LATE +none$/m);
    expect(stdout).not.toContain('How they are ranked');
    const soon = onepour(['choose', DEMO, 'C02', '--pour-in', '30', '--apply', path, '--overwrite']).stdout;
    expect(soon).not.toContain('LATE');
  });

  it('chooses by another edition, which it does not write into the job', () => {
    const { connections, standard } = ask(['choose', DEMO, 'C31', '--by', 'ACI 318M-19']);
    expect(standard).toBe('ACI 318M-19');
    expect(connections[0].state).toBe('passes');
    const { stdout } = onepour(['choose', DEMO, 'C02', '--by', 'ACI 318M-19']);
    expect(stdout.replace(/\s+/g, ' ')).toContain("The job's own rules name EN 1992-4; this page is by ACI 318M-19");
    expect(stdout).not.toContain('--apply NEW.json');
  });

  it('says where nothing passes: what is nearest, what limits it, what helps, what was not tried', () => {
    const path = changeDemo('heavy.json', ({ job }) => {
      const failing = job.connections.find(({ mark }: { mark: string }) => mark === 'C02');
      for (const combination of failing.actions.combinations) combination.N_kN *= 5;
    });
    const { status, stdout } = onepour(['choose', path, 'C02']);
    expect(status).toBe(1);
    const plain = stdout.replace(/\s+/g, ' ');
    expect(plain).toMatch(/Nearest: \S+, \d+ %, concrete cone \(wind out\); at \d+(\.\d)? % of all loads it passes/);
    for (const words of [
      'What would help: longer inserts',
      'Not tried: moving the connection (--move MM)',
      '1 WITHOUT (C02)',
    ])
      expect(plain).toContain(words);
    expect(plain).toContain(`npx onepour choose ${path} C02 --move 100 --drill --bolt-class`);
    expect(onepour(['choose', path, 'C02', ...ALL_CHANGES]).stdout).not.toContain('Not tried');
  });

  it('chooses for one connection, a panel, or all', () => {
    const marksOf = (...args: readonly string[]) =>
      ask(['choose', DEMO, ...args]).connections.map(({ mark }: Chosen) => mark);
    const [passing] = marksIn(DEMO, 'passes');
    expect(marksOf(passing!)).toEqual([passing]);
    const ofPanel = readDemo().job.connections.filter(({ panel }: { panel: string }) => panel === 'P08');
    expect(marksOf('--panel', 'P08', '--all')).toEqual(ofPanel.map(({ mark }: { mark: string }) => mark));
    const states = statesOf(DEMO);
    const all = ask(['choose', DEMO, '--all']).connections as readonly Chosen[];
    expect(all).toHaveLength([...states.values()].filter((state) => state !== 'strength not checked').length);
    for (const { mark, ranked } of all) expect(ranked[0]?.isAsDesigned ?? false).toBe(states.get(mark) === 'passes');
  });

  it('tells what can be had by the pour only when a day is given', () => {
    const kinds = (...args: readonly string[]) =>
      new Set(
        ask(['choose', DEMO, ...args]).connections.flatMap((one: Chosen) => one.ranked.map((r) => r.delivery.kind)),
      );
    expect(kinds()).toEqual(new Set(['not asked']));
    expect(kinds('--pour-in', '20')).toEqual(new Set(['in time', 'late', 'not known']));
    expect(onepour(['choose', DEMO]).stdout).toContain('since no day is given');
  });

  it('changes nothing without being asked, and reads the job typed by hand', () => {
    const before = readFileSync(join(ROOT, DEMO), 'utf8');
    const { status, stdout } = onepour(['choose', TYPED, ...ALL_CHANGES]);
    expect(status).toBe(0);
    expect(stdout).toContain('Taken as given');
    expect(readFileSync(join(ROOT, DEMO), 'utf8')).toBe(before);
  });
});

describe('exit codes and empty states of onepour choose', () => {
  it('ends with 3 where no action is given, with the next step', () => {
    const [unchecked] = marksIn(DEMO, 'strength not checked');
    const { status, stdout } = onepour(['choose', DEMO, unchecked!]);
    expect(status).toBe(3);
    expect(stdout.replace(/\s+/g, ' ')).toContain(
      'Give loads, or what each insert must resist (required), then choose again',
    );
  });

  it('ends with 3 for a job without connections', () => {
    const path = changeDemo('empty.json', ({ job }) => {
      job.connections = [];
    });
    const { status, stdout } = onepour(['choose', path]);
    expect(status).toBe(3);
    expect(stdout).toContain('nothing to choose');
  });

  it('ends with 0 where all passes, and writes nothing', () => {
    const passing = new Set(marksIn(DEMO, 'passes'));
    const path = changeDemo('good.json', ({ job }) => {
      job.connections = job.connections.filter(({ mark }: { mark: string }) => passing.has(mark));
    });
    const target = join(folder, 'unneeded.json');
    const { status, stdout } = onepour(['choose', path, '--apply', target]);
    expect(status).toBe(0);
    expect(stdout).toContain('there is nothing to choose');
    expect(stdout).toContain('not written: no choice changes anything');
    expect(stdout).toContain(`npx onepour choose ${path} --all`);
    expect(() => readFileSync(target)).toThrow();
  });

  it('does not write over a file without being asked', () => {
    const path = join(folder, 'there.json');
    writeFileSync(path, 'mine');
    const refused = onepour(['choose', DEMO, 'C02', '--apply', path]);
    expect(refused.status).toBe(2);
    expect(refused.stderr).toMatch(/^--apply .*there\.json: is there already, expected a new name \(or --overwrite/);
    expect(readFileSync(path, 'utf8')).toBe('mine');
    const written = onepour(['choose', DEMO, 'C02', '--apply', path, '--overwrite']);
    expect(written.status).toBe(0);
    expect(written.stdout).toContain('Written to');
    expect(statesOf(path).get('C02')).toBe('passes');
  });

  const wrong: readonly (readonly [args: readonly string[], expected: RegExp])[] = [
    [[], /^missing required argument 'job'/],
    [['nowhere'], /^nowhere: cannot be read, expected a job file or a folder/],
    [[DEMO, 'X9'], /^X9: not in this job, expected one of C01, /],
    [[DEMO, 'C02', 'C09'], /^too many arguments/],
    [[DEMO, '--panel', 'X9'], /^--panel X9: not in this job, expected one of P01, /],
    [[DEMO, 'C02', '--panel', 'P01'], /^--panel P01: a connection is named \(C02\), expected one or the other/],
    [[DEMO, 'C02', '--all'], /^--all: a connection is named \(C02\)/],
    [[DEMO, '--move'], /^option '--move <mm>' argument missing/],
    [[DEMO, '--move', '0'], /^--move 0: expected whole millimetres, 1 to 1000/],
    [[DEMO, '--move', '-5'], /^(--move -5: expected|option '--move <mm>' argument missing|unknown option)/],
    [[DEMO, '--move', '12.5'], /^--move 12\.5: expected whole millimetres/],
    [[DEMO, '--move', '1001'], /^--move 1001: expected whole millimetres, 1 to 1000/],
    [[DEMO, '--move', '10 mm'], /^--move 10 mm: expected whole millimetres/],
    [[DEMO, '--pour-in', 'soon'], /^--pour-in soon: expected whole days, 0 to 3650/],
    [[DEMO, '--pour-in', '5000'], /^--pour-in 5000: expected whole days, 0 to 3650/],
    [[DEMO, '--pour-date', '2020-01-01'], /^--pour-date 2020-01-01: lies \d+ days back, expected today or later/],
    [[DEMO, '--pour-date', '2031-02-30'], /^--pour-date 2031-02-30: expected a day of the calendar as YYYY-MM-DD/],
    [[DEMO, '--pour-date', '30.5.2031'], /^--pour-date 30\.5\.2031: expected a day of the calendar/],
    [[DEMO, '--pour-in', '5', '--pour-date', '2031-05-30'], /^--pour-in and --pour-date: both are given/],
    [[DEMO, 'C2'], /^C2: not in this job, did you mean C02\?$/m],
    [[DEMO, '--by', 'ACI 318'], /^--by "ACI 318": not known, expected "EN 1992-4" or "AS 5216" or /],
    [[DEMO, '--by', 'AS 5216', '--apply', 'x.json'], /^--apply: not together with --by/],
    [[DEMO, '--overwrite'], /^--overwrite: needs --apply FILE\.json/],
    [[DEMO, '--apply', 'new.csv'], /^--apply new\.csv: expected a name that ends in \.json/],
    [[DEMO, '--apply', 'no/such/folder/new.json'], /^--apply no\/such\/folder\/new\.json: cannot be written/],
    [[DEMO, '--cheapest'], /^unknown option '--cheapest'/],
  ];
  it.each(wrong)('refuses %j in one line', (args, expected) => {
    const { status, stdout, stderr } = onepour(['choose', ...args]);
    expect(status).toBe(2);
    expect(stdout).toBe('');
    expect(stderr).toMatch(expected);
    expect(stderr.trimEnd().split('\n')).toHaveLength(1);
  });
});
