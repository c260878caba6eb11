import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parse } from 'csv-parse/sync';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { partsJob } from '../assess/parts/parts-job.ts';
import { sampleCastIn, sampleJob } from '../job/sample-job.ts';
import { onepour } from './run-command.ts';

let folder = '';
let job = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'parts-'));
  job = write('job.json', JSON.stringify(sampleJob(partsJob())));
});
afterAll(() => rmSync(folder, { recursive: true }));

function write(name: string, text: string): string {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
}

const ask = (...args: readonly string[]) => onepour(['parts', ...args, '--today', '2026-11-25']);
const rowsOf = (path: string): readonly Record<string, string>[] => parse(readFileSync(path), { columns: true });

describe('onepour parts', () => {
  it('lists the job: pours, needs, what is not decided, look-alikes, and what to do next', () => {
    const { status, stdout } = ask(job);
    expect(status).toBe(3);
    // By hand: 10 F16 and 1 spare; its lead time is 14 days before the eve of 2026-12-14, when the bench is laid.
    expect(stdout).toMatch(/F16 +Ferrule M16: M16 x +10 +1 +11 +2026-11-29/);
    expect(stdout).toMatch(/T1 +2026-12-14 +Bed 1 +2 x P1, 1 x P2 +9/);
    expect(stdout).toContain('PLATE-16 comes back: 10 uses, at most 10 at once (back after 2 days), 1 lost');
    expect(stdout).toContain('NOT DECIDED');
    expect(stdout).toContain('look alike');
    expect(stdout).toContain('onepour parts');
    expect(stdout).toContain('Fixing inserts are not lifting inserts');
  });

  it('sets needs against stock: what is short, by when, and what to order', () => {
    const stock = write('stock.csv', 'id,in_stock,on_order,arrives\nF16,8,,\nNAIL,100,,\n');
    const { status, stdout } = ask(job, '--stock', stock);
    expect(status).toBe(1);
    expect(stdout).toMatch(/F16 +T2 +2026-12-15 +11 +8 +3 +2026-11-30/);
    expect(stdout).not.toMatch(/F16 +T1/);
    expect(stdout).toContain('SHORT of');
    const late = onepour(['parts', job, '--stock', stock, '--today', '2026-12-02']).stdout;
    expect(late).toContain('TOO LATE: was 2026-11-30');
  });

  it('lays out the bench and the bags of a pour', () => {
    const { status, stdout } = ask(job, '--pour', 'T2');
    expect(status).toBe(3);
    expect(stdout).toContain('Bench of pour T2, 2026-12-15, Bed 1');
    expect(stdout).toContain('P1 no. 3, revision not issued, pour T2, 2026-12-15, Bed 1');
    expect(stdout).toContain('in the bag  3 F16, 1 F16L, 1 bar 10 x 250, 6 NAIL, 3 PLATE-16');
    expect(stdout).not.toContain('washer');
  });

  it('lists one casting of a panel with what goes to the site', () => {
    const { status, stdout } = ask(job, '--panel', 'P2');
    expect(status).toBe(0);
    expect(stdout).toContain('One casting of P2: pour T1 on Bed 1, no. 1');
    expect(ask(job, '--panel', 'P1').stdout).toContain('with the panel to the site');
  });

  it('sets drawing, schedule and order side by side', () => {
    const orders = write('orders.csv', 'id,ordered,delivered\nF16,9,4\nF61,3,\n');
    const { status, stdout } = ask(job, '--orders', orders);
    expect(status).toBe(1);
    expect(stdout).toMatch(/F16 +10 +10 +11 +9 +4 +ordered 1 fewer/);
    expect(stdout).toContain('F61: ordered, but nothing in this job has that id; did you mean F16?');
  });

  it('says what to do where there is nothing yet', () => {
    const bare = write('bare.json', JSON.stringify(sampleJob(partsJob({ castIns: [], connections: [], pours: [] }))));
    const { status, stdout } = ask(bare);
    expect(status).toBe(0);
    expect(stdout).toContain('Add rows to inserts.csv');
    const castIns = [sampleCastIn('1', 900, 500, { holding: 'NAILED' })];
    const unplanned = write(
      'unplanned.json',
      JSON.stringify(sampleJob(partsJob({ castIns, connections: [], pours: [] }))),
    );
    expect(ask(unplanned).stdout).toContain('Add rows to pours.csv');
    expect(ask(unplanned, '--panel', 'P2').stdout).toContain('Add rows to inserts.csv');
    const csv = join(folder, 'none.csv');
    expect(ask(unplanned, '--csv', csv, '--list', 'bench').stdout).toContain('no pour is planned');
  });

  it.each([undefined, '60', '72'])('keeps to the width of the page (%s)', (columns) => {
    for (const args of [[job], [job, '--pour', 'T1'], [job, '--panel', 'P1']]) {
      const { stdout } = onepour(['parts', ...args, '--today', '2026-11-25'], undefined, columns);
      const own = stdout.split('\n').filter((line) => !line.includes(folder));
      expect(Math.max(...own.map((line) => line.length))).toBeLessThanOrEqual(Number(columns ?? 100));
      expect(stdout).not.toMatch(/ $/m);
    }
  });

  it('gives the same as JSON, without the set-outs', () => {
    const whole = JSON.parse(ask(job, '--json').stdout);
    expect(whole).toMatchObject({ job: 'Sample', today: '2026-11-25', state: 'open', pour: null, panel: null });
    expect(whole.needs.find((need: { kind: { id: string } }) => need.kind.id === 'F16').needed).toBe(11);
    expect(whole.pours.map(({ id }: { id: string }) => id)).toEqual(['T1', 'T2']);
    expect(JSON.stringify(whole)).not.toContain('setOut');
    expect(JSON.parse(ask(job, '--panel', 'P1', '--json').stdout)).not.toHaveProperty('needs');
  });
});

