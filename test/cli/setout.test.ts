import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseString } from 'dxf';
import DxfParser from 'dxf-parser';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { planPour } from '../../src/assess/set-out/plan-pour.ts';
import { indexJob } from '../../src/job/job-index.ts';
import { readPdf } from '../files/read-pdf.ts';
import { sampleJob } from '../job/sample-job.ts';
import { readDemo } from './folder-reading.ts';
import { onepour } from './run-command.ts';

const DEMO = 'demo/job.json';
let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'setout-'));
});
afterAll(() => rmSync(folder, { recursive: true }));
const at = (name: string) => join(folder, name);

const index = indexJob(readDemo('job.json'));
const setOuts = index.file.job.pours.flatMap(({ id }) => planPour(index, id).setOuts);

describe('onepour setout', () => {
  it('lists each panel on a line, and says how to see one in full', () => {
    const { status, stdout } = onepour(['setout', DEMO]);
    expect(status).toBe(1);
    expect(stdout).toMatch(/P13 +Bed 2 +outside +7 +13/);
    expect(stdout).toContain('onepour setout JOB PANEL');
  });

  it('says of one panel which face is down, where the datum is, and each place in whole mm', () => {
    const page = onepour(['setout', DEMO, 'P13']).stdout;
    const stdout = page.replace(/\s+/g, ' ');
    expect(stdout).toContain('OUTSIDE FACE DOWN (mould face)');
    expect(stdout).toContain('Datum corner: gate stop end / slipway rail');
    expect(stdout).not.toMatch(/\b(left|right)\b|\b(near|far) face\b/i);
    const first = setOuts
      .find(({ panel }) => panel.mark === 'P13')!
      .items.find(({ printed }) => printed.kind === 'plan')!;
    expect(first.printed).toEqual({ kind: 'plan', x: expect.any(Number), y: expect.any(Number) });
    if (first.printed.kind === 'plan')
      expect(stdout).toMatch(new RegExp(`${first.printed.x} +${first.printed.y} +± 5`));
  });

  it.each(setOuts.map((setOut) => ({ mark: setOut.panel.mark, setOut })))(
    'writes the plan of $mark as DXF that two readers find the same places in',
    ({ mark, setOut }) => {
      const path = at(`${mark}.dxf`);
      onepour(['setout', DEMO, mark, '--dxf', path, '--overwrite']);
      const text = readFileSync(path, 'utf8');
      const places = (found: readonly { readonly x: number; readonly y: number }[]) =>
        found.map(({ x, y }) => [Number(x.toFixed(3)), Number(y.toFixed(3))]);
      const expected = setOut.items.map(({ plan: [x, y] }) => [Number(x.toFixed(3)), Number(y.toFixed(3))]);
      const one = new DxfParser().parseSync(text)!;
      const inserts = one.entities.filter(({ type }) => type === 'INSERT') as unknown as {
        position: { x: number; y: number };
      }[];
      expect(places(inserts.map(({ position }) => position))).toEqual(expected);
      const other = parseString(text);
      const others = other.entities.filter(({ type }) => type === 'INSERT').map(({ x, y }) => ({ x: x!, y: y! }));
      expect(places(others)).toEqual(expected);
      const numbers = other.entities
        .filter(({ type, tag }) => type === 'ATTRIB' && tag === 'NUMBER')
        .map(({ text: attribute }) => attribute?.string);
      expect(numbers).toEqual(setOut.items.map(({ number }) => String(number)));
      const outline = other.entities.find(
        ({ layer, vertices }) => layer === 'ONEPOUR-OUTLINE' && vertices !== undefined,
      )!;
      expect(places(outline.vertices!)).toEqual(
        setOut.outline.map(([x, y]) => [Number(x.toFixed(3)), Number(y.toFixed(3))]),
      );
    },
  );

  it('gives the same as JSON', () => {
    const { stdout } = onepour(['setout', DEMO, 'P03', '--json']);
    const [panel] = JSON.parse(stdout).panels;
    expect(panel.items.map(({ printed }: { printed: unknown }) => printed)).toEqual(
      setOuts.find((setOut) => setOut.panel.mark === 'P03')!.items.map(({ printed }) => printed),
    );
  });

  it('says what to do for a panel that nothing is cast into', () => {
    const path = at('empty.json');
    writeFileSync(path, JSON.stringify(sampleJob({ castIns: [], connections: [] })));
    const { status, stdout } = onepour(['setout', path, 'P1']);
    expect(stdout).toContain('Nothing is cast into this panel. Add inserts');
    expect(status).toBe(0);
  });

  it.each<readonly [string, readonly string[], RegExp]>([
    ['an unknown panel', [DEMO, 'P99'], /^P99: is no panel of this job; expected one of P01, /],
    ['an unknown bed', [DEMO, 'P01', '--bed', 'B9'], /^--bed B9: is no bed of the yard; expected one of B1, B2\n$/],
    ['a drawing of all panels', [DEMO, '--dxf', 'x.dxf'], /^--dxf, --svg: need the mark of one panel\n$/],
    ['another ending', [DEMO, 'P01', '--dxf', 'x.pdf'], /^--dxf x\.pdf: expected a name that ends in \.dxf\n$/],
    ['no such folder', [DEMO, 'P01', '--svg', 'nowhere/x.svg'], /^--svg nowhere\/x\.svg: cannot be written, /],
    ['a file that is there', [DEMO, 'P01', '--dxf', 'P13.dxf'], /is there already, expected a new name/],
    ['no job', ['nothing.json'], /^nothing\.json: cannot be read/],
  ])('refuses %s in one line', (_, args, line) => {
    writeFileSync(at('P13.dxf'), '');
    const { status, stdout, stderr } = onepour(['setout', ...args.map((arg) => (arg === 'P13.dxf' ? at(arg) : arg))]);
    expect([status, stdout]).toEqual([2, '']);
    expect(stderr).toMatch(line);
  });
});

