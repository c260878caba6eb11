import { findAsideAlongAxis } from '../../engine/form/tilt.ts';
import { layerAtDepth } from '../../job/section.ts';
import type { AssemblyQuestion } from './assembly-question.ts';
import type { Assembly, CoverLine } from './assembly-type.ts';
import { findEdgeLayer, fromBedUp, type HoldingSite, NEAREST_SIDE, nameBeyond } from './holding-site.ts';
import { findSideRoom } from './side-room.ts';
import { findWantedCover } from './wanted-cover.ts';

type Bar = NonNullable<Assembly['crossBar']>;

function direction({ castIn }: AssemblyQuestion): readonly [cos: number, sin: number] {
  const angle = ((castIn.crossBar?.direction_deg ?? 0) * Math.PI) / 180;
  return [Math.cos(angle), Math.sin(angle)];
}

function underFace(question: AssemblyQuestion, site: HoldingSite, top: number, bar: Bar): CoverLine[] {
  const { item, place, rules } = question;
  const depth = top + item.length_mm - bar.fromFoot;
  const layer = layerAtDepth(site.below, depth);
  if (layer === undefined) return [];
  const wanted = findWantedCover(rules.exposure, bar.diameter, false);
  const radius = bar.diameter / 2;
  const placed = fromBedUp(site, question, layer);
  const isOnForm = place === 'mould face';
  const [cos, sin] = direction(question);
  const [x, y] = site.at;
  const half = bar.length / 2;
  const strip = {
    from: [x - half * cos, y - half * sin],
    to: [x + half * cos, y + half * sin],
    width: bar.diameter,
  } as const;
  return [
    {
      part: 'cross bar',
      toward: nameBeyond(site.layers, placed, isOnForm),
      cover: depth - radius - layer.from,
      wanted,
    },
    { part: 'cross bar', toward: nameBeyond(site.layers, placed, !isOnForm), cover: layer.to - depth - radius, wanted },
    { part: 'cross bar', toward: NEAREST_SIDE, cover: findSideRoom(site.region, strip, null), wanted },
  ];
}

/** Direction 0 lies along the edge; what is turned out of it goes up and down. */
function inEdge(
  question: AssemblyQuestion,
  site: HoldingSite,
  edge: NonNullable<HoldingSite['edge']>,
  bar: Bar,
): CoverLine[] {
  const { castIn, item, rules } = question;
  const layer = findEdgeLayer(site, edge);
  if (layer === undefined) return [];
  const wanted = findWantedCover(rules.exposure, bar.diameter, false);
  const depth = castIn.recess_mm + item.length_mm - bar.fromFoot;
  const [cos, sin] = direction(question).map(Math.abs) as [number, number];
  const aside = Math.abs(findAsideAlongAxis(site.tilt, depth));
  const reach = (sin * bar.length + cos * bar.diameter) / 2 + aside;
  const half = (cos * bar.length + sin * bar.diameter) / 2;
  const at = [site.at[0] + edge.inward[0] * depth, site.at[1] + edge.inward[1] * depth] as const;
  const strip = {
    from: [at[0] - edge.along[0] * half, at[1] - edge.along[1] * half],
    to: [at[0] + edge.along[0] * half, at[1] + edge.along[1] * half],
    width: bar.diameter,
  } as const;
  return [
    {
      part: 'cross bar',
      toward: nameBeyond(site.layers, layer, true),
      cover: edge.height - reach - layer.from,
      wanted,
    },
    { part: 'cross bar', toward: nameBeyond(site.layers, layer, false), cover: layer.to - edge.height - reach, wanted },
    { part: 'cross bar', toward: NEAREST_SIDE, cover: findSideRoom(site.region, strip, null), wanted },
  ];
}

/**
 * Concrete around the bar through the cross hole: toward both borders of its layer, and toward the nearest side over its whole length. The bar is
 * of steel that can rust.
 * @param top of the insert below its own face [mm]
 */
export function findBarCovers(
  question: AssemblyQuestion,
  site: HoldingSite,
  top: number,
  bar: Bar,
): readonly CoverLine[] {
  return site.edge === null ? underFace(question, site, top, bar) : inEdge(question, site, site.edge, bar);
}
