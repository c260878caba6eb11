import type { PlanBar } from '../../assess/set-out/lay-bars.ts';
import type { PanelSetOut, SetOutItem } from '../../assess/set-out/set-out.ts';
import type { Point } from '../../engine/geometry/point.ts';
import type { Box } from '../boxes.ts';
import type { LineMark, Mark } from '../drawing.ts';
import { insertSymbol } from '../insert-symbol.ts';
import { drawArea, drawCircle, drawLine, drawPath, rectangle } from '../marks.ts';
import { findFootDiameter } from '../section/section-insert.ts';
import { clipRing, clipSegment } from './clip.ts';
import type { DetailView } from './detail-view.ts';

/** What a detail shows, and how it comes onto paper. */
export interface DetailScene {
  readonly setOut: PanelSetOut;
  readonly view: DetailView;
  readonly scale: number;
  /** From the view at 1:1 to paper. */
  readonly toPaper: (at: Point) => Point;
  /** What is shown, at 1:1. */
  readonly window: Box;
}

export type Line = readonly [Point, Point];

/** A piece of the picture: its marks, and the lines of it that no text may lie on [mm of paper]. */
export interface DetailPiece {
  readonly marks: readonly Mark[];
  readonly lines: readonly Line[];
}

/** Smallest radius of a symbol [mm of paper]. */
const LEAST_RADIUS = 1.7;

export function findRadius(item: SetOutItem, scale: number): number {
  return Math.max(LEAST_RADIUS, item.item === null ? 0 : item.item.bodyDiameter_mm / 2 / scale);
}

/** Radius of all that is drawn of an item around its middle: its foot too [mm of paper]. */
export function findReach(item: SetOutItem, scale: number): number {
  return Math.max(findRadius(item, scale), item.item === null ? 0 : findFootDiameter(item.item) / 2 / scale);
}

function onPaper({ toPaper }: DetailScene, pieces: readonly Line[]): readonly Line[] {
  return pieces.map(([from, to]): Line => [toPaper(from), toPaper(to)]);
}

/** The panel around a connection: its sides and openings, or bed, faces and ends of an edge. */
export function drawSurroundings(scene: DetailScene): DetailPiece {
  const { setOut, view, window, toPaper, scale } = scene;
  if (view.ends === null) {
    const outline = onPaper(scene, clipRing(setOut.outline, window));
    const openings = onPaper(
      scene,
      setOut.openings.flatMap((ring) => clipRing(ring, window)),
    );
    const marks = [
      ...outline.map(([from, to]) => drawLine('outline', from, to, 'thick')),
      ...openings.map(([from, to]) => drawLine('opening', from, to, 'medium')),
    ];
    return { marks, lines: [...outline, ...openings] };
  }
  const [from, to] = [Math.max(view.ends[0], window.x), Math.min(view.ends[1], window.x + window.width)];
  const levels = onPaper(scene, [
    [
      [from, 0],
      [to, 0],
    ],
    [
      [from, setOut.depth],
      [to, setOut.depth],
    ],
  ]);
  const ends = onPaper(
    scene,
    view.ends
      .filter((x) => x >= window.x && x <= window.x + window.width)
      .map(
        (x): Line => [
          [x, 0],
          [x, setOut.depth],
        ],
      ),
  );
  const [x, y] = toPaper([window.x, 0]);
  return {
    marks: [
      drawArea('form', null, 'light', rectangle(x, y - 2, window.width / scale, 2)),
      ...levels.map(([a, b], k) => drawLine('outline', a, b, k === 0 ? 'thick' : 'medium')),
      ...ends.map(([a, b]) => drawLine('outline', a, b, 'thick')),
    ],
    lines: [...levels, ...ends],
  };
}

