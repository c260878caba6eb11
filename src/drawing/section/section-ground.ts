import type { Assembly } from '../../assess/set-out/assembly-type.ts';
import type { Point } from '../../engine/geometry/point.ts';
import type { Bed } from '../../job/documents/yard.ts';
import type { Fill, Mark } from '../drawing.ts';
import { drawArea, drawLine, drawPath, rectangle } from '../marks.ts';
import { findFaceX, type SectionFrame } from './section-frame.ts';

type LayerKind = Assembly['layers'][number]['kind'];

const LAYER_FILLS: Readonly<Record<LayerKind, Fill>> = {
  structural: 'hatch',
  'outer skin': 'hatch',
  insulation: 'light',
  liner: 'grey',
  cavity: 'white',
};

/** What of a section is shown: from one x to another, at 1:1 [mm]. */
export interface SectionWindow {
  readonly from: number;
  readonly to: number;
}

/** Where the concrete begins at a height: at the window's side, or at the side form. */
function startAt(assembly: Assembly, frame: SectionFrame, window: SectionWindow, y: number): number {
  return assembly.place === 'edge' ? findFaceX(frame, y) : window.from;
}

/** A zigzag over the height of a layer, as insulation is drawn. */
function drawZigzag(from: Point, to: Point): Mark {
  const height = to[1] - from[1];
  const count = Math.max(2, Math.round((to[0] - from[0]) / (0.6 * height)));
  const points = Array.from(
    { length: count + 1 },
    (_, k): Point => [from[0] + ((to[0] - from[0]) * k) / count, k % 2 === 0 ? from[1] : to[1]],
  );
  return drawPath('section', points, 'hair');
}

/** The layers of a section from the bed upward, with the lines between them. */
export function drawLayers(assembly: Assembly, frame: SectionFrame, window: SectionWindow): readonly Mark[] {
  return assembly.layers.flatMap(({ kind, from, to }): Mark[] => {
    const [low, high] = [startAt(assembly, frame, window, from), startAt(assembly, frame, window, to)];
    const ring: readonly Point[] = [
      [low, from],
      [window.to, from],
      [window.to, to],
      [high, to],
    ];
    const zigzag = kind === 'insulation' ? [drawZigzag([Math.max(low, high), from], [window.to, to])] : [];
    return [
      drawArea('section', null, LAYER_FILLS[kind], ring),
      ...zigzag,
      drawLine('section', [low, from], [window.to, from], 'medium'),
      drawLine('section', [high, to], [window.to, to], 'medium'),
    ];
  });
}

/** Where the picture is cut off: thin lines with a kink. */
export function drawBreaks(assembly: Assembly, { from, to }: SectionWindow): readonly Mark[] {
  const { thickness } = assembly;
  const kink = Math.min(8, thickness / 8);
  const at = (x: number): Mark =>
    drawPath(
      'section',
      [
        [x, -kink],
        [x, thickness / 2 - kink],
        [x - kink / 2, thickness / 2 - kink / 3],
        [x + kink / 2, thickness / 2 + kink / 3],
        [x, thickness / 2 + kink],
        [x, thickness + kink],
      ],
      'hair',
    );
  return assembly.place === 'edge' ? [at(to)] : [at(from), at(to)];
}

/** Thickness that a side form is drawn with [mm]: its own is not known. */
export const SIDE_FORM = 20;

/** What the bed and the side form are called. */
export function nameForms(bed: Bed | null): { readonly bed: string; readonly sideForm: string } {
  if (bed === null) return { bed: 'bed', sideForm: 'side form' };
  return { bed: `bed (${bed.form})`, sideForm: `side form (${bed.sideForm})` };
}

/** Thickness that the bed is drawn with [mm]. */
export const BED = 10;

/** The bed below the section. */
export function drawBed(bed: Bed | null, window: SectionWindow): readonly Mark[] {
  const fill: Fill = bed?.form === 'steel' ? 'grey' : 'light';
  return [
    drawArea('form', null, fill, rectangle(window.from, -BED, window.to - window.from, BED)),
    drawLine('form', [window.from, 0], [window.to, 0], 'thick'),
  ];
}

/** The side form of an edge, leaning as the edge does. */
export function drawSideForm(assembly: Assembly, frame: SectionFrame, bed: Bed | null): readonly Mark[] {
  const [low, high] = [findFaceX(frame, 0), findFaceX(frame, assembly.thickness)];
  const fill: Fill = bed?.sideForm === 'steel' ? 'grey' : 'light';
  const ring: readonly Point[] = [
    [low - SIDE_FORM, 0],
    [low, 0],
    [high, assembly.thickness],
    [high - SIDE_FORM, assembly.thickness],
  ];
  return [drawArea('form', 'medium', fill, ring), drawLine('form', [low, 0], [high, assembly.thickness], 'thick')];
}
