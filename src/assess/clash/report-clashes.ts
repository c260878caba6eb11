import type { Clash, ClashScene } from '../../engine/form/clash/clash-scene.ts';
import { findClashes } from '../../engine/form/clash/find-clashes.ts';
import { findRemedies } from '../../engine/form/clash/find-remedies.ts';
import type { Remedy } from '../../engine/form/clash/remedy.ts';
import type { Point } from '../../engine/geometry/point.ts';
import type { Vector } from '../../engine/geometry/solid.ts';
import type { Panel } from '../../job/documents/panel.ts';
import type { Bed } from '../../job/documents/yard.ts';
import type { JobIndex } from '../../job/job-index.ts';
import { buildScene, type PanelScene } from './build-scene.ts';
import type { ClashingOther, ClashingPart, ClashRemedy, ClashReport, ReportedClash } from './clash-report.ts';
import { missesHole } from './misses-hole.ts';
import { findStrengthAfter } from './strength-after.ts';

/**
 * What meets what in a panel, each with its smallest legal way out and what that does to strength.
 *
 * The job gives the angle of a battered side, not which way it leans: such a panel is looked at both ways, and a clash stands with the
 * smaller clearance of the two. A way out counts there only where it is the same both ways.
 * @param bed that it is cast on; null: none is named
 */
export function reportClashes(index: JobIndex, panel: Panel, bed: Bed | null): ClashReport {
  const isBattered = panel.edges.some(({ batter_deg }) => batter_deg !== 0);
  const one = examine(index, panel, bed, 1);
  if (!isBattered) return { panel: panel.mark, clashes: one.clashes, unknown: one.unknown };
  const other = examine(index, panel, bed, -1);
  const text = 'which way its battered edges lean is not given: both ways were looked at';
  return { panel: panel.mark, clashes: mergeLeans(one.clashes, other.clashes), unknown: [...one.unknown, text] };
}

function examine(
  index: JobIndex,
  panel: Panel,
  bed: Bed | null,
  lean: 1 | -1,
): Pick<ClashReport, 'clashes' | 'unknown'> {
  const built = buildScene(index, panel, bed, lean);
  const rules = { clearance: index.file.library.rules.clearance_mm };
  const clashes = findRemedies(built.scene, rules, findClashes(built.scene, rules)).map(
    ({ clash, remedies }): ReportedClash => {
      const ways = remedies
        .map((remedy) => describeRemedy(index, panel, built.scene, remedy))
        // The hole of the plate would have to move too, and nobody in the yard decides that.
        .filter((way) => way.kind !== 'move' || !missesHole(index, panel, way));
      const best = ways[0] ?? null;
      return {
        ...nameClash(panel, built, clash),
        clearance_mm: clash.clearance,
        needed_mm: clash.needed,
        remedy: best,
        others: ways.slice(1),
        strengthAfter: best?.kind === 'move' ? findStrengthAfter(index, panel, best) : [],
      };
    },
  );
  return { clashes, unknown: built.unknown };
}

/** Clashes of both leans, each once; its ways out are those that both have. */
function mergeLeans(first: readonly ReportedClash[], second: readonly ReportedClash[]): readonly ReportedClash[] {
  const nameOf = ({ a, b }: ReportedClash) => JSON.stringify([a, b]);
  const twins = new Map(second.map((clash) => [nameOf(clash), clash]));
  const merge = (clash: ReportedClash, twin: ReportedClash | undefined): ReportedClash => {
    const known = new Set((twin === undefined ? [] : listWays(twin)).map((way) => JSON.stringify(way)));
    const ways = listWays(clash).filter((way) => known.has(JSON.stringify(way)));
    const keepsBest = ways[0] !== undefined && ways[0] === clash.remedy;
    return {
      ...clash,
      clearance_mm: Math.min(clash.clearance_mm, twin?.clearance_mm ?? clash.clearance_mm),
      remedy: ways[0] ?? null,
      others: ways.slice(1),
      strengthAfter: keepsBest ? clash.strengthAfter : [],
    };
  };
  const merged = first.map((clash) => merge(clash, twins.get(nameOf(clash))));
  const known = new Set(first.map(nameOf));
  return [...merged, ...second.filter((clash) => !known.has(nameOf(clash))).map((clash) => merge(clash, undefined))];
}

function listWays({ remedy, others }: ReportedClash): readonly ClashRemedy[] {
  return remedy === null ? [] : [remedy, ...others];
}

/** What a clash of a scene is between, as the job has it. */
export function nameClash(panel: Panel, built: PanelScene, clash: Clash): Pick<ReportedClash, 'a' | 'b'> {
  return { a: namePart(built.scene, clash.item, clash.part), b: nameOther(panel, built, clash) };
}

function namePart({ items }: ClashScene, item: number, part: number): ClashingPart {
  const { id, parts } = items[item]!;
  return { kind: 'item', id, part: parts[part]!.name };
}

function nameOther(panel: Panel, { scene, edgeOf }: PanelScene, { other }: Clash): ClashingOther {
  if (other.kind === 'item') return namePart(scene, other.item, other.part);
  if (other.kind === 'side') {
    const { ring } = scene.region.sides[other.side]!;
    return ring === 'outline' ? { kind: 'edge', edge: edgeOf(other.side) } : { kind: 'opening', opening: ring };
  }
  const { layer, bar } = nameBar(scene, other.bar);
  const { face, diameter_mm, kind } = panel.reinforcement!.bars[layer - 1]!;
  return { kind: 'bar', layer, bar, face, diameter_mm, bars: kind };
}

/** A bar's id is that of its layer, a stroke, and its own. */
function nameBar({ bars }: ClashScene, place: number): { readonly layer: number; readonly bar: string } {
  const { layer, id } = bars[place]!;
  return { layer: Number(layer), bar: id.slice(layer.length + 1) };
}

/** A direction without the rounding of its cosine, so that along an axis it is exactly that. */
function pointAlong([x, y]: Vector, sign: number): Point {
  const round = (part: number) => Math.round(sign * part * 1e9) / 1e9 + 0;
  return [round(x), round(y)];
}

function describeRemedy(index: JobIndex, panel: Panel, scene: ClashScene, remedy: Remedy): ClashRemedy {
  switch (remedy.kind) {
    case 'shift bar':
    case 'shift layer': {
      const layer = remedy.kind === 'shift bar' ? scene.bars[remedy.bar]!.layer : remedy.layer;
      const { across } = scene.bars.find((bar) => bar.layer === layer)!;
      return {
        kind: remedy.kind,
        layer: Number(layer),
        bar: remedy.kind === 'shift bar' ? nameBar(scene, remedy.bar).bar : null,
        shift_mm: Math.abs(remedy.shift),
        toward: pointAlong(across, Math.sign(remedy.shift)),
        otherWay_mm: remedy.otherWay === null ? null : Math.abs(remedy.otherWay),
      };
    }
    case 'turn cross bar': {
      const { id } = scene.items[remedy.item]!;
      const turn = Math.round((remedy.angle * 180) / Math.PI);
      const { face, edge, crossBar } = index.castIn(panel.mark, id)!;
      const now = crossBar?.direction_deg ?? 0;
      const direction = (((now + turn) % 180) + 180) % 180;
      return { kind: 'turn cross bar', id, face, edge, turn_deg: turn, direction_deg: direction };
    }
    case 'move': {
      const { id, tolerance } = scene.items[remedy.item]!;
      const [dx, dy] = remedy.along;
      const { face } = index.castIn(panel.mark, id)!;
      return { kind: 'move', id, face, dx_mm: dx, dy_mm: dy, tolerance_mm: tolerance };
    }
  }
}
