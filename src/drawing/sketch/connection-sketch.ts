import { type CountedAreas, findAreas } from '../../assess/areas/find-areas.ts';
import type { WorkedConnection } from '../../assess/assess-connection.ts';
import type { Explanation } from '../../assess/explain/explanation.ts';
import type { FixtureAction } from '../../engine/fixture/fixture-forces.ts';
import type { Point, Polygon } from '../../engine/geometry/point.ts';
import { nearPoints } from '../../engine/geometry/sight.ts';
import type { CastIn } from '../../job/documents/cast-in.ts';
import type { CatalogueItem } from '../../job/documents/catalogue.ts';
import type { Fixture } from '../../job/documents/fixture.ts';
import { frameOf, placeOnFace } from '../../job/face-frame.ts';
import { type Box, boxAround, growBox } from '../boxes.ts';
import { findFootDiameter } from '../section/section-insert.ts';

/** A hole as it lies on the face. */
export interface SketchHole {
  readonly id: string;
  readonly at: Point;
  readonly diameter: number;
  /** Length of its straight part, and its direction [rad]. */
  readonly slot: number;
  readonly turn: number;
}

/** An insert with what a combination puts on it [N]. */
export interface SketchInsert {
  readonly id: string;
  readonly at: Point;
  readonly body: number;
  readonly foot: number;
  readonly load: { readonly N: number; readonly Vx: number; readonly Vy: number } | null;
}

/** The concrete that counts against one way to fail. */
export interface SketchArea {
  readonly kind: 'cone' | 'splitting' | 'edge';
  readonly rings: readonly Polygon[];
  /** As the check has it [mm²]; toward an edge it stands on the edge's own face. */
  readonly area: number;
}

/** The distance from an insert to a side of the concrete. */
export interface SketchDistance {
  readonly from: Point;
  readonly to: Point;
  readonly length: number;
}

/** One connection as it is looked at from the front of its face, x right and y up, lengths mm, forces N. */
export interface ConnectionSketch {
  /** Of the concrete; null where it has no side within reach. */
  readonly outline: Polygon | null;
  readonly openings: readonly Polygon[];
  readonly plate: Polygon | null;
  readonly attachment: Polygon | null;
  readonly holes: readonly SketchHole[];
  readonly inserts: readonly SketchInsert[];
  /** Other items cast into the same face. */
  readonly others: readonly { readonly id: string; readonly at: Point; readonly body: number }[];
  readonly areas: readonly SketchArea[];
  readonly distances: readonly SketchDistance[];
  /** What the plate puts on the panel in one combination; null where no loads are given. */
  readonly action: FixtureAction | null;
  /** The largest shear of all combinations, so that arrows of one are to the scale of all. */
  readonly largestShear: number;
  /** What must be in the picture. */
  readonly extent: Box;
}

/** How far around the connection the picture goes at least [mm]. */
const AROUND = 40;

/** Distances shown, the least first. */
const DISTANCES = 3;

function listAreas({ cone, splitting, shear }: CountedAreas): SketchArea[] {
  return [
    ...cone.map(({ rings, area }): SketchArea => ({ kind: 'cone', rings, area })),
    ...splitting.map(({ rings, area }): SketchArea => ({ kind: 'splitting', rings, area })),
    ...(shear === null ? [] : [{ kind: 'edge', rings: shear.rings, area: shear.area } as const]),
  ];
}

/** From the nearest insert to each side that one of them sees, the nearest sides. */
export function listNearestSides({ prepared: { region, xs, ys } }: WorkedConnection): SketchDistance[] {
  const nearest = new Map<number, SketchDistance>();
  for (let i = 0; i < xs.length; i += 1) {
    const from: Point = [xs[i]!, ys[i]!];
    for (const { kind, side, distance, x, y } of nearPoints(region, from[0], from[1], Number.POSITIVE_INFINITY)) {
      const known = nearest.get(side);
      if (kind !== 'side' || (known !== undefined && known.length <= distance)) continue;
      nearest.set(side, { from, to: [x, y], length: distance });
    }
  }
  return [...nearest.values()].sort((a, b) => a.length - b.length).slice(0, DISTANCES);
}

