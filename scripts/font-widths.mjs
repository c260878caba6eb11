// Writes src/drawing/font-widths.ts: how wide each letter of DejaVu Sans Condensed is, read from the font's own tables.
// To be run again only when the font's version changes. The tests compare the file with the fonts through another reader.

import { readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const ROOT = dirname(dirname(fileURLToPath(import.meta.url)));
const require = createRequire(import.meta.url);
const FONTS = { plain: 'DejaVuSansCondensed.ttf', bold: 'DejaVuSansCondensed-Bold.ttf' };

/** First and last sign of each block of Unicode that a drawing may use: Latin, Greek, Cyrillic, signs and shapes. */
const BLOCKS = [
  [0x20, 0x7e],
  // Not the soft hyphen: it is there to be turned at, not to be seen.
  [0xa0, 0xac],
  [0xae, 0x24f],
  [0x370, 0x3ff],
  [0x400, 0x52f],
  [0x1e00, 0x1eff],
  [0x1f00, 0x1fff],
  [0x2010, 0x2027],
  [0x2030, 0x205e],
  [0x2070, 0x209c],
  [0x20a0, 0x20b9],
  [0x2100, 0x214f],
  [0x2150, 0x215f],
  [0x2190, 0x21ff],
  [0x2200, 0x22ff],
  [0x2300, 0x2335],
  [0x2460, 0x2473],
  [0x2500, 0x25ff],
  [0x2600, 0x26b8],
  [0x2701, 0x27be],
  [0xfffd, 0xfffd],
];

const fonts = Object.fromEntries(Object.entries(FONTS).map(([weight, file]) => [weight, readFont(file)]));
const blocks = BLOCKS.map(([first, last]) => {
  const list = (weight) =>
    Array.from({ length: last - first + 1 }, (_, k) => fonts[weight].widthOf(first + k) ?? '-').join(' ');
  return `  {\n    first: 0x${first.toString(16)},\n    plain: '${list('plain')}',\n    bold: '${list('bold')}',\n  },\n`;
});
const { unitsPerEm, capHeight } = fonts.plain;
writeFileSync(
  join(ROOT, 'src/drawing/font-widths.ts'),
  `// Written by scripts/font-widths.mjs from dejavu-fonts-ttf ${require('dejavu-fonts-ttf/package.json').version}: not to be edited.

/** Units that an em of DejaVu Sans Condensed has. */
export const UNITS_PER_EM = ${unitsPerEm};

/** Height of a capital in those units. */
export const CAP_UNITS = ${capHeight};

/** Widths of the signs of a block of Unicode from its first on, in units; "-" where the font has none. */
export interface WidthBlock {
  readonly first: number;
  readonly plain: string;
  readonly bold: string;
}

export const WIDTH_BLOCKS: readonly WidthBlock[] = [
${blocks.join('')}];
`,
);

/** Units an em, height of a capital and widths of a TrueType font (tables head, hhea, hmtx, loca, glyf and cmap in format 4). */
function readFont(file) {
  const bytes = readFileSync(require.resolve(`dejavu-fonts-ttf/ttf/${file}`));
  const tables = new Map();
  for (let k = 0; k < bytes.readUInt16BE(4); k++) {
    const record = 12 + 16 * k;
    tables.set(bytes.toString('latin1', record, record + 4), bytes.readUInt32BE(record + 8));
  }
  const glyphOf = readGlyphs(bytes, tables.get('cmap'));
  const metrics = bytes.readUInt16BE(tables.get('hhea') + 34);
  const hmtx = tables.get('hmtx');
  return {
    unitsPerEm: bytes.readUInt16BE(tables.get('head') + 18),
    // The fonts carry an OS/2 table of version 1, which has no height of a capital: that of H is its outline's.
    capHeight: readTop(bytes, tables, glyphOf.get(0x48)),
    widthOf(code) {
      const glyph = glyphOf.get(code);
      return glyph === undefined ? undefined : bytes.readUInt16BE(hmtx + 4 * Math.min(glyph, metrics - 1));
    },
  };
}

/** Top of a glyph's outline. */
function readTop(bytes, tables, glyph) {
  const isLong = bytes.readInt16BE(tables.get('head') + 50) === 1;
  const loca = tables.get('loca');
  const offset = isLong ? bytes.readUInt32BE(loca + 4 * glyph) : 2 * bytes.readUInt16BE(loca + 2 * glyph);
  return bytes.readInt16BE(tables.get('glyf') + offset + 8);
}

/** Glyph by sign, from the table for the whole of Unicode's first plane (platform 3, encoding 1, format 4). */
function readGlyphs(bytes, cmap) {
  for (let k = 0; k < bytes.readUInt16BE(cmap + 2); k++) {
    const record = cmap + 4 + 8 * k;
    if (bytes.readUInt16BE(record) !== 3 || bytes.readUInt16BE(record + 2) !== 1) continue;
    const table = cmap + bytes.readUInt32BE(record + 4);
    if (bytes.readUInt16BE(table) === 4) return readSegments(bytes, table);
  }
  throw new Error('the font has no table of signs in format 4');
}

function readSegments(bytes, table) {
  const glyphs = new Map();
  const twice = bytes.readUInt16BE(table + 6);
  for (let k = 0; k < twice; k += 2) {
    const last = bytes.readUInt16BE(table + 14 + k);
    const first = bytes.readUInt16BE(table + 16 + twice + k);
    const delta = bytes.readUInt16BE(table + 16 + 2 * twice + k);
    const at = table + 16 + 3 * twice + k;
    const offset = bytes.readUInt16BE(at);
    for (let code = first; code <= last && code < 0xffff; code++) {
      const raw = offset === 0 ? code : bytes.readUInt16BE(at + offset + 2 * (code - first));
      const glyph = raw === 0 ? 0 : (raw + delta) & 0xffff;
      if (glyph !== 0) glyphs.set(code, glyph);
    }
  }
  return glyphs;
}
