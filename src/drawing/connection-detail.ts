import type { PlanBar } from '../assess/set-out/lay-bars.ts';
import type { PanelSetOut, SetOutGroup, SetOutItem } from '../assess/set-out/set-out.ts';
import type { Point } from '../engine/geometry/point.ts';
import type { ScaledPicture } from './assembly-section.ts';
import { type Box, boxAround, growBox } from './boxes.ts';
import {
  type DetailPiece,
  type DetailScene,
  drawBars,
  drawCentre,
  drawItem,
  drawItemBar,
  drawPlate,
  drawSurroundings,
  findBarsInside,
  findRadius,
  findReach,
  type Line,
} from './detail/detail-picture.ts';
import { type DetailView, findDetailView, listMembers } from './detail/detail-view.ts';
import { describeGroup } from './detail/detail-words.ts';
import type { Mark } from './drawing.ts';
import { DrawingError } from './drawing-error.ts';
import { type LabelWish, placeLabels } from './label-places.ts';
import { drawArea, drawLine, drawText, drawTextLines } from './marks.ts';
import { placeMarks } from './place.ts';
import { drawRunningDimensions, lengthForFigures, type RunningDimension } from './running-dimensions.ts';
import { TYPE } from './sheets/paper.ts';
import { writeSigned } from './sheets/words.ts';
import { ASCENT, DESCENT, LINE_STEP, measureText, wrapText } from './text-size.ts';

/** A bar of the reinforcement in the plan. */
export type Bar = PlanBar;

/** Scales 1 : n, the largest first. */
const SCALES = [2, 2.5, 5, 10, 15, 20, 25, 50, 100] as const;

const SIZE = TYPE.body;
/** Least and most that is shown around the inserts, and how far a row of figures reaches beside its figures [mm of paper]. */
const AROUND = { least: 5, most: 22 };
const ROW_STEPS = 5.4;
/** From the picture to a row [mm of paper]. */
const ROW_GAP = 2;
/** Column of the arrow to the datum corner [mm of paper]. */
const ARROW = 10;

type Member = ReturnType<typeof listMembers>[number];

/** Everything of a detail that does not depend on the scale. */
interface Subject {
  readonly setOut: PanelSetOut;
  readonly group: SetOutGroup;
  readonly members: readonly Member[];
  readonly view: DetailView;
  readonly bars: readonly PlanBar[];
  readonly plate: readonly Point[] | null;
  readonly box: { readonly width: number; readonly height: number };
  /** What must be seen, at 1:1. */
  readonly extent: Box;
}

/** Longer cross bars are cut where the picture ends [mm]. */
const LONGEST_BAR = 400;

/** The middle of an item and the ends of its cross bar, in the plan. */
function listEnds({ plan, crossBar }: SetOutItem): readonly Point[] {
  if (crossBar === null || crossBar.planDirection_deg === null || crossBar.length > LONGEST_BAR) return [plan];
  const angle = (crossBar.planDirection_deg * Math.PI) / 180;
  return [-0.5, 0.5].map(
    (share): Point => [
      plan[0] + share * crossBar.length * Math.cos(angle),
      plan[1] + share * crossBar.length * Math.sin(angle),
    ],
  );
}

function findExtent(subject: Omit<Subject, 'extent'>): Box {
  const { members, view, plate, setOut } = subject;
  const points = members.flatMap(({ item }) => {
    const { x, y, width, height } = boxAround(listEnds(item).map((end) => view.toView(end, item.aboveBed)));
    // A scale of 1: what an item takes at 1:1.
    const taken = growBox({ x, y, width, height }, findReach(item, 1));
    return [
      [taken.x, taken.y],
      [taken.x + taken.width, taken.y + taken.height],
    ] as const;
  });
  const x = view.centre[0];
  const edge: readonly Point[] =
    view.kind === 'edge'
      ? [
          [x, 0],
          [x, setOut.depth],
        ]
      : [];
  return boxAround([...points, view.centre, ...edge, ...(plate ?? [])]);
}

