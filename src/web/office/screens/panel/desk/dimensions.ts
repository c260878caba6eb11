import {
  keepNearest,
  measureToEdges,
  measureToNeighbour,
  type NearDistance,
} from '../../../../../drawing/screen/near-distances.ts';
import { placeDrawn } from '../../../../../drawing/screen/panel-sight.ts';
import type { Point } from '../../../../../engine/geometry/point.ts';
import type { CastIn } from '../../../../../job/documents/cast-in.ts';
import type { PanelDesk } from './panel-desk.ts';

/** A measured length as the drawing shows it, in the view [mm]. */
export interface ShownDimension {
  readonly from: Point;
  readonly to: Point;
  readonly length: number;
  readonly kind: 'edge' | 'neighbour' | 'datum';
}

/** Lengths below this say nothing [mm]. */
const NOTHING = 0.5;
/** A neighbour further away than this is none [mm]. */
const NEIGHBOURLY = 1200;

const onEdge = ({ face }: CastIn) => face === 'edge';

/** From what is selected to the sides of the concrete, in the view's directions; nothing where it is on an edge or stands nowhere. */
export function listEdgeDistances(desk: PanelDesk): readonly NearDistance[] {
  const { region } = desk.live.value;
  const { toDrawn } = desk.sight.value;
  const castIns = desk.shownCastIns;
  if (castIns.length === 0 || castIns.some(onEdge) || (desk.held.value?.misplaced ?? null) !== null) return [];
  const [zeroX, zeroY] = toDrawn([0, 0]);
  const turn = (step: Point): Point => {
    const [x, y] = toDrawn(step);
    return [x - zeroX, y - zeroY];
  };
  return measureToEdges(
    region,
    castIns.map(({ x_mm, y_mm }) => [x_mm, y_mm] as const),
    turn,
  );
}

function dimensionToNeighbour(desk: PanelDesk, castIns: readonly CastIn[]): ShownDimension | null {
  const { index, panel } = desk.live.value;
  const { toView } = desk.sight.value;
  const [first] = castIns;
  if (first === undefined) return null;
  const others = index
    .castInsOf(panel.mark)
    .filter(
      ({ id, face, edge }) => face === first.face && edge === first.edge && !castIns.some((one) => one.id === id),
    );
  const drawn = (list: readonly CastIn[]) => list.map((castIn) => placeDrawn(panel, castIn));
  const found = measureToNeighbour(drawn(castIns), drawn(others));
  if (found === null || found.length > NEIGHBOURLY) return null;
  return { from: toView(found.from), to: toView(found.to), length: found.length, kind: 'neighbour' };
}

/** In the form: from the datum corner's two sides to the insert in the hand. */
function dimensionsFromDatum(desk: PanelDesk, castIns: readonly CastIn[]): readonly ShownDimension[] {
  const { panel } = desk.live.value;
  const { toView, toRead, originAt } = desk.sight.value;
  const [first] = castIns;
  if (first === undefined) return [];
  const drawn = placeDrawn(panel, first);
  const at = toView(drawn);
  const [x, y] = toRead(drawn);
  return [
    { from: [originAt[0], at[1]], to: at, length: x, kind: 'datum' },
    { from: [at[0], originAt[1]], to: at, length: y, kind: 'datum' },
  ];
}

/** What is measured of the selection while it lies or moves. */
export function listDimensions(desk: PanelDesk): readonly ShownDimension[] {
  const { toView, kind } = desk.sight.value;
  const castIns = desk.shownCastIns;
  const neighbour = dimensionToNeighbour(desk, castIns);
  const sides: readonly ShownDimension[] =
    kind === 'form'
      ? dimensionsFromDatum(desk, castIns)
      : keepNearest(listEdgeDistances(desk)).map(({ from, to, length }) => ({
          from: toView(from),
          to: toView(to),
          length,
          kind: 'edge',
        }));
  return [...sides, ...(neighbour === null ? [] : [neighbour])].filter(({ length }) => length > NOTHING);
}
