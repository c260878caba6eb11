import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { onepour } from './run-command.ts';

const DEMO = 'demo/job.json';
const folder = mkdtempSync(join(tmpdir(), 'onepour-handed-'));
afterAll(() => rmSync(folder, { recursive: true }));

describe('onepour handed', () => {
  const path = join(folder, 'with-partner.json');
  it('writes the job with the partner, says what to look at, and makes it anew the same', () => {
    const { status, stdout, stderr } = onepour(['handed', DEMO, 'P06', 'P06-H', '--out', path]);
    expect([status, stderr]).toEqual([0, '']);
    expect(stdout.split('\n')).toEqual([
      'P06-H, handed partner of P06, made: 12 cast-in items, 4 connections; threads stay right-handed.',
      expect.stringMatching(/^Look at: item 12 \(Grout tube 60\): see whether it is the same mirrored\.$/),
      `Written to ${path}`,
      '',
    ]);
    expect(onepour(['check', path, '--panel', 'P06-H']).stdout).toContain('C18-H');
    const text = readFileSync(path, 'utf8');
    const again = onepour(['handed', path, 'P06', 'P06-H', '--out', path, '--overwrite']);
    expect(again.stdout).toMatch(/^P06-H, handed partner of P06, made anew: /);
    expect(readFileSync(path, 'utf8')).toBe(text);
  });
  it.each<readonly [readonly string[], RegExp]>([
    [['P99', 'P99-H', '--out', join(folder, 'a.json')], /^demo\/job\.json: there is no panel P99; /],
    [
      ['P06', 'P07', '--out', join(folder, 'a.json')],
      /panel P07 is there already and no partner of P06; expected a new mark/,
    ],
    [['P06', 'P06-H', '--out', join(folder, 'a.csv')], /^--out .*a\.csv: expected a name that ends in \.json/],
    [['P06', 'P06-H', '--out', DEMO], /^--out demo\/job\.json: is there already, expected a new name \(or --overwrite/],
    [
      ['P06', 'P06-H', '--out', join(folder, 'no', 'a.json')],
      /^--out .*: cannot be written, expected a file in a folder/,
    ],
    [['P06', 'P06-H'], /required option '--out <file>' not specified/],
  ])('refuses %j in one line', (args, line) => {
    const { status, stdout, stderr } = onepour(['handed', DEMO, ...args]);
    expect([status, stdout]).toEqual([2, '']);
    expect(stderr).toMatch(line);
    expect(stderr.trimEnd().split('\n')).toHaveLength(1);
  });
});