function heightOfWords(lines: readonly string[]): number {
  return TYPE.large * LINE_STEP + (lines.length * LINE_STEP + DESCENT) * SIZE;
}

function widestFigure(figures: readonly number[]): number {
  return Math.max(...figures.map((figure) => measureText(writeSigned(figure), SIZE)));
}

/** The arrow to the datum corner, on an edge to where its tape starts, with its words; over the picture, its marks hang below y = 0. */
function layArrow({ setOut, view, box, members }: Subject): {
  readonly marks: readonly Mark[];
  readonly height: number;
} {
  const printed = members[0]?.item.printed;
  const goal = printed?.kind === 'edge' ? printed.from : `the datum corner: ${setOut.datumWords}`;
  const lines = wrapText(`to ${goal}`, SIZE, 'plain', box.width - ARROW);
  const height = Math.max(ARROW - 3, (lines.length * LINE_STEP + DESCENT) * SIZE) + 1;
  const angle = Math.atan2(view.towardDatum[1], view.towardDatum[0]);
  const middle: Point = [ARROW / 2 - 1, -height / 2];
  const at = (along: number, across: number): Point => [
    middle[0] + along * Math.cos(angle) - across * Math.sin(angle),
    middle[1] + along * Math.sin(angle) + across * Math.cos(angle),
  ];
  const top = -(height - ((lines.length - 1) * LINE_STEP + ASCENT) * SIZE) / 2;
  return {
    height,
    marks: [
      drawLine('datum', at(-3.4, 0), at(1, 0), 'medium'),
      drawArea('datum', null, 'black', [at(3.4, 0), at(0.4, 1.4), at(0.4, -1.4)]),
      ...drawTextLines([ARROW, top], lines, SIZE, { layer: 'datum', baseline: 'top' }),
    ],
  };
}

interface Label {
  readonly wish: LabelWish;
  readonly words: string;
  readonly weight: 'plain' | 'bold';
  readonly number: number | null;
}

function labelAt(anchor: Point, radius: number, words: string, weight: Label['weight'], number: number | null): Label {
  const width = measureText(words, SIZE, weight) + 0.6;
  return { wish: { anchor, radius, width, height: (ASCENT + DESCENT) * SIZE }, words, weight, number };
}

/** The line of the check diagonal, shortened to the rims of its inserts. */
function drawDiagonal(scene: DetailScene, { group, members }: Subject): DetailPiece & { readonly label: Label | null } {
  const { diagonal } = group;
  if (diagonal === null) return { marks: [], lines: [], label: null };
  const find = (number: number): SetOutItem => members.find(({ item }) => item.number === number)!.item;
  const [a, b] = [find(diagonal.from), find(diagonal.to)];
  const [from, to] = [a, b].map(({ plan, aboveBed }) => scene.toPaper(scene.view.toView(plan, aboveBed))) as [
    Point,
    Point,
  ]; // map keeps the length of a pair
  const words = `${a.number}–${b.number}: ${diagonal.length}`;
  // A third of its way: the middle is often the centre of the group.
  const third: Point = [from[0] + (to[0] - from[0]) / 3, from[1] + (to[1] - from[1]) / 3];
  return {
    marks: [drawLine('dimension', from, to, 'thin')],
    lines: [[from, to]],
    label: labelAt(third, 0.2, words, 'plain', null),
  };
}

/** Figures of one row: of members at one place only the nearest to the row has a line to it. */
function listFigures(subject: Subject, scene: DetailScene, axis: 0 | 1): readonly RunningDimension[] {
  const nearest = new Map<string, RunningDimension & { readonly feature: number }>();
  const centre = scene.toPaper(scene.view.centre);
  for (const { item, dx, dy } of subject.members) {
    const place = scene.toPaper(scene.view.toView(item.plan, item.aboveBed));
    const figure = axis === 0 ? dx : dy;
    // What is printed as 0 may be half a mm off the printed centre.
    const at = figure === 0 ? centre[axis] : place[axis];
    const text = writeSigned(figure);
    const key = `${at.toFixed(3)} ${text}`;
    const feature = place[1 - axis]! - findRadius(item, scene.scale);
    const known = nearest.get(key);
    if (known === undefined || feature < known.feature) nearest.set(key, { at, text, feature });
  }
  return [...nearest.values()];
}

