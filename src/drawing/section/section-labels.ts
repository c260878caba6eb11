import type { Assembly } from '../../assess/set-out/assembly-type.ts';
import { NEAREST_SIDE } from '../../assess/set-out/holding-site.ts';
import type { Point } from '../../engine/geometry/point.ts';
import type { Bed } from '../../job/documents/yard.ts';
import { pointOn, type SectionFrame } from './section-frame.ts';
import { nameForms, SIDE_FORM } from './section-ground.ts';
import { findBounds, nameFaces, nameLayer, printSteps, writeMm } from './section-words.ts';
import type { SideLabel } from './side-labels.ts';

/** A chain of heights beside a section, with a label at the middle of each part. Heights at 1:1 above the bed [mm]. */
export interface LabelledChain {
  readonly heights: readonly number[];
  readonly parts: readonly { readonly at: number; readonly words: string }[];
}

/** Parts between heights, with what is written at each. */
function chainOf(heights: readonly number[], words: (k: number) => string): LabelledChain {
  const parts = heights.slice(1).map((to, k) => ({ at: (heights[k]! + to) / 2, words: words(k) }));
  return { heights, parts };
}

/** The stack: every step and what it is, from the bed upward. */
export function chainSteps(assembly: Assembly): LabelledChain {
  const printed = printSteps(assembly);
  return chainOf(findBounds(assembly), (k) => `${writeMm(printed[k]!)} ${assembly.stack[k]!.words}`);
}

/** Chains on the other side, the nearest to the picture first: the axis of an edge, the layers where there are several, the whole. */
export function listChains(assembly: Assembly, { axisHeight }: SectionFrame): readonly LabelledChain[] {
  const { layers, thickness, place, surface } = assembly;
  const aboveBed = `${writeMm(axisHeight + surface.mould)} above the bed`;
  const axis: LabelledChain = {
    heights: [0, axisHeight],
    parts: [
      {
        at: axisHeight / 2,
        words:
          surface.mould === 0
            ? `axis ${aboveBed}`
            : `axis ${writeMm(axisHeight)} above the mould face there, ${aboveBed}`,
      },
    ],
  };
  return [
    ...(place === 'edge' ? [axis] : []),
    ...(layers.length > 1
      ? [
          chainOf([0, ...layers.map(({ to }) => to)], (k) => {
            const { kind, from, to } = layers[k]!;
            return `${nameLayer(kind)} ${writeMm(to - from)}`;
          }),
        ]
      : []),
    chainOf([0, thickness], () => `thickness ${writeMm(thickness)}`),
  ];
}

/** The concrete behind the foot, as a dimension in the picture at 1:1; null where it lies beyond the picture or there is none. */
export function findFootCover(
  { covers, place, item }: Assembly,
  frame: SectionFrame,
): { readonly from: Point; readonly to: Point; readonly words: string } | null {
  const [line] = covers;
  if (line === undefined || place === 'edge' || line.part !== 'foot' || line.toward === NEAREST_SIDE) return null;
  if (line.cover <= 0) return null;
  return {
    from: pointOn(frame, item.length_mm, 0),
    to: pointOn(frame, item.length_mm + line.cover, 0),
    words: `cover at the foot ${writeMm(line.cover)}, wanted ${writeMm(line.wanted)}`,
  };
}

/** How far from a level a face lies, in words; empty where it lies in it. @param above by how much it lies above [mm] */
function tellLevel(above: number, level: string): string {
  if (above === 0) return '';
  return `, ${writeMm(Math.abs(above))} ${above > 0 ? 'above' : 'below'} ${level}`;
}

/** The two faces, at a height each; in a rebate how far from the bed and the top of the side form they lie. */
export function labelFaces(
  { thickness, surface }: Assembly,
  faceDown: 'outside' | 'inside',
  toPaper: (y: number) => Point,
): readonly SideLabel[] {
  const { mould, trowelled } = nameFaces(faceDown);
  return [
    {
      words: `${trowelled}${tellLevel(-surface.trowelled, 'the top of the side form') || ', level of the screed'}`,
      weight: 'bold',
      at: toPaper(thickness),
    },
    { words: `${mould}${tellLevel(surface.mould, 'the bed')}`, weight: 'bold', at: toPaper(0) },
  ];
}

/** The forms that a section touches, by points of them at 1:1. */
export function labelForms(
  assembly: Assembly,
  frame: SectionFrame,
  bed: Bed | null,
  bedAt: Point,
): readonly { readonly words: string; readonly at: Point }[] {
  const names = nameForms(bed);
  const height = 0.85 * assembly.thickness;
  const x = (height - frame.axisHeight) * Math.tan(frame.tilt) - SIDE_FORM;
  const sideForm: readonly { words: string; at: Point }[] =
    assembly.place === 'edge' ? [{ words: names.sideForm, at: [x, height] }] : [];
  const { mould } = assembly.surface;
  const built = mould === 0 ? '' : `, ${mould > 0 ? 'built up' : 'lowered'} by ${writeMm(Math.abs(mould))} there`;
  return [{ words: `${names.bed}${built}`, at: bedAt }, ...sideForm];
}
