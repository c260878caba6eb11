import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { PdfFonts } from '../files/pdf/write-pdf.ts';

/** Reads the fonts of PDF files from the package that brings them, from sources and from dist/ alike. */
export function readDrawingFonts(): PdfFonts {
  const { resolve } = createRequire(import.meta.url);
  const read = (file: string) => new Uint8Array(readFileSync(resolve(`dejavu-fonts-ttf/ttf/${file}`)));
  return { plain: read('DejaVuSansCondensed.ttf'), bold: read('DejaVuSansCondensed-Bold.ttf') };
}