/** Lines from the rows to the inserts, that no text may lie on. */
function linesOfRow(figures: readonly RunningDimension[], row: number, axis: 0 | 1): readonly Line[] {
  return figures.flatMap(({ at, feature }): Line[] => {
    if (feature === undefined) return [];
    return axis === 0
      ? [
          [
            [at, row],
            [at, feature],
          ],
        ]
      : [
          [
            [row, at],
            [feature, at],
          ],
        ];
  });
}

/** Puts numbers and the diagonal's length where they cover nothing; a length without a place stands in the words alone. */
function drawLabels(
  labels: readonly Label[],
  frame: Box,
  lines: readonly Line[],
): { readonly marks: readonly Mark[]; readonly unlabelled: readonly number[] } {
  const marks: Mark[] = [];
  const unlabelled: number[] = [];
  const places = placeLabels(
    labels.map(({ wish }) => wish),
    { frame, obstacles: [], lines, gap: 0.6 },
  );
  for (const [i, { words, weight, number }] of labels.entries()) {
    const place = places[i] ?? null;
    if (place === null) {
      if (number !== null) unlabelled.push(number);
      continue;
    }
    if (place.leader !== null) marks.push(drawLine('insert', ...place.leader, 'hair'));
    marks.push(drawText([place.box.x + 0.3, place.box.y + DESCENT * SIZE], words, SIZE, { weight, layer: 'insert' }));
  }
  return { marks, unlabelled };
}

