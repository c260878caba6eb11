import { findAsideAlongAxis } from '../../engine/form/tilt.ts';
import { distanceToBoundary } from '../../engine/geometry/region.ts';
import { COVER_DEVIATION } from '../../engine/material/cover.ts';
import { showLength } from '../../job/resolve/local-member-type.ts';
import { layerAtDepth } from '../../job/section.ts';
import type { AssemblyQuestion, Finding } from './assembly-question.ts';
import type { Assembly, CoverLine } from './assembly-type.ts';
import { findBarCovers } from './bar-covers.ts';
import { findBehindFoot, tellFittingLengths } from './fitting-lengths.ts';
import { findEdgeLayer, findFootLayer, fromBedUp, type HoldingSite, NEAREST_SIDE, nameBeyond } from './holding-site.ts';
import { findSideRoom } from './side-room.ts';
import { findWantedCover } from './wanted-cover.ts';

/** Covers of an assembly, and what is wrong with them. */
export interface Covered {
  readonly covers: readonly CoverLine[];
  readonly findings: readonly Finding[];
}

/** Half of the room that the foot takes aside [mm]; null where only its area is known. */
function footRadius({ item }: AssemblyQuestion): number | null {
  return item.foot.kind === 'diameter' ? item.foot.diameter_mm / 2 : null;
}

function coverBehindFoot(question: AssemblyQuestion, site: HoldingSite, top: number): CoverLine[] {
  const { item, place, rules } = question;
  const cover = findBehindFoot(site, top, item);
  if (cover === null) return [];
  const wanted = rules.cover.behindFoot_mm;
  if (site.edge !== null) return [{ part: 'foot', toward: site.opposite, cover, wanted }];
  // findBehindFoot found the layer, so it is there.
  const layer = fromBedUp(site, question, layerAtDepth(site.below, top + item.length_mm)!);
  return [{ part: 'foot', toward: nameBeyond(site.layers, layer, place === 'trowelled face'), cover, wanted }];
}

function coverToSides(question: AssemblyQuestion, site: HoldingSite): CoverLine[] {
  const { item, rules } = question;
  const distance = distanceToBoundary(site.region, ...site.at);
  const wanted = findWantedCover(rules.exposure, 0, item.finish === 'stainless');
  const line = (part: 'foot' | 'body', radius: number): CoverLine => ({
    part,
    toward: NEAREST_SIDE,
    cover: distance - radius,
    wanted,
  });
  const foot = footRadius(question);
  return [...(foot === null ? [] : [line('foot', foot)]), line('body', item.bodyDiameter_mm / 2)];
}

/** Covers of an insert in an edge: up and down to the faces or the next layer, and along the edge to what else is there. */
function coverInEdge(
  question: AssemblyQuestion,
  site: HoldingSite,
  edge: NonNullable<HoldingSite['edge']>,
): CoverLine[] {
  const { castIn, item, rules } = question;
  const layer = findEdgeLayer(site, edge);
  if (layer === undefined) return [];
  const wanted = findWantedCover(rules.exposure, 0, item.finish === 'stainless');
  const depth = castIn.recess_mm + item.length_mm;
  const aside = Math.abs(findAsideAlongAxis(site.tilt, depth));
  const down = { room: edge.height - layer.from, toward: nameBeyond(site.layers, layer, true) };
  const up = { room: layer.to - edge.height, toward: nameBeyond(site.layers, layer, false) };
  const nearest = down.room <= up.room ? down : up;
  const foot = footRadius(question);
  const end = {
    from: site.at,
    to: [site.at[0] + edge.inward[0] * depth, site.at[1] + edge.inward[1] * depth],
  } as const;
  const toSide = (width: number) => findSideRoom(site.region, { ...end, width }, site.at);
  return [
    ...(foot === null
      ? []
      : [
          // Which way a side form leans is not known: the foot may have moved toward either face.
          { part: 'foot' as const, toward: nearest.toward, cover: nearest.room - aside - foot, wanted },
          { part: 'foot' as const, toward: NEAREST_SIDE, cover: toSide(2 * foot), wanted },
        ]),
    { part: 'body', toward: nearest.toward, cover: nearest.room - aside - item.bodyDiameter_mm / 2, wanted },
    { part: 'body', toward: NEAREST_SIDE, cover: toSide(item.bodyDiameter_mm), wanted },
  ];
}