function listHoles(worked: WorkedConnection, fixture: Fixture | null, toFace: (at: Point) => Point): SketchHole[] {
  const { turn_deg } = worked.resolved.source.connection;
  return (fixture?.holes ?? []).map(({ id, at_mm, diameter_mm, slot_mm, slotAngle_deg }) => ({
    id,
    at: toFace(at_mm),
    diameter: diameter_mm,
    slot: slot_mm,
    turn: ((slotAngle_deg + turn_deg) * Math.PI) / 180,
  }));
}

/** The concrete toward a far edge is shown this far beyond the rest of the picture, as a share of its size. */
const BEYOND = 0.7;

/** A box around what is near, grown toward what is far, but not so far that the near becomes small. */
function findExtent(near: readonly Point[], far: readonly Point[]): ConnectionSketch['extent'] {
  const box = boxAround(near);
  const most = growBox(box, BEYOND * Math.max(box.width, box.height));
  const within = far.map(
    ([x, y]): Point => [
      Math.min(Math.max(x, most.x), most.x + most.width),
      Math.min(Math.max(y, most.y), most.y + most.height),
    ],
  );
  return growBox(boxAround([...near, ...within]), AROUND);
}

function isInBox({ x, y, width, height }: ConnectionSketch['extent'], [px, py]: Point): boolean {
  return px >= x && px <= x + width && py >= y && py <= y + height;
}

/** What is drawn of a connection beside its numbers. */
export interface SketchSubject {
  readonly worked: WorkedConnection;
  readonly explanation: Explanation;
  readonly panel: Parameters<typeof frameOf>[0];
  readonly fixture: Fixture | null;
  /** Everything cast into the panel, with its catalogue item. */
  readonly castIns: readonly { readonly castIn: CastIn; readonly item: CatalogueItem | null }[];
  /** Whose load and forces are shown; null: none. */
  readonly combination: string | null;
}

/** A connection that is worked out, as a picture to scale. */
export function sketchConnection(subject: SketchSubject): ConnectionSketch {
  const { worked, explanation, panel, fixture, castIns, combination } = subject;
  const { resolved, prepared } = worked;
  const { connection, item } = resolved.source;
  const frame = frameOf(panel, connection);
  const place = (at: Point) => placeOnFace(frame, connection.origin_mm, connection.turn_deg, at);
  const load = explanation.loads.find(({ name }) => name === combination);
  const combinations = resolved.actions.kind === 'loads' ? resolved.actions.combinations : [];
  const own = new Set(connection.inserts.map(({ insert }) => insert));
  const inserts = resolved.group.positions.map(({ id, x, y }): SketchInsert => {
    const found = load?.inserts.find((one) => one.id === id);
    return {
      id,
      at: [x, y],
      body: item.bodyDiameter_mm,
      foot: findFootDiameter(item),
      load: found === undefined ? null : { N: found.N, Vx: found.Vx, Vy: found.Vy },
    };
  });
  const areas = listAreas(findAreas(worked, explanation.modes));
  const plate = resolved.plate?.outline ?? null;
  const all = listNearestSides(worked);
  const [nearest] = all;
  const ringsOf = (isEdge: boolean) =>
    areas.filter(({ kind }) => (kind === 'edge') === isEdge).flatMap(({ rings }) => rings.flat());
  const extent = findExtent(
    [...inserts.map(({ at }) => at), ...(plate ?? []), ...ringsOf(false)],
    [...ringsOf(true), ...(nearest === undefined ? [] : [nearest.to])],
  );
  return {
    outline: prepared.group.member.outline,
    openings: prepared.group.member.openings,
    plate,
    attachment: resolved.plate?.attachment ?? null,
    holes: listHoles(worked, fixture, place),
    inserts,
    others: castIns
      .filter(({ castIn: { id, face, edge } }) => !own.has(id) && face === connection.face && edge === connection.edge)
      .map(({ castIn, item: its }) => ({
        id: castIn.id,
        at: frame.toFace([castIn.x_mm, castIn.y_mm]),
        body: its?.bodyDiameter_mm ?? item.bodyDiameter_mm,
      })),
    areas,
    distances: all.filter(({ to }) => isInBox(extent, to)),
    action: combinations.find(({ name }) => name === combination)?.action ?? null,
    largestShear: Math.max(0, ...combinations.map(({ action: { Vx, Vy } }) => Math.hypot(Vx, Vy))),
    extent,
  };
}
