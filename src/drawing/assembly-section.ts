import type { Assembly } from '../assess/set-out/assembly-type.ts';
import type { Point } from '../engine/geometry/point.ts';
import type { Bed } from '../job/documents/yard.ts';
import { boxOfMarks } from './boxes.ts';
import type { Drawing, Mark } from './drawing.ts';
import { DrawingError } from './drawing-error.ts';
import { drawCircle, drawLine, drawText, drawTextLines } from './marks.ts';
import { placeMarks, placePoint } from './place.ts';
import { findFaceX, findFrame, pointOn, type SectionFrame } from './section/section-frame.ts';
import {
  BED,
  drawBed,
  drawBreaks,
  drawLayers,
  drawSideForm,
  type SectionWindow,
  SIDE_FORM,
} from './section/section-ground.ts';
import { drawHolding, findHalfWidth, findStandOut } from './section/section-holding.ts';
import { drawCrossBar, drawCrossHole, drawInsertBody, findFootDiameter } from './section/section-insert.ts';
import { chainSteps, findFootCover, labelFaces, labelForms, listChains } from './section/section-labels.ts';
import { describeAssembly, findBounds, writeMm } from './section/section-words.ts';
import { drawChain, drawColumn, type LaidColumn, layColumn, type SideLabel, TICK } from './section/side-labels.ts';
import { TYPE } from './sheets/paper.ts';
import { CAP_HEIGHT, DESCENT, LINE_STEP, measureText, wrapText } from './text-size.ts';

/** What a section is drawn into, and what the assembly itself does not say. */
export interface SectionOptions {
  /** Room on paper [mm]. */
  readonly width: number;
  readonly height: number;
  readonly faceDown: 'outside' | 'inside';
  readonly bed: Bed | null;
}

/** A picture to scale: marks from its lower corner of least x [mm of paper]. */
export interface ScaledPicture {
  readonly marks: readonly Mark[];
  readonly width: number;
  readonly height: number;
  /** 1 : scale. */
  readonly scale: number;
}

/** Scales 1 : n, the largest first. The last is for panels thicker than any wall. */
const SCALES = [1, 2, 2.5, 5, 10] as const;

const SIZE = TYPE.body;
/** Widest columns of labels; from the picture to its first chain, and from chain to chain; from the last chain to the words [mm of paper]. */
const COLUMN = { left: 32, right: 44 };
const CHAIN = 4;
const LEADER = 6;
/** Concrete shown beside what sits in it, and beyond a foot in an edge [mm]. */
const AROUND = 15;
const BEYOND = 30;

/** Everything of a section that does not depend on the scale. */
interface Subject {
  readonly assembly: Assembly;
  readonly options: SectionOptions;
  readonly frame: SectionFrame;
  /** Least and most that the window shows, at 1:1. */
  readonly least: SectionWindow;
  readonly most: SectionWindow;
  readonly words: readonly string[];
}

function findWindows(assembly: Assembly, frame: SectionFrame): { least: SectionWindow; most: SectionWindow } {
  const { item, crossBar, thickness } = assembly;
  if (assembly.place === 'edge') {
    const outside = Math.min(findFaceX(frame, 0), findFaceX(frame, thickness)) - SIDE_FORM - findStandOut(assembly);
    const foot = pointOn(frame, item.length_mm, 0)[0];
    const inside = Math.max(foot, findFaceX(frame, 0), findFaceX(frame, thickness));
    const window = { from: outside, to: inside + BEYOND };
    return { least: window, most: window };
  }
  const half = Math.max(0.65 * findFootDiameter(item), item.bodyDiameter_mm / 2, findHalfWidth(assembly)) + AROUND;
  const wide = Math.max(half, crossBar === null ? 0 : crossBar.length / 2 + AROUND);
  return { least: { from: -half, to: half }, most: { from: -wide, to: wide } };
}

/** Where a section lies on paper at one scale. */
interface Layout {
  readonly scale: number;
  readonly window: SectionWindow;
  readonly origin: Point;
  readonly left: LaidColumn;
  readonly right: LaidColumn;
  readonly bottom: number;
  readonly top: number;
  readonly height: number;
}

function heightOfWords(words: readonly string[]): number {
  return (words.length * LINE_STEP + DESCENT) * SIZE + TYPE.large * LINE_STEP;
}

/** The dimension of how deep the foot lies in an edge, in lines no wider than the picture. */
function wordDepth({ assembly }: Subject, width: number): readonly string[] {
  if (assembly.place !== 'edge') return [];
  const { recess, item } = assembly;
  const parts = recess > 0 ? ` (recess ${writeMm(recess)} + ${writeMm(item.length_mm)})` : '';
  return wrapText(`foot ${writeMm(recess + item.length_mm)} deep${parts}`, SIZE, 'plain', width);
}

/** From the words under a section to its picture [mm of paper]. */
const WORDS_GAP = 2;

/** From the trowelled face to the dimension of the depth [mm of paper]. */
const DEPTH_LINE = 4;

