import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';

const WEB = 'dist/web';

interface Entry {
  readonly script: string;
  readonly style: string | null;
  readonly closure: readonly string[];
  readonly later: readonly string[];
}

interface Assets {
  readonly version: string;
  readonly entries: Readonly<Record<string, Entry>>;
  readonly files: readonly { readonly path: string; readonly bytes: number; readonly gz: number | null }[];
}

const assets = JSON.parse(readFileSync(join(WEB, 'assets.json'), 'utf8')) as Assets;
const read = (path: string) => readFileSync(join(WEB, path), 'utf8');

/** Words that only the code of a package has, however it is made small. */
const MARKS = { pdf: 'CIDFontType2', dxf: 'AcDbEntity' };

/** What a page loads before it shows anything [bytes as sent]. */
const BUDGETS = [
  { page: 'office', file: 'index.html', script: 200_000, style: 24_000 },
  // Comes from the device each time but the first: all of its screens are in it.
  { page: 'yard', file: 'yard.html', script: 280_000, style: 12_000 },
  { page: 'answer', file: 'answer.html', script: 90_000, style: 8_000 },
];

const sum = (paths: readonly string[]) =>
  paths.reduce((total, path) => total + assets.files.find((file) => file.path === path)!.gz!, 0);

describe.each(BUDGETS)('the page $file', ({ page, file, script, style }) => {
  const entry = assets.entries[page]!;

  it('keeps to its budget', () => {
    expect(sum(entry.closure)).toBeLessThan(script);
    expect(sum(entry.style === null ? [] : [entry.style])).toBeLessThan(style);
  });

  it('brings no writer of PDF or DXF along at once', () => {
    const text = entry.closure.map(read).join('\n');
    for (const mark of Object.values(MARKS)) expect(text).not.toContain(mark);
  });

  it('has no script and no style in line, and asks nobody else', () => {
    const html = read(file);
    expect([...html.matchAll(/<script\b(?![^>]*\bsrc=")[^>]*>|<style\b|\sstyle="|\son\w+="/g)]).toEqual([]);
    const addresses = [...html.matchAll(/\b(?:src|href|content)="(\/[^"]*)"/g)].map(([, address]) => address!);
    expect(addresses).toContain(entry.script);
    expect(addresses.filter((address) => !existsSync(join(WEB, address)))).toEqual([]);
    expect(html).not.toMatch(/(?:src|href)="(?:https?:)?\/\//);
  });

  it('loads all that its script needs at once side by side', () => {
    const html = read(file);
    for (const path of entry.closure)
      expect(html).toMatch(new RegExp(`(?:modulepreload" href|script type="module" src)="${path}"`));
  });

  it('names its workers', () => {
    const html = read(file);
    for (const name of ['worker', 'pdf-worker'])
      expect(html).toContain(`<meta name="onepour-${name}" content="${assets.entries[name]!.script}">`);
  });
});

it('finds the words that tell the writer of PDF where it is', () => {
  expect(assets.entries['pdf-worker']!.closure.map(read).join('\n')).toContain(MARKS.pdf);
});

it('has every file that it lists, and beside it the same compressed', () => {
  const wrong = assets.files.filter(({ path, bytes, gz }) => {
    const content = readFileSync(join(WEB, path));
    if (content.length !== bytes) return true;
    if (gz === null) return false;
    const packed = readFileSync(join(WEB, `${path}.gz`));
    return packed.length !== gz || !gunzipSync(packed).equals(content);
  });
  expect(wrong).toEqual([]);
  const needed = Object.values(assets.entries).flatMap(({ script, style, closure, later }) => [
    script,
    ...(style === null ? [] : [style]),
    ...closure,
    ...later,
  ]);
  const listed = new Set(assets.files.map(({ path }) => path));
  // Styles of parts that come later stand in the page's own.
  expect([...new Set(needed)].filter((path) => !listed.has(path))).toEqual([]);
});

it('carries the licences of what it is made of', () => {
  expect(read('licences/packages.txt')).toMatch(/^preact \d/m);
  expect(read('licences/packages.txt')).toMatch(/^pdfkit \d/m);
  expect(read('licences/source-sans-3.txt')).toContain('SIL OPEN FONT LICENSE');
  expect(read('licences/dejavu-fonts.txt')).toContain('Bitstream Vera');
});

it('has the service worker keep what opens a page, and first what is small', () => {
  const [, first] = /first:(\[[^\]]*\])/.exec(read('sw.js'))!;
  const kept = JSON.parse(first!) as string[];
  for (const { page } of BUDGETS) for (const path of assets.entries[page]!.closure) expect(kept).toContain(path);
  for (const path of assets.entries.yard!.later.filter((one) => one.endsWith('.js'))) expect(kept).toContain(path);
  expect(kept.filter((path) => path.endsWith('.ttf'))).toEqual([]);
});
