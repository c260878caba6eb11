import type { ClashItem, ClashScene } from '../../engine/form/clash/clash-scene.ts';
import { layOutBars } from '../../engine/form/clash/lay-out-bars.ts';
import { makeSides } from '../../engine/form/clash/make-sides.ts';
import { prepareRegion, type Region } from '../../engine/geometry/region.ts';
import type { CastIn } from '../../job/documents/cast-in.ts';
import type { Panel } from '../../job/documents/panel.ts';
import type { Bed } from '../../job/documents/yard.ts';
import type { JobIndex } from '../../job/job-index.ts';
import { findBarLayers } from './bar-layers.ts';
import { findTop } from './find-top.ts';
import { batterOf, buildItem } from './item-solids.ts';
import { tellShiftedFaces } from './shifted-faces.ts';

/** Corners and sides that lie this close together are the same [mm]. */
const SAME = 1e-6;

/** A panel's scene, and what could not be put into it. */
export interface PanelScene {
  readonly scene: ClashScene;
  readonly unknown: readonly string[];
  /** The edge of the outline that a side of the region lies on. */
  readonly edgeOf: (side: number) => number;
}

/**
 * Everything of a panel that may meet in the form.
 * @param bed that it is cast on, which decides which chair is taken; null: none is named
 * @param lean which way battered sides lean: see `buildItem`
 * @param topOf how far the top of a cast-in item lies below its own face [mm], where it is known better than from how it is held
 */
export function buildScene(
  index: JobIndex,
  panel: Panel,
  bed: Bed | null,
  lean: 1 | -1,
  topOf: (castIn: CastIn) => number | null = () => null,
): PanelScene {
  const region = prepareRegion(panel.outline_mm, panel.openings_mm);
  const edges = panel.outline_mm.map((_, edge) => findSide(panel, region, edge));
  const edgeOf = (side: number) => edges.indexOf(side);
  const items: ClashItem[] = [];
  const castIns = index.castInsOf(panel.mark);
  const unknown = new Set<string>([...describeUnknownBars(panel), ...tellShiftedFaces(panel, castIns)]);
  const { rules } = index.file.library;
  for (const castIn of castIns) {
    const way = castIn.holding === null ? undefined : index.ways.get(castIn.holding);
    const built = buildItem({
      panel,
      castIn,
      item: castIn.item === null ? undefined : index.items.get(castIn.item),
      rules,
      top: topOf(castIn) ?? findTop(index, panel, castIn, bed),
      movesAlone: way?.method !== 'template board',
      lean,
      sideOf: (edge) => edges[edge] ?? null,
    });
    if (typeof built === 'string') {
      unknown.add(built);
      continue;
    }
    items.push(built.item);
    for (const text of built.assumptions) unknown.add(text);
  }
  const bars = findBarLayers(panel).flatMap(({ layer }) => layOutBars(layer, region));
  const sides = makeSides(region, panel.thickness_mm, (side) => {
    const edge = edgeOf(side);
    return edge < 0 ? 0 : batterOf(panel, edge, lean);
  });
  return { scene: { items, bars, region, sides, thickness: panel.thickness_mm }, unknown: [...unknown], edgeOf };
}

function describeUnknownBars({ reinforcement }: Panel): string[] {
  if (reinforcement === null) return ['the reinforcement is not given: no bars were looked at'];
  const layers = reinforcement.bars.flatMap(({ through_mm, face, direction_deg, diameter_mm, spacing_mm }, i) =>
    through_mm === null
      ? [
          `layer ${i + 1} (${face}, ${diameter_mm} mm at ${spacing_mm} mm, ${direction_deg}°): where its bars lie is not given`,
        ]
      : [],
  );
  return reinforcement.edge === 'none'
    ? layers
    : [...layers, 'bars and stirrups along the edges: where they lie is not given'];
}

/** The side of the region that the middle of an edge lies on; null for an edge of no length. */
function findSide({ outline_mm }: Panel, { sides }: Region, edge: number): number | null {
  const [ax, ay] = outline_mm[edge]!;
  const [bx, by] = outline_mm[(edge + 1) % outline_mm.length]!;
  const [x, y] = [(ax + bx) / 2, (ay + by) / 2];
  const found = sides.find((side) => {
    if (side.ring !== 'outline') return false;
    const [dx, dy] = [x - side.fromX, y - side.fromY];
    const along = dx * side.ux + dy * side.uy;
    return Math.abs(dx * side.nx + dy * side.ny) <= SAME && along >= -SAME && along <= side.length + SAME;
  });
  return found === undefined ? null : found.index;
}