/** What the dimension of the depth takes above an edge [mm of paper]. */
function roomForDepth(subject: Subject, width: number): number {
  const lines = wordDepth(subject, width).length;
  return lines === 0 ? 0 : DEPTH_LINE + 1 + lines * SIZE * LINE_STEP;
}

function drawLabels(
  { assembly, options, frame }: Subject,
  layout: Pick<Layout, 'scale' | 'window' | 'origin'>,
): { readonly left: readonly SideLabel[]; readonly right: readonly SideLabel[]; readonly marks: readonly Mark[] } {
  const put = putOnPaper(layout);
  const [leftEdge, rightEdge] = [put([layout.window.from, 0])[0], put([layout.window.to, 0])[0]];
  const height = (y: number) => put([0, y])[1];
  const marks: Mark[] = [];
  const left: SideLabel[] = [];
  for (const [k, chain] of listChains(assembly, frame).entries()) {
    const x = leftEdge - (k + 1) * CHAIN;
    marks.push(...drawChain(x, chain.heights.map(height), leftEdge));
    left.push(...chain.parts.map(({ at, words }): SideLabel => ({ words, at: [x, height(at)] })));
  }
  const x = rightEdge + CHAIN;
  const steps = chainSteps(assembly);
  marks.push(...drawChain(x, steps.heights.map(height), rightEdge));
  const right: SideLabel[] = [
    ...steps.parts.map(({ at, words }): SideLabel => ({ words, at: [x, height(at)] })),
    ...labelFaces(assembly, options.faceDown, (y) => [x, height(y)]),
  ];
  const bedAt: Point = [layout.window.from, -BED / 2];
  left.push(...labelForms(assembly, frame, options.bed, bedAt).map(({ words, at }) => ({ words, at: put(at) })));
  const cover = findFootCover(assembly, frame);
  if (cover !== null) {
    const aside = -0.3 * findFootDiameter(assembly.item);
    const [from, to] = [put([aside, cover.from[1]]), put([aside, cover.to[1]])];
    marks.push(...drawChain(from[0], [from[1], to[1]], from[0]));
    left.push({ words: cover.words, at: [from[0], (from[1] + to[1]) / 2] });
  }
  const { crossBar, item } = assembly;
  if (crossBar !== null) {
    const words = `cross bar Ø${writeMm(crossBar.diameter)} × ${writeMm(crossBar.length)}, ${writeMm(crossBar.fromFoot)} from the foot`;
    const u = item.length_mm - crossBar.fromFoot;
    const reach = assembly.place === 'edge' ? 0 : Math.min(crossBar.length / 2, -layout.window.from) - 1;
    const middle = pointOn(frame, u, 0);
    left.push({ words, at: put([middle[0] - reach, middle[1]]) });
  }
  return { left, right, marks };
}

function putOnPaper({ scale, window, origin }: Pick<Layout, 'scale' | 'window' | 'origin'>): (at: Point) => Point {
  return (at) => placePoint(at, { scale: 1 / scale, move: [origin[0] - window.from / scale, origin[1]] });
}

/** Lays a section out at a scale; null where it does not fit. */
function layOut(subject: Subject, scale: number): Layout | null {
  const { options, least, most, words, assembly, frame } = subject;
  const probe = drawLabels(subject, { scale, window: least, origin: [0, 0] });
  const [left, right] = [layColumn(probe.left, COLUMN.left, SIZE), layColumn(probe.right, COLUMN.right, SIZE)];
  const leftRoom = left.width + LEADER + CHAIN * listChains(assembly, frame).length;
  const rightRoom = right.width + LEADER + CHAIN;
  const room = options.width - leftRoom - rightRoom;
  if ((least.to - least.from) / scale > room) return null;
  const half = Math.min(most.to, (room * scale) / 2);
  const window = assembly.place === 'edge' ? most : { from: -half, to: half };
  const pictured = (window.to - window.from) / scale;
  // Never null: a section has layers.
  const drawn = boxOfMarks(placeMarks(drawPicture(subject, window), { scale: 1 / scale }))!;
  const bounds = findBounds(assembly).map((y) => y / scale);
  const below = Math.min(drawn.y, Math.min(...bounds) - TICK);
  const above = Math.max(
    drawn.y + drawn.height,
    assembly.thickness / scale + roomForDepth(subject, pictured),
    Math.max(...bounds) + TICK,
  );
  const picture = above - below;
  const columns = Math.max(left.height, right.height);
  const bottom = heightOfWords(words) + WORDS_GAP;
  const top = bottom + Math.max(picture, columns);
  if (top + 1 > options.height) return null;
  const spare = Math.max(0, columns - picture) / 2;
  const x = leftRoom + (room - pictured) / 2;
  return { scale, window, origin: [x, bottom + spare - below], left, right, bottom, top, height: top + 1 };
}

