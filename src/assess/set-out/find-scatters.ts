import { addScatter, type Scatter, scatterOfGroup, scatterOfPlace } from '../../engine/form/position-scatter.ts';
import type { TapeClass } from '../../engine/form/tape-error.ts';
import type { Point } from '../../engine/geometry/point.ts';
import type { CastIn } from '../../job/documents/cast-in.ts';
import type { AssemblyDraft } from './find-assembly.ts';

/** An item with what is measured to it: along x and y, or along the side and above the bed [mm]. */
interface Taped {
  readonly castIn: CastIn;
  readonly at: Point;
  readonly aboveBed: number | null;
  readonly printed: { readonly kind: 'plan' } | { readonly kind: 'edge'; readonly along: number };
}

function tapedPair({ at, aboveBed, printed }: Taped): Point {
  return printed.kind === 'edge' ? [printed.along, aboveBed ?? 0] : at;
}

/**
 * Standard deviations of the places of items [mm]: of what is measured by tape (a single item from the datum, a group from its centre, by least
 * squares), and of how each is held while the concrete is placed.
 * @param stops groups, or single items
 */
export function findScatters(
  stops: readonly (readonly Taped[])[],
  drafts: ReadonlyMap<CastIn, AssemblyDraft | null>,
  tapeClass: TapeClass,
): ReadonlyMap<CastIn, Scatter> {
  return new Map(
    stops.flatMap((members) => {
      const pairs = members.map(tapedPair);
      // What a board's holes are off by is in the group's own scatter.
      const hasTemplate =
        members.length > 1 && members.every(({ castIn }) => drafts.get(castIn)?.way.method === 'template board');
      const taped =
        members.length === 1 ? [scatterOfPlace(tapeClass, pairs[0]!)] : ofGroup(pairs, hasTemplate, tapeClass);
      return members.map(({ castIn }, i) => {
        const held = hasTemplate ? 0 : (drafts.get(castIn)?.scatter.position ?? 0);
        return [castIn, addScatter(taped[i]!, { x: held, y: held })] as const;
      });
    }),
  );
}

function ofGroup(pairs: readonly Point[], hasTemplate: boolean, tapeClass: TapeClass): readonly Scatter[] {
  const mean = (k: 0 | 1) => pairs.reduce((sum, pair) => sum + pair[k], 0) / pairs.length;
  const centre: Point = [mean(0), mean(1)];
  return scatterOfGroup({
    tapeClass,
    centre,
    offsets: pairs.map(([x, y]): Point => [x - centre[0], y - centre[1]]),
    hasTemplate,
    diagonal: null,
  }).members;
}
