import type { Point } from '../../engine/geometry/point.ts';
import type { Revision } from '../../job/documents/pour.ts';
import type { Drawing, Mark, Weight } from '../drawing.ts';
import { drawBox, drawLine, drawText, drawTextLines } from '../marks.ts';
import { LINE_STEP, measureText, wrapText } from '../text-size.ts';
import { type Paper, TYPE } from './paper.ts';

/** What a sheet is about, for its head. */
export interface SheetHead {
  /** The panel's mark, or the pour. */
  readonly mark: string;
  /** Which piece, on which bed, when. */
  readonly lines: readonly string[];
  readonly title: string;
}

/** What all sheets of a folder share. */
export interface FolderFacts {
  readonly paper: Paper;
  readonly project: string;
  readonly revision: Revision | null;
  /** First digits of the hash of the job as issued. */
  readonly fingerprint: string;
  readonly caution: string;
}

/** A sheet before it is known which page of the folder it is. */
export interface Sheet {
  readonly head: SheetHead;
  /** Between head and foot, in coordinates of the paper. */
  readonly marks: readonly Mark[];
}

/** Around the letter of a revision: another shape for each, so that an old print is seen from afar. */
function drawRevisionShape([x, y]: Point, size: number, letter: string): readonly Mark[] {
  const half = size / 2;
  const shape = [...letter].reduce((sum, sign) => sum + sign.codePointAt(0)!, 0) % 4;
  const ring = (points: readonly Point[]): Mark => ({
    kind: 'polyline',
    layer: 'frame',
    points: points.map(([px, py]): Point => [x + px * half, y + py * half]),
    isClosed: true,
    pen: 'thick',
  });
  if (shape === 1)
    return [
      ring([
        [-1, -1],
        [1, -1],
        [1, 1],
        [-1, 1],
      ]),
    ];
  if (shape === 2) return [{ kind: 'circle', layer: 'frame', at: [x, y], radius: half, pen: 'thick', fill: 'none' }];
  if (shape === 3)
    return [
      ring([
        [-1.1, 0],
        [0, -1.1],
        [1.1, 0],
        [0, 1.1],
      ]),
    ];
  return [
    ring([
      [-1, -0.5],
      [-0.5, -1],
      [0.5, -1],
      [1, -0.5],
      [1, 0.5],
      [0.5, 1],
      [-0.5, 1],
      [-1, 0.5],
    ]),
  ];
}

/** Whether what stands on a sheet may be poured, in the words of its head. */
export function describeStatus(revision: Revision | null): { readonly words: string; readonly isStop: boolean } {
  if (revision === null) return { words: 'NOT ISSUED – DO NOT POUR', isStop: true };
  const words = revision.status.toUpperCase();
  if (revision.status === 'for construction') return { words, isStop: false };
  return { words: `${words} – DO NOT ${revision.status === 'void' ? 'USE' : 'POUR'}`, isStop: true };
}

/** A font size at which a text fits a width, as large as `size` and no smaller than the smallest of a sheet [mm]. */
function fitSize(text: string, size: number, weight: Weight, width: number): number {
  return Math.max(TYPE.small, Math.min(size, (size * width) / Math.max(measureText(text, size, weight), 1e-9)));
}

function drawHead(facts: FolderFacts, head: SheetHead): readonly Mark[] {
  const { paper, revision } = facts;
  const left = paper.margin;
  const right = paper.width - paper.margin;
  const top = paper.height - paper.margin;
  const base = top - paper.head + 3;
  const letter = revision?.letter ?? '–';
  const box = paper.head - 9;
  const status = describeStatus(revision);
  const marks: Mark[] = [drawLine('frame', [left, base], [right, base], 'thick')];
  const issued = revision === null ? 'revision –' : `revision ${revision.letter} of ${revision.date}`;
  const beside = right - box - 6;
  const statusWidth = Math.max(measureText(status.words, TYPE.large, 'bold') + 3, measureText(issued, TYPE.body));
  // A long mark gives way to what tells whether the sheet may be used.
  const room = beside - statusWidth - 5 - left;
  const markSize = fitSize(head.mark, TYPE.mark, 'bold', 0.4 * room);
  const markLines = wrapText(head.mark, markSize, 'bold', 0.4 * room);
  marks.push(
    ...drawTextLines([left, base + 8 + (markLines.length - 1) * markSize * LINE_STEP], markLines, markSize, {
      weight: 'bold',
    }),
  );
  const after = left + Math.max(Math.max(...markLines.map((line) => measureText(line, markSize, 'bold'))) + 6, 36);
  const words = left + room - after;
  const titleSize = fitSize(head.title, TYPE.title, 'bold', words);
  marks.push(drawText([after, top - TYPE.title], head.title, titleSize, { weight: 'bold' }));
  const lines = head.lines.flatMap((line) => wrapText(line, TYPE.body, 'plain', words));
  const most = Math.floor((paper.head - TYPE.title - 7) / 4.6);
  const isShort = lines.length <= most;
  const shown = isShort ? lines : wrapText(head.lines.join(' · '), TYPE.small, 'plain', words);
  marks.push(...drawTextLines([after, top - TYPE.title - 5.4], shown, isShort ? TYPE.body : TYPE.small));
  marks.push(...drawRevisionShape([right - box / 2 - 1, base + 2 + box / 2], box, letter));
  const size = Math.min(TYPE.mark, (box * 0.72 * TYPE.mark) / Math.max(measureText(letter, TYPE.mark, 'bold'), 1));
  marks.push(
    drawText([right - box / 2 - 1, base + 2 + box / 2], letter, size, {
      weight: 'bold',
      align: 'middle',
      baseline: 'middle',
    }),
  );
  const statusSize = TYPE.large;
  const width = measureText(status.words, statusSize, 'bold');
  if (status.isStop)
    marks.push(drawBox('frame', [beside - width - 3, base + 2.6], width + 4.5, statusSize * 1.7, 'thick'));
  marks.push(
    drawText([beside - (status.isStop ? 0.8 : 0), base + 4.6], status.words, statusSize, {
      weight: 'bold',
      align: 'end',
    }),
  );
  marks.push(drawText([beside, base + 12.4], issued, TYPE.body, { align: 'end' }));
  return marks;
}

function drawFoot(facts: FolderFacts, page: number, pages: number): readonly Mark[] {
  const { paper, project, fingerprint, caution } = facts;
  const left = paper.margin;
  const right = paper.width - paper.margin;
  const line = paper.margin + paper.foot - 3;
  return [
    drawLine('frame', [left, line], [right, line], 'thin'),
    drawText([left, line - 4], caution, TYPE.body, { weight: 'bold' }),
    drawText([left, line - 8], `${project} · fingerprint ${fingerprint} · all lengths mm`, TYPE.small),
    drawText([right, line - 4], `page ${page} of ${pages}`, TYPE.body, { align: 'end' }),
  ];
}

/** Sheets with head, foot and page numbers. */
export function finishSheets(sheets: readonly Sheet[], facts: FolderFacts): readonly Drawing[] {
  const { width, height } = facts.paper;
  return sheets.map(({ head, marks }, i) => ({
    width,
    height,
    marks: [...drawHead(facts, head), ...marks, ...drawFoot(facts, i + 1, sheets.length)],
  }));
}