function drawPicture({ assembly, options, frame }: Subject, window: SectionWindow): readonly Mark[] {
  const { item, crossBar, place } = assembly;
  const reach = -window.from;
  const bar =
    crossBar === null
      ? []
      : place === 'edge'
        ? [
            drawCircle(
              'bar',
              'medium',
              'grey',
              pointOn(frame, item.length_mm - crossBar.fromFoot, 0),
              crossBar.diameter / 2,
            ),
          ]
        : drawCrossBar(frame, item, crossBar, reach - 1).marks;
  return [
    ...drawLayers(assembly, frame, window),
    ...drawBed(options.bed, window),
    ...(place === 'edge' ? drawSideForm(assembly, frame, options.bed) : []),
    ...drawInsertBody(frame, item),
    ...(crossBar === null ? drawCrossHole(frame, item) : []),
    ...drawHolding(assembly, reach - 1),
    ...bar,
    ...drawBreaks(assembly, window),
  ];
}

/** How deep the foot lies in an edge, over the picture. */
function drawDepth(subject: Subject, layout: Layout): readonly Mark[] {
  const { assembly, frame } = subject;
  if (assembly.place !== 'edge') return [];
  const put = putOnPaper(layout);
  const width = (layout.window.to - layout.window.from) / layout.scale;
  const lines = wordDepth(subject, width);
  const [from, foot] = [put([0, frame.axisHeight]), put(pointOn(frame, assembly.item.length_mm, 0))];
  const y = put([0, assembly.thickness])[1] + DEPTH_LINE;
  const widest = Math.max(...lines.map((words) => measureText(words, SIZE)));
  const start = put([layout.window.from, 0])[0];
  const middle = Math.min(Math.max((from[0] + foot[0]) / 2, start + widest / 2), start + width - widest / 2);
  const top = y + 1 + ((lines.length - 1) * LINE_STEP + CAP_HEIGHT + DESCENT) * SIZE;
  const tick = (x: number) => drawLine('dimension', [x - 1, y - 1], [x + 1, y + 1], 'medium');
  return [
    drawLine('dimension', from, [from[0], y], 'hair'),
    drawLine('dimension', foot, [foot[0], y], 'hair'),
    drawLine('dimension', [from[0], y], [foot[0], y], 'thin'),
    tick(from[0]),
    tick(foot[0]),
    ...drawTextLines([middle, top], lines, SIZE, { layer: 'dimension', align: 'middle', baseline: 'top' }),
  ];
}

/**
 * The same section without words and dimensions, for a screen that says them beside it: 1:1 on a field of its own size [mm]; how large that is shown
 * is the screen's affair.
 */
export function drawAssemblyBare(assembly: Assembly, bed: Bed | null, faceDown: SectionOptions['faceDown']): Drawing {
  const frame = findFrame(assembly);
  const { least } = findWindows(assembly, frame);
  const options: SectionOptions = { width: 0, height: 0, faceDown, bed };
  const marks = drawPicture({ assembly, options, frame, words: [], least, most: least }, least);
  // Never null: a section has layers.
  const { x, y, width, height } = boxOfMarks(marks)!;
  return { width, height, marks: placeMarks(marks, { move: [-x, -y] }) };
}

function drawWords({ assembly, words }: Subject, scale: number): readonly Mark[] {
  const top = heightOfWords(words);
  return [
    drawText([0, top], `Section ${assembly.letter} – 1 : ${scale}`, TYPE.large, { weight: 'bold', baseline: 'top' }),
    ...drawTextLines([0, top - TYPE.large * LINE_STEP], words, SIZE, { baseline: 'top' }),
  ];
}

/**
 * A vertical section of one assembly as it stands in the form, seen from its side: the mould face is always at the bottom. The largest of 1:1,
 * 1:2, 1:2.5, 1:5 and 1:10 that fits is taken; texts keep their size.
 * Throws DrawingError when none fits.
 */
export function drawAssemblySection(assembly: Assembly, options: SectionOptions): ScaledPicture {
  const frame = findFrame(assembly);
  const words = describeAssembly(assembly).flatMap((text) => wrapText(text, SIZE, 'plain', options.width));
  const subject: Subject = { assembly, options, frame, words, ...findWindows(assembly, frame) };
  for (const scale of SCALES) {
    const layout = layOut(subject, scale);
    if (layout === null) continue;
    const labels = drawLabels(subject, layout);
    const { origin, window, left, right, bottom, top } = layout;
    const placement = { scale: 1 / scale, move: [origin[0] - window.from / scale, origin[1]] as const };
    const column = (laid: LaidColumn, own: readonly SideLabel[]): LaidColumn => layColumn(own, laid.width, SIZE);
    return {
      marks: [
        ...placeMarks(drawPicture(subject, window), placement),
        ...labels.marks,
        ...drawDepth(subject, layout),
        ...drawColumn(column(left, labels.left), '-x', left.width, bottom, top, SIZE),
        ...drawColumn(column(right, labels.right), '+x', options.width - right.width, bottom, top, SIZE),
        ...drawWords(subject, scale),
      ],
      width: options.width,
      height: layout.height,
      scale,
    };
  }
  throw new DrawingError(
    `section ${assembly.letter} (${assembly.item.id}, ${writeMm(assembly.thickness)} mm thick) does not fit on ${options.width.toFixed(0)} × ${options.height.toFixed(0)} mm at 1 : ${SCALES.at(-1)!}; expected a larger sheet`,
  );
}
