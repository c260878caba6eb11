import type { CastIn } from '../documents/cast-in.ts';
import type { Panel } from '../documents/panel.ts';
import { panelSide } from '../face-frame.ts';
import { mirrorEdge, mirrorLine, mirrorOf, mirrorPoint, mirrorRing } from './mirror-values.ts';

/** Added to the permanent key of what a partner is made from. */
const HANDED_KEY = '~handed';

/** The permanent key of a thing's mirror image. */
export function handedKey(key: string): string {
  return `${key}${HANDED_KEY}`;
}

type Datum = Panel['inForm']['datum'];

const acrossX: Readonly<Record<Datum, Datum>> = {
  'bottom-left': 'bottom-right',
  'bottom-right': 'bottom-left',
  'top-left': 'top-right',
  'top-right': 'top-left',
};
const acrossY: Readonly<Record<Datum, Datum>> = {
  'bottom-left': 'top-left',
  'bottom-right': 'top-right',
  'top-left': 'bottom-left',
  'top-right': 'bottom-right',
};

/**
 * How the mirror image lies in the form: turned alike, and taped from the mirrored corner, so that all taped lengths are the same numbers. The
 * drawing's x lies along the bed, or across it after a quarter turn.
 */
function mirrorInForm({ turn_deg, datum }: Panel['inForm']): Panel['inForm'] {
  const isAlong = turn_deg === 0 || turn_deg === 180;
  return { turn_deg, datum: (isAlong ? acrossX : acrossY)[datum] };
}

/** The mirror image of a panel, linked to it; face down and thickness stay. */
export function mirrorPanel(panel: Panel, mark: string): Panel {
  const { ends, corners } = mirrorOf(panel.outline_mm);
  const { reinforcement } = panel;
  return {
    ...panel,
    key: handedKey(panel.key),
    mark,
    inForm: mirrorInForm(panel.inForm),
    handedOf: panel.mark,
    outline_mm: mirrorRing(ends, panel.outline_mm),
    openings_mm: panel.openings_mm.map((ring) => mirrorRing(ends, ring)),
    zones: panel.zones.map((zone) => ({ ...zone, outline_mm: mirrorRing(ends, zone.outline_mm) })),
    edges: panel.edges.map((edge) => ({ ...edge, edge: mirrorEdge(corners, edge.edge) })),
    reinforcement:
      reinforcement === null
        ? null
        : {
            ...reinforcement,
            bars: reinforcement.bars.map((bars) => ({
              ...bars,
              direction_deg: mirrorLine(bars.direction_deg),
              through_mm: bars.through_mm === null ? null : mirrorPoint(ends, bars.through_mm),
            })),
          },
  };
}

/** Where a place on a face of a panel is on its mirror image. On an edge, x runs from the other end of it. */
export function mirrorPlace(
  panel: Panel,
  { face, edge }: Pick<CastIn, 'face' | 'edge'>,
  [x, y]: readonly [number, number],
): { readonly edge: number | null; readonly at: readonly [number, number] } {
  const { ends, corners } = mirrorOf(panel.outline_mm);
  if (face !== 'edge' || edge === null) return { edge, at: mirrorPoint(ends, [x, y]) };
  return { edge: mirrorEdge(corners, edge), at: [panelSide(panel, edge).length - x, y] };
}

/** The mirror image of a cast-in item. The thing itself is the same: a thread stays right-handed. */
export function mirrorCastIn(panel: Panel, castIn: CastIn, mark: string): CastIn {
  const { edge, at } = mirrorPlace(panel, castIn, [castIn.x_mm, castIn.y_mm]);
  const { crossBar } = castIn;
  return {
    ...castIn,
    key: handedKey(castIn.key),
    panel: mark,
    edge,
    x_mm: at[0],
    y_mm: at[1],
    crossBar: crossBar === null ? null : { ...crossBar, direction_deg: mirrorLine(crossBar.direction_deg) },
  };
}