/** The two sides of a bar's shadow, from end to end. */
function sidesOf({ from, to, diameter }: Pick<PlanBar, 'from' | 'to' | 'diameter'>): readonly Line[] {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  if (length === 0) return [];
  const across: Point = [(-(to[1] - from[1]) / length) * (diameter / 2), ((to[0] - from[0]) / length) * (diameter / 2)];
  return [-1, 1].map(
    (side): Line => [
      [from[0] + side * across[0], from[1] + side * across[1]],
      [to[0] + side * across[0], to[1] + side * across[1]],
    ],
  );
}

/** Bars that pass through the window. */
export function findBarsInside(bars: readonly PlanBar[], window: Box): readonly PlanBar[] {
  return bars.filter(({ from, to }) => clipSegment(from, to, window) !== null);
}

/** The reinforcement in the window, faint, as wide as it is. */
export function drawBars(scene: DetailScene, bars: readonly PlanBar[]): readonly LineMark[] {
  return bars.flatMap(sidesOf).flatMap(([from, to]): LineMark[] => {
    const piece = clipSegment(from, to, scene.window);
    return piece === null ? [] : [drawLine('bar', scene.toPaper(piece[0]), scene.toPaper(piece[1]), 'faint')];
  });
}

/** The cross bar of an item, as long as the window lets it be. */
export function drawItemBar(scene: DetailScene, { crossBar, plan, aboveBed }: SetOutItem): DetailPiece {
  if (crossBar === null || crossBar.planDirection_deg === null) return { marks: [], lines: [] };
  const { view, scale, window } = scene;
  const angle = (crossBar.planDirection_deg * Math.PI) / 180;
  const half: Point = [(Math.cos(angle) * crossBar.length) / 2, (Math.sin(angle) * crossBar.length) / 2];
  const end = (side: 1 | -1) => view.toView([plan[0] + side * half[0], plan[1] + side * half[1]], aboveBed);
  const piece = clipSegment(end(-1), end(1), window);
  if (piece === null) return { marks: [], lines: [] };
  const [from, to] = [scene.toPaper(piece[0]), scene.toPaper(piece[1])];
  const [a, b] = sidesOf({ from, to, diameter: crossBar.diameter / scale });
  if (a === undefined || b === undefined) return { marks: [], lines: [] };
  return { marks: [drawArea('bar', 'thin', 'grey', [a[0], a[1], b[1], b[0]])], lines: [a, b] };
}

/** An insert as it is seen: from above its symbol, into an edge its end; its foot hidden behind. */
export function drawItem(scene: DetailScene, item: SetOutItem): readonly Mark[] {
  const { view, scale } = scene;
  const at = scene.toPaper(view.toView(item.plan, item.aboveBed));
  const radius = findRadius(item, scale);
  const reach = findReach(item, scale);
  const hidden = reach > radius ? [drawCircle('insert', 'dashed', 'none', at, reach)] : [];
  if (view.kind === 'plan') return [...hidden, insertSymbol(item, at, radius)];
  const arm = radius / 2;
  return [
    ...hidden,
    drawCircle('insert', 'medium', 'white', at, radius),
    drawLine('insert', [at[0] - arm, at[1]], [at[0] + arm, at[1]], 'thin'),
    drawLine('insert', [at[0], at[1] - arm], [at[0], at[1] + arm], 'thin'),
  ];
}

/** The middle lines of the group, over the whole window. */
export function drawCentre(scene: DetailScene): DetailPiece {
  const { window, view } = scene;
  const [x, y] = view.centre;
  const lines = onPaper(scene, [
    [
      [window.x, y],
      [window.x + window.width, y],
    ],
    [
      [x, window.y],
      [x, window.y + window.height],
    ],
  ]);
  return { marks: lines.map(([from, to]) => drawLine('dimension', from, to, 'dash-dot')), lines };
}

/** The plate that is bolted on later. */
export function drawPlate(scene: DetailScene, plate: readonly Point[]): DetailPiece {
  const corners = plate.map(scene.toPaper);
  return {
    marks: [drawPath('holding', corners, 'dashed', true)],
    lines: corners.map((corner, k): Line => [corner, corners[(k + 1) % corners.length]!]),
  };
}