describe('onepour folder', () => {
  it('writes one PDF for a pour, says what stands against it, and writes it the same again', async () => {
    const [a, b] = [at('a.pdf'), at('b.pdf')];
    const first = onepour(['folder', DEMO, 'T12', '--out', a, '--since', 'demo/job-rev-a.json']);
    expect(first.stdout).toMatch(/a\.pdf: \d+ pages A3\n/);
    expect(first.status).toBe(/STOP/.test(first.stdout) ? 1 : 0);
    onepour(['folder', DEMO, 'T12', '--out', b, '--since', 'demo/job-rev-a.json']);
    expect(readFileSync(a).equals(readFileSync(b))).toBe(true);
    const { title, bookmarks } = await readPdf(new Uint8Array(readFileSync(a)));
    expect(title).toBe('Pour folder T12');
    expect(bookmarks[0]).toBe('T12 – Pour folder');
  });

  it.each<readonly [string, readonly string[], RegExp]>([
    ['an unknown pour', [DEMO, 'T99'], /^T99: is no pour of this job; expected one of T12, T13, T14\n$/],
    [
      'a job without pours',
      ['demo/typed-by-hand', 'T1'],
      /^T1: is no pour of this job; the job has no pours: add them/,
    ],
    ['another paper', [DEMO, 'T12', '--paper', 'A5'], /^--paper A5: expected A3 or A4\n$/],
    ['another ending', [DEMO, 'T12', '--out', 'x.doc'], /^--out x\.doc: expected a name that ends in \.pdf\n$/],
    ['no earlier job', [DEMO, 'T12', '--since', 'old.json'], /^old\.json: cannot be read/],
  ])('refuses %s in one line, and writes nothing', (_, args, line) => {
    const { status, stdout, stderr } = onepour([
      'folder',
      ...args,
      ...(args.includes('--out') ? [] : ['--out', at('no.pdf')]),
    ]);
    expect([status, stdout]).toEqual([2, '']);
    expect(stderr).toMatch(line);
    expect(existsSync(at('no.pdf'))).toBe(false);
  });
});
