import type { Point } from '../../engine/geometry/point.ts';
import type { Revision } from '../../job/documents/pour.ts';
import type { Drawing, Mark } from '../drawing.ts';
import { drawBox, drawLine, drawText } from '../marks.ts';
import { measureText } from '../text-size.ts';
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
  const shape = letter.charCodeAt(0) % 4;
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
  marks.push(drawText([left, base + 8], head.mark, TYPE.mark, { weight: 'bold' }));
  const after = left + Math.max(measureText(head.mark, TYPE.mark, 'bold') + 6, 36);
  marks.push(drawText([after, top - TYPE.title], head.title, TYPE.title, { weight: 'bold' }));
  for (const [i, words] of head.lines.entries())
    marks.push(drawText([after, top - TYPE.title - 5.4 - i * 4.6], words, TYPE.body));
  marks.push(...drawRevisionShape([right - box / 2 - 1, base + 2 + box / 2], box, letter));
  const size = Math.min(TYPE.mark, (box * 0.72 * TYPE.mark) / Math.max(measureText(letter, TYPE.mark, 'bold'), 1));
  marks.push(
    drawText([right - box / 2 - 1, base + 2 + box / 2], letter, size, {
      weight: 'bold',
      align: 'middle',
      baseline: 'middle',
    }),
  );
  const beside = right - box - 6;
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
  const issued = revision === null ? 'revision –' : `revision ${revision.letter} of ${revision.date}`;
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
