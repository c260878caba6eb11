import type { Point } from '../../engine/geometry/point.ts';
import type { Box } from '../boxes.ts';
import { boxOfMarks } from '../boxes.ts';
import { clipSegment } from '../detail/clip.ts';
import type { Drawing, Mark } from '../drawing.ts';
import type { Block } from '../flow.ts';
import { drawBlocks, flowBlocks } from '../flow.ts';
import { drawLine, drawText } from '../marks.ts';
import { circleRing, findSweep, placeMarks } from '../place.ts';
import { layTable, TABLE_STYLE } from '../table.ts';
import { drawTemplate, listTemplateHoles, type Template } from './drill-template.ts';
import { findPageWidth, layPages } from './lay-pages.ts';
import { layList } from './page-blocks.ts';
import { findFrame, PAPERS, type Paper, TYPE } from './paper.ts';
import { type FolderFacts, finishSheets, type Sheet, type SheetHead } from './sheet-frame.ts';
import { layGap } from './text-block.ts';

/** What stands on a template beside the plate. */
export interface TemplateWords {
  readonly head: SheetHead;
  /** What must be known before it is drilled, a sentence each. */
  readonly notes: readonly string[];
}

/** Width of the table of holes beside a plate [mm]. */
const TABLE = 92;
/** Tiles overlap by this much, so that they can be laid on each other [mm]. */
const OVERLAP = 20;

function writeLength(mm: number): string {
  return String(Number(mm.toFixed(1)));
}

/** The holes by number, from the datum edges; what is new is marked. */
function layHoles(template: Template, width: number): readonly Block[] {
  const rows = listTemplateHoles(template).map(({ id, isChanged, x, y, diameter, length, angle_deg }) => [
    `${isChanged ? '▲ ' : ''}${id}`,
    writeLength(x),
    writeLength(y),
    length === diameter
      ? `Ø ${writeLength(diameter)}`
      : `${writeLength(diameter)} × ${writeLength(length)}, at ${writeLength(angle_deg)}°`,
  ]);
  const share = width / 92;
  return layTable(
    'holes',
    [
      { head: 'hole', width: 16 * share },
      { head: 'from left', width: 20 * share, align: 'end' },
      { head: 'from bottom', width: 20 * share, align: 'end' },
      { head: 'size', width: 36 * share },
    ],
    rows,
    { ...TABLE_STYLE, size: TYPE.body },
  );
}

function layNotes(notes: readonly string[], width: number): readonly Block[] {
  return [layGap(2), ...layList(notes, TYPE.body, width)];
}

/** Lines of a mark that can be cut where a sheet ends; texts are left whole. */
function listSides(mark: Mark): readonly (readonly [Point, Point])[] {
  const join = (points: readonly Point[], isClosed: boolean) =>
    points.flatMap((from, i): [Point, Point][] => {
      const to = points[i + 1] ?? (isClosed ? points[0] : undefined);
      return to === undefined ? [] : [[from, to]];
    });
  switch (mark.kind) {
    case 'line':
      return [[mark.from, mark.to]];
    case 'polyline':
      return join(mark.points, mark.isClosed);
    case 'area':
      return mark.rings.flatMap((ring) => join(ring, true));
    case 'circle':
      return join(circleRing(mark.at, mark.radius), true);
    case 'arc': {
      const sweep = findSweep(mark);
      const steps = 48;
      const points = Array.from({ length: steps + 1 }, (_, k): Point => {
        const angle = mark.from + (sweep * k) / steps;
        return [mark.at[0] + mark.radius * Math.cos(angle), mark.at[1] + mark.radius * Math.sin(angle)];
      });
      return join(points, false);
    }
    default:
      return [];
  }
}

/** What of a drawing lies in a box: lines cut at its sides, texts where they lie inside whole. */
function cutMarks(marks: readonly Mark[], box: Box): readonly Mark[] {
  return marks.flatMap((mark): readonly Mark[] => {
    if (mark.kind === 'text') {
      const own = boxOfMarks([mark])!; // a text has one
      const isInside =
        own.x >= box.x &&
        own.y >= box.y &&
        own.x + own.width <= box.x + box.width &&
        own.y + own.height <= box.y + box.height;
      return isInside ? [mark] : [];
    }
    if (mark.kind === 'symbol') return [];
    return listSides(mark).flatMap(([from, to]) => {
      const piece = clipSegment(from, to, box);
      return piece === null ? [] : [drawLine(mark.layer, ...piece, mark.pen ?? 'thin')];
    });
  });
}