/** Draws a detail at a scale; null where it does not fit. */
function drawAt(
  subject: Subject,
  scale: number,
): { readonly picture: ScaledPicture; readonly unlabelled: readonly number[] } | null {
  const { setOut, group, members, view, box, extent, plate } = subject;
  const items = members.map(({ item }) => item);
  const arrow = layArrow(subject);
  const beside = ROW_GAP + ROW_STEPS + widestFigure(members.map(({ dy }) => dy)) + 1;
  const under = ROW_GAP + ROW_STEPS + widestFigure(members.map(({ dx }) => dx)) + 1;
  const lay = (unlabelled: readonly number[], window: Box) => {
    const inside = view.kind === 'plan' ? findBarsInside(subject.bars, window) : [];
    const words = describeGroup(setOut, group, items, inside, plate !== null, unlabelled);
    return { inside, words: words.flatMap((text) => wrapText(text, SIZE, 'plain', box.width)) };
  };
  const figures = lengthForFigures(members.length, SIZE);
  const room = (length: number, most: number) => Math.min(most, Math.max(length / scale + 2 * AROUND.most, figures));
  const width = room(extent.width, box.width - beside - 1);
  // How many lines of words there are depends on what is shown: first on all that could be.
  const tall = growBox(extent, AROUND.most * scale);
  const free = box.height - heightOfWords(lay([], tall).words) - 2 - under - arrow.height;
  const height = room(extent.height, free);
  const least = (length: number) => Math.max(length / scale + 2 * AROUND.least, figures);
  if (width < least(extent.width) || height < least(extent.height)) return null;
  const window: Box = {
    x: extent.x + extent.width / 2 - (width * scale) / 2,
    y: extent.y + extent.height / 2 - (height * scale) / 2,
    width: width * scale,
    height: height * scale,
  };
  const origin: Point = [beside + (box.width - beside - width) / 2, 0];
  const toPaper = ([x, y]: Point): Point => [origin[0] + (x - window.x) / scale, (y - window.y) / scale];
  const scene: DetailScene = { setOut, view, scale, toPaper, window };
  const { inside } = lay([], window);
  const rows = [0, 1].map((axis) => listFigures(subject, scene, axis as 0 | 1)); // of a pair of axes
  const [below, side] = [-ROW_GAP, origin[0] - ROW_GAP];
  const diagonal = drawDiagonal(scene, subject);
  const pieces: readonly DetailPiece[] = [
    drawSurroundings(scene),
    ...items.map((item) => drawItemBar(scene, item)),
    drawCentre(scene),
    ...(plate === null ? [] : [drawPlate(scene, plate)]),
    diagonal,
  ];
  const lines = [
    ...pieces.flatMap((piece) => piece.lines),
    ...linesOfRow(rows[0]!, below, 0),
    ...linesOfRow(rows[1]!, side, 1),
  ];
  const numbers = items.map((item) =>
    labelAt(
      toPaper(view.toView(item.plan, item.aboveBed)),
      findReach(item, scale),
      String(item.number),
      'bold',
      item.number,
    ),
  );
  const frame: Box = { x: origin[0], y: 0, width, height };
  const wanted = [...numbers, ...(diagonal.label === null ? [] : [diagonal.label])];
  const bars = drawBars(scene, inside);
  const clear = drawLabels(wanted, frame, [...lines, ...bars.map(({ from, to }): Line => [from, to])]);
  // Rather over a faint bar than without its number.
  const labels = clear.unlabelled.length === 0 ? clear : drawLabels(wanted, frame, lines);
  const { words } = lay(labels.unlabelled, window);
  const total = heightOfWords(words) + 2 + under + height + arrow.height;
  if (total > box.height) return null;
  const [centreX, centreY] = toPaper(view.centre);
  const row = (axis: 0 | 1) =>
    drawRunningDimensions({
      side: axis === 0 ? '-y' : '-x',
      line: axis === 0 ? below : side,
      from: axis === 0 ? origin[0] : 0,
      to: axis === 0 ? origin[0] + width : height,
      datum: axis === 0 ? centreX : centreY,
      dimensions: rows[axis]!,
      size: SIZE,
    }).marks;
  const top = heightOfWords(words);
  const up = top + 2 + under;
  const marks: readonly Mark[] = [
    ...bars,
    ...pieces.flatMap((piece) => piece.marks),
    ...row(0),
    ...row(1),
    ...items.flatMap((item) => drawItem(scene, item)),
    ...labels.marks,
  ];
  const title = `Connection ${group.connection} – 1 : ${scale}`;
  const picture: ScaledPicture = {
    marks: [
      ...placeMarks(marks, { move: [0, up] }),
      ...placeMarks(arrow.marks, { move: [0, total] }),
      drawText([0, top], title, TYPE.large, { weight: 'bold', baseline: 'top' }),
      ...drawTextLines([0, top - TYPE.large * LINE_STEP], words, SIZE, { baseline: 'top' }),
    ],
    width: box.width,
    height: total,
    scale,
  };
  return { picture, unlabelled: labels.unlabelled };
}

/**
 * A connection as it lies in the form, seen from above; one in an edge as one stands inside the form and faces its side. The largest scale that
 * fits and has room for most numbers is taken.
 * Throws DrawingError when none fits.
 *
 * @param bars of the panel in its plan; those in the picture are drawn
 * @param plate outline of the plate in the view of the detail (`layPlate`); null: none is known
 */
export function drawConnectionDetail(
  setOut: PanelSetOut,
  group: SetOutGroup,
  bars: readonly Bar[],
  box: { readonly width: number; readonly height: number },
  plate: readonly Point[] | null = null,
): ScaledPicture {
  const base = {
    setOut,
    group,
    members: listMembers(setOut, group),
    view: findDetailView(setOut, group),
    bars,
    plate,
    box,
  };
  const subject: Subject = { ...base, extent: findExtent(base) };
  let best: { picture: ScaledPicture; unlabelled: readonly number[] } | null = null;
  for (const scale of SCALES) {
    const drawn = drawAt(subject, scale);
    if (drawn === null || (best !== null && drawn.unlabelled.length >= best.unlabelled.length)) continue;
    best = drawn;
    if (drawn.unlabelled.length === 0) break;
  }
  if (best !== null) return best.picture;
  throw new DrawingError(
    `the detail of connection ${group.connection} of panel ${setOut.panel.mark} does not fit on ${box.width.toFixed(0)} × ${box.height.toFixed(0)} mm; expected a larger sheet`,
  );
}