describe('lists as CSV', () => {
  it('hold parts of job, pours and panels that add up', () => {
    const csv = join(folder, 'parts-list.csv');
    const { status, stdout } = ask(job, '--csv', csv);
    expect(status).toBe(3);
    expect(stdout).toContain(`rows of parts written to ${csv}`);
    const of = (scope: string) => rowsOf(csv).filter((row) => row.scope === scope && row.id === 'F16');
    expect(of('job').map(({ count }) => Number(count))).toEqual([10]);
    expect(of('pour').map(({ count, order_by }) => [count, order_by])).toEqual([
      ['7', '2026-11-29'],
      ['3', '2026-11-30'],
    ]);
    const panels = of('panel').map(({ count, castings }) => Number(count) * Number(castings));
    expect(panels.reduce((sum, one) => sum + one, 0)).toBe(10);
  });

  it('hold the bench of a pour, and a label for each piece', () => {
    const bench = join(folder, 'bench.csv');
    ask(job, '--pour', 'T1', '--csv', bench, '--list', 'bench');
    expect(rowsOf(bench)[0]).toMatchObject({ pour: 'T1', id: 'F16', count: '7', spares: '1' });
    const labels = join(folder, 'labels.csv');
    ask(job, '--panel', 'P2', '--csv', labels, '--list', 'labels');
    expect(rowsOf(labels).map(({ panel, serial, id, count }) => [panel, serial, id, count])).toEqual([
      ['P2', '1', 'F16', '1'],
      ['P2', '1', 'NAIL', '2'],
      ['P2', '1', 'PLATE-16', '1'],
    ]);
  });

  it('never write over a file unless asked to', () => {
    const csv = write('mine.csv', 'my own');
    const refused = ask(job, '--csv', csv);
    expect(refused.status).toBe(2);
    expect(refused.stderr).toContain('is there already');
    expect(readFileSync(csv, 'utf8')).toBe('my own');
    expect(ask(job, '--csv', csv, '--overwrite').status).toBe(3);
    expect(readFileSync(csv, 'utf8')).toMatch(/^scope,pour/);
  });
});

describe('a call that cannot be used is refused in one line', () => {
  it.each<[readonly string[], string]>([
    [['--pour', 'T9'], '--pour T9: not in this job, expected one of T1, T2'],
    [['--panel', 'Q7'], '--panel Q7: not in this job, expected one of P1, P2, P3'],
    [['--pour', 'T2', '--panel', 'P2'], '--panel P2: not cast in pour T2, expected one of P1'],
    [['--today', '2026-02-30'], '--today 2026-02-30: expected a day of the calendar as YYYY-MM-DD, such as 2031-05-30'],
    [['--today', 'soon'], '--today soon: expected a day of the calendar as YYYY-MM-DD, such as 2031-05-30'],
    [['--csv', 'parts.txt'], '--csv parts.txt: expected a name that ends in .csv, so that a spreadsheet opens it'],
    [
      ['--csv', 'no/such/parts.csv'],
      '--csv no/such/parts.csv: cannot be written, expected a file in a folder that is there',
    ],
    [['--csv', 'a.csv', '--json'], '--csv: not together with --json, one form at a time'],
    [['--csv', 'a.csv', '--list', 'nails'], '--list nails: expected one of parts, bench, labels'],
    [['--list', 'bench'], '--list: needs --csv FILE.csv, the file to write'],
    [['--overwrite'], '--overwrite: needs --csv FILE.csv, the file to write'],
    [
      ['--csv', 'a.csv', '--list', 'bench', '--panel', 'P1'],
      '--list bench: not together with --panel, since a bench is for a whole pour',
    ],
    [['--stock', 'no-such.csv'], '--stock no-such.csv: cannot be read, expected a CSV file (docs/parts.md)'],
    [
      ['--stock', 's.csv', '--panel', 'P1'],
      '--stock: not together with --panel, since the stock is shared by all panels',
    ],
    [
      ['--orders', 'o.csv', '--pour', 'T1'],
      '--orders: not together with --panel or --pour, since an order is for the whole job',
    ],
  ])('%j', (args, line) => {
    const { status, stdout, stderr } = onepour(['parts', job, ...args]);
    expect({ status, stdout, stderr: stderr.trimEnd() }).toEqual({ status: 2, stdout: '', stderr: line });
    expect(existsSync('a.csv')).toBe(false);
  });

  it('with each fault of a list in a line of its own', () => {
    const stock = write('wrong.csv', 'id,in_stock\nF16,many\nNAIL,-1\n');
    const { status, stderr } = ask(job, '--stock', stock);
    expect(status).toBe(2);
    expect(stderr.trimEnd().split('\n')).toEqual([
      'wrong.csv row 2, column in_stock: "many" is not a number; expected a number',
      'wrong.csv row 3, column in_stock: -1 is no count; expected a whole number, 0 or more',
      `${stock}: 2 faults, nothing was read`,
    ]);
  });
});