/** Sides of a tile on which another lies. */
interface Neighbours {
  readonly left: boolean;
  readonly right: boolean;
  readonly below: boolean;
  readonly above: boolean;
}

/** Crosses at the corners of a tile's own part by which it is laid on its neighbours; none where there is no neighbour. */
function drawRegisters(box: Box, own: Point, beside: Neighbours): readonly Mark[] {
  const at = (x: number, y: number): Mark[] => {
    const [px, py] = [own[0] + x, own[1] + y];
    return [
      drawLine('frame', [px - 3, py], [px + 3, py], 'hair'),
      drawLine('frame', [px, py - 3], [px, py + 3], 'hair'),
    ];
  };
  const [inner, right, top] = [OVERLAP / 2, box.width - OVERLAP / 2, box.height - OVERLAP / 2];
  return [
    ...(beside.left || beside.below ? at(inner, inner) : []),
    ...(beside.right || beside.below ? at(right, inner) : []),
    ...(beside.left || beside.above ? at(inner, top) : []),
    ...(beside.right || beside.above ? at(right, top) : []),
  ];
}

/** A plate that is larger than a sheet, at 1:1 on several. */
function drawTiles(drawing: Drawing, words: TemplateWords, paper: Paper): readonly Sheet[] {
  const frame = findFrame(paper);
  const room = { width: frame.width, height: frame.height - 9 };
  const [across, down] = [
    Math.max(1, Math.ceil((drawing.width - OVERLAP) / (room.width - OVERLAP))),
    Math.max(1, Math.ceil((drawing.height - OVERLAP) / (room.height - OVERLAP))),
  ];
  return Array.from({ length: across * down }, (_, k): Sheet => {
    const [column, row] = [k % across, Math.floor(k / across)];
    const box: Box = { x: column * (room.width - OVERLAP), y: row * (room.height - OVERLAP), ...room };
    const tile = `tile ${k + 1} of ${across * down}: column ${column + 1} from the left, row ${row + 1} from below`;
    const cut = placeMarks(cutMarks(drawing.marks, box), { move: [frame.x - box.x, frame.y - box.y] });
    return {
      head: { ...words.head, title: `${words.head.title} (${k + 1})` },
      marks: [
        ...cut,
        ...drawRegisters(box, [frame.x, frame.y], {
          left: column > 0,
          right: column < across - 1,
          below: row > 0,
          above: row < down - 1,
        }),
        drawText(
          [frame.x, frame.y + frame.height - 6],
          `1:1, ${tile}. Lay the crosses of neighbours on each other; check the datum edges with a straight edge.`,
          TYPE.body,
          { weight: 'bold' },
        ),
      ],
    };
  });
}

/** A plate beside its table on one sheet. */
function drawOnOne(template: Template, drawing: Drawing, words: TemplateWords, paper: Paper): Sheet | null {
  const frame = findFrame(paper);
  if (drawing.width + TABLE > frame.width || drawing.height > frame.height - 3) return null;
  const table = [...layHoles(template, TABLE - 4), ...layNotes(words.notes, TABLE - 4)];
  const pages = flowBlocks(table, frame.height - 3);
  if (pages.length > 1) return null;
  return {
    head: words.head,
    marks: [
      ...placeMarks(drawing.marks, { move: [frame.x, frame.y + frame.height - 3 - drawing.height] }),
      ...drawBlocks(pages[0] ?? [], [frame.x + frame.width - TABLE + 4, frame.y + frame.height - 3]),
    ],
  };
}

/**
 * A plate as it is to be drilled, on paper at 1:1: on one sheet A4 or A3 where it goes onto it beside its table of holes, else on several sheets A3 that are laid on each
 * other, the table on a sheet of its own.
 */
export function drawTemplateSheets(
  template: Template,
  words: TemplateWords,
  facts: Omit<FolderFacts, 'paper'>,
): readonly Drawing[] {
  const drawing = drawTemplate(template);
  for (const paper of [PAPERS.A4, PAPERS.A3]) {
    const sheet = drawOnOne(template, drawing, words, paper);
    if (sheet !== null) return finishSheets([sheet], { ...facts, paper });
  }
  const paper = PAPERS.A3;
  const width = findPageWidth(paper);
  const list = layPages(
    { ...words.head, title: `${words.head.title}: holes` },
    [...layHoles(template, width / 2), ...layNotes(words.notes, width)],
    paper,
  );
  return finishSheets([...drawTiles(drawing, words, paper), ...list], { ...facts, paper });
}