/** An axis in the air: beside a rebate, or above the concrete of its edge. */
function judgeHeight(site: HoldingSite): Finding[] {
  const { edge, surface, thickness } = site;
  if (edge === null || findEdgeLayer(site, edge) !== undefined) return [];
  const [from, to, at] = [0, thickness, edge.height].map((height) => showLength(height + surface.mould));
  const text = `the axis lies ${at} above the bed, and the concrete of its edge is from ${from} to ${to} above the bed there: give the insert a place in the concrete`;
  return [{ severity: 'error', kind: 'cover', text }];
}

/** A foot without the concrete that it must have behind it, and the lengths that would leave it. */
function judgeFoot(question: AssemblyQuestion, site: HoldingSite, top: number): Finding[] {
  const { item, place, rules } = question;
  const end = top + item.length_mm;
  const behind = findBehindFoot(site, top, item);
  const fail = (what: string): Finding[] => [
    {
      severity: 'error',
      kind: 'cover',
      text: `the foot of ${item.id} ${what}; ${tellFittingLengths(question, site, top)}`,
    },
  ];
  if (behind === null) {
    if (site.edge !== null)
      return fail(`comes through: ${showLength(end)} in ${showLength(site.edge.width)} of concrete`);
    const found = findFootLayer(site, top + item.embedment_mm, end);
    return fail(`${found.layer === null ? found.where : 'comes through'}, ${showLength(end)} below the ${place}`);
  }
  const wanted = rules.cover.behindFoot_mm;
  if (behind < wanted) return fail(`has ${showLength(behind)} of concrete behind it, ${showLength(wanted)} is wanted`);
  // Standing on a chair or in an edge, it does not come nearer to the face behind it when the panel is thinner.
  if (site.edge !== null || question.way.method === 'chair') return [];
  const { thickness_mm, level_mm } = rules.tolerances;
  const least = behind - thickness_mm - level_mm;
  if (least >= wanted - COVER_DEVIATION) return [];
  return [
    {
      severity: 'warning',
      kind: 'cover',
      text: `the foot has ${showLength(behind)} of concrete behind it, and ${showLength(least)} where thickness and level are off as far as they may; at least ${showLength(wanted - COVER_DEVIATION)} is to be left: tighten these tolerances, or take a shorter insert`,
    },
  ];
}

/** Covers that fall short, the worst of the insert and of the bar; steel out of the concrete is an error. What is behind the foot is judged by itself. */
function judgeCovers(covers: readonly CoverLine[], exposure: string): Finding[] {
  const isBar = ({ part }: CoverLine) => part === 'cross bar';
  return [covers.filter((line) => !isBar(line)), covers.filter(isBar)].flatMap((lines): Finding[] => {
    const short = lines.filter(({ cover, wanted }) => cover < wanted);
    if (short.length === 0) return [];
    const worst = short.reduce((least, line) => (line.cover < least.cover ? line : least));
    const { part, toward, cover, wanted } = worst;
    const mend = isBar(worst) ? 'turn or shorten it' : 'move the insert';
    if (cover <= 0)
      return [
        {
          severity: 'error',
          kind: isBar(worst) ? 'cross bar' : 'cover',
          text: `the ${part} comes out of the concrete toward ${toward}: ${mend}`,
        },
      ];
    return [
      {
        severity: 'warning',
        kind: 'cover',
        text: `the ${part} has ${showLength(cover)} of concrete toward ${toward}, ${showLength(wanted)} is wanted in ${exposure} (EN 1992-1-1, 4.4.1, class S4): ${mend}, or take steel that does not rust`,
      },
    ];
  });
}

/**
 * Concrete between each part of an assembly and what it is to be kept from, layer by layer: a layer of another kind counts as a face.
 * @param top of the insert below its own face [mm]
 */
export function findCovers(
  question: AssemblyQuestion,
  site: HoldingSite,
  top: number,
  bar: Assembly['crossBar'],
): Covered {
  const { edge } = site;
  const others = [
    ...(edge === null ? coverToSides(question, site) : coverInEdge(question, site, edge)),
    ...(bar === null ? [] : findBarCovers(question, site, top, bar)),
  ];
  return {
    covers: [...coverBehindFoot(question, site, top), ...others],
    findings: [
      ...judgeHeight(site),
      ...judgeFoot(question, site, top),
      ...judgeCovers(others, question.rules.exposure),
    ],
  };
}
