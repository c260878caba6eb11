import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';

/** A run of text as an independent reader finds it in a PDF. Lengths in mm, y up from the lower edge of the page. */
export interface PdfText {
  readonly page: number;
  readonly text: string;
  /** Start of the line that the letters stand on. */
  readonly x: number;
  readonly y: number;
  readonly width: number;
  /** Font size. */
  readonly size: number;
  /** Counter-clockwise [rad]. */
  readonly turn: number;
}

export interface PdfReading {
  /** Width and height of each page [mm]. */
  readonly pages: readonly (readonly [width: number, height: number])[];
  readonly texts: readonly PdfText[];
  readonly title: string | null;
  readonly bookmarks: readonly string[];
}

const MM = 25.4 / 72;

/** Reads the texts of a PDF by pdf.js, in the order in which they were written. */
export async function readPdf(bytes: Uint8Array): Promise<PdfReading> {
  const task = getDocument({ data: bytes.slice(), verbosity: 0 });
  const document = await task.promise;
  const pages: [number, number][] = [];
  const texts: PdfText[] = [];
  for (let number = 1; number <= document.numPages; number++) {
    const page = await document.getPage(number);
    const [x0, y0, x1, y1] = page.view as [number, number, number, number];
    pages.push([(x1 - x0) * MM, (y1 - y0) * MM]);
    for (const item of (await page.getTextContent()).items) {
      // A space between two runs is the reader's guess, not text of the file.
      if (!('str' in item) || item.str.trim() === '') continue;
      const [a, b, , , x, y] = item.transform as [number, number, number, number, number, number];
      const size = Math.hypot(a, b) * MM;
      texts.push({
        page: number,
        text: item.str,
        x: x * MM,
        y: y * MM,
        width: item.width * MM,
        size,
        turn: Math.atan2(b, a),
      });
    }
  }
  const { info } = await document.getMetadata();
  const outline = await document.getOutline();
  await task.destroy();
  return {
    pages,
    texts,
    title: 'Title' in info && typeof info.Title === 'string' ? info.Title : null,
    bookmarks: (outline ?? []).map((item: { readonly title: string }) => item.title),
  };
}

type Pair = readonly [number, number];

/** Corners of a text with what its letters take: `below` and `above` the line are parts of the font size. */
function cornersOf({ x, y, width, size, turn }: PdfText, below = 0.22, above = 0.76): readonly Pair[] {
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  const corner = (along: number, up: number): Pair => [x + c * along - s * up, y + s * along + c * up];
  return [corner(0, -below * size), corner(width, -below * size), corner(width, above * size), corner(0, above * size)];
}

/** Pairs of texts of one page that lie on each other, turned ones too (separating axes). */
export function findOverlaps(texts: readonly PdfText[]): readonly (readonly [PdfText, PdfText])[] {
  const boxes = texts.map((text) => ({ text, corners: cornersOf(text) }));
  const overlaps: [PdfText, PdfText][] = [];
  for (const [k, a] of boxes.entries()) {
    for (const b of boxes.slice(k + 1)) {
      if (a.text.page === b.text.page && !areApart(a.corners, b.corners) && !areApart(b.corners, a.corners))
        overlaps.push([a.text, b.text]);
    }
  }
  return overlaps;
}

/** Texts that reach over the edge of their page. pdf.js leaves out signs that lie wholly outside: those are missed by whoever looks for them. */
export function findCut({ pages, texts }: PdfReading): readonly PdfText[] {
  return texts.filter((text) => {
    const [width, height] = pages[text.page - 1]!;
    return cornersOf(text).some(([x, y]) => x < 0 || y < 0 || x > width || y > height);
  });
}

/** Whether a line along a side of the first box has the second box wholly on its other side; touching counts as apart. */
function areApart(a: readonly Pair[], b: readonly Pair[]): boolean {
  return a.some(([x, y], k) => {
    const [nextX, nextY] = a[(k + 1) % a.length]!;
    const outward = ([px, py]: Pair) => (px - x) * (nextY - y) - (py - y) * (nextX - x);
    return b.every((corner) => outward(corner) >= -1e-6);
  });
}
