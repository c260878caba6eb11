import PDFDocument from 'pdfkit';
import type { Drawing, Weight } from '../../drawing/drawing.ts';
import { writeCoordinate } from '../../drawing/write-number.ts';
import { type FontNames, type GlyphCode, writePdfContent } from './pdf-content.ts';

/** Bytes of DejaVu Sans Condensed, both weights, as TrueType. */
export type PdfFonts = Readonly<Record<Weight, Uint8Array>>;

/** One page, as large as its drawing [mm]. */
export interface PdfPage {
  readonly drawing: Drawing;
  /** In the list of bookmarks; null: not there. */
  readonly bookmark: string | null;
}

export interface PdfDetails {
  readonly title: string;
  readonly author: string;
  readonly subject: string;
  /** Stands in the file as its date: the same date gives the same bytes. */
  readonly date: Date;
  /** Of the texts, such as "en". */
  readonly language: string;
}

/** Points of a PDF in a mm. */
const POINTS = 72 / 25.4;

/** What of a font of pdfkit 0.20.2 is used here; its types leave it out. */
interface EmbeddedFont {
  readonly id: string;
  readonly ref: () => unknown;
  readonly encode: (text: string) => readonly [codes: readonly string[], positions: readonly unknown[]];
}

/** Embeds a font and gives it. */
function openFont(document: PDFKit.PDFDocument, weight: Weight, bytes: Uint8Array): EmbeddedFont {
  document.registerFont(weight, bytes);
  document.font(weight);
  // Safe with the exact version that package.json names: `font` keeps the font that it has opened there.
  return (document as unknown as { readonly _font: EmbeddedFont })._font;
}

/**
 * Writes drawings as one PDF, a page each; only letters that occur are embedded. Same input, same bytes. Signs are put one by one, without
 * kerning, so that a text is as wide as `measureText` says and is found by searching.
 * Rejects with DrawingError when a text cannot be drawn, RangeError when a coordinate is not finite.
 *
 * @param pages may be made while they are written, so that few are in memory at once
 */
export function writePdf(pages: Iterable<PdfPage>, details: PdfDetails, fonts: PdfFonts): Promise<Uint8Array> {
  const { title, author, subject, date, language } = details;
  const document = new PDFDocument({
    autoFirstPage: false,
    pdfVersion: '1.7',
    lang: language,
    displayTitle: true,
    // No font of pdfkit's own.
    font: '',
    info: {
      Title: title,
      Author: author,
      Subject: subject,
      Producer: 'Onepour',
      Creator: 'Onepour',
      CreationDate: date,
      ModDate: date,
    },
  });
  const done = collectBytes(document);
  const embedded = {
    plain: openFont(document, 'plain', fonts.plain),
    bold: openFont(document, 'bold', fonts.bold),
  };
  const names: FontNames = { plain: embedded.plain.id, bold: embedded.bold.id };
  const glyphCode = rememberCodes(embedded);
  for (const { drawing, bookmark } of pages) {
    document.addPage({ size: [drawing.width * POINTS, drawing.height * POINTS], margin: 0 });
    for (const font of [embedded.plain, embedded.bold]) document.page.fonts[font.id] = font.ref();
    // pdfkit has turned y downward: this turns it up again, and a unit into a mm.
    const k = writeCoordinate(POINTS, 9);
    document.addContent(`${k} 0 0 -${k} 0 ${writeCoordinate(document.page.height, 6)} cm`);
    document.addContent(writePdfContent(drawing, names, glyphCode));
    if (bookmark !== null) document.outline.addItem(bookmark);
  }
  document.end();
  return done;
}

/** Codes of signs, each asked of its font once. */
function rememberCodes(embedded: Readonly<Record<Weight, EmbeddedFont>>): GlyphCode {
  const codes = { plain: new Map<string, string>(), bold: new Map<string, string>() };
  return (sign, weight) => {
    const known = codes[weight].get(sign);
    if (known !== undefined) return known;
    const code = embedded[weight].encode(sign)[0].join('');
    codes[weight].set(sign, code);
    return code;
  };
}

function collectBytes(document: PDFKit.PDFDocument): Promise<Uint8Array> {
  return new Promise((resolve, reject) => {
    const chunks: Uint8Array[] = [];
    document.on('data', (chunk: Uint8Array) => chunks.push(chunk));
    document.on('error', reject);
    document.on('end', () => {
      const bytes = new Uint8Array(chunks.reduce((sum, chunk) => sum + chunk.length, 0));
      let at = 0;
      for (const chunk of chunks) {
        bytes.set(chunk, at);
        at += chunk.length;
      }
      resolve(bytes);
    });
  });
}
