import type { ClashItem, ClashPart } from '../../engine/form/clash/clash-scene.ts';
import { makeBlock, makeCylinder, type Vector } from '../../engine/geometry/solid.ts';
import type { CastIn } from '../../job/documents/cast-in.ts';
import type { CatalogueItem } from '../../job/documents/catalogue.ts';
import type { Panel } from '../../job/documents/panel.ts';
import type { Rules } from '../../job/documents/rules.ts';
import { panelSide } from '../../job/face-frame.ts';
import { sectionAt, surfaceDepth } from '../../job/section.ts';
import { findWantedCover } from '../set-out/wanted-cover.ts';

/** Where an item stands in the panel: x and y of the drawn face, z the depth below the outside face [mm]. */
interface Seat {
  /** Of its face, where its axis leaves the concrete; of the item, its own top on that axis. */
  readonly top: Vector;
  /** Unit vector of its axis, into the concrete. */
  readonly axis: Vector;
  /** The directions that its x and y run in. */
  readonly directions: readonly [Vector, Vector];
}

/** What a cast-in item takes up, with what had to be assumed. */
export interface ItemSolids {
  readonly item: ClashItem;
  readonly assumptions: readonly string[];
}

/** A cast-in item, and what has to be known of where it stands. */
export interface ItemQuestion {
  readonly panel: Panel;
  readonly castIn: CastIn;
  /** Undefined: no insert. */
  readonly item: CatalogueItem | undefined;
  readonly rules: Rules;
  /** How far its top lies below its face [mm]. */
  readonly top: number;
  /** False: a template board holds it together with others. */
  readonly movesAlone: boolean;
  /** Which way a battered side leans: the job gives the angle alone; 1: the panel is smaller at its inside face, -1: larger. */
  readonly lean: 1 | -1;
  /** The number of an edge among the sides of the panel's region. */
  readonly sideOf: (edge: number) => number | null;
}

/**
 * The solids of a cast-in item; words where its size is not known.
 *
 * An insert: body from its top to the bearing side of the foot; foot from there to its end; cross bar through the middle of the hole. A foot
 * given by its area is taken as round, with the body in its middle.
 */
export function buildItem(question: ItemQuestion): ItemSolids | string {
  const { panel, castIn, item, rules, top, movesAlone, sideOf } = question;
  const face = findSeat(panel, castIn, question.lean);
  const seat = { ...face, top: add(face.top, face.axis, top) };
  const isFixing = item !== undefined;
  const built = isFixing ? buildInsert(seat, castIn, item) : buildOther(seat, castIn);
  if (typeof built === 'string') return built;
  return {
    item: {
      id: castIn.id,
      parts: built.parts,
      cover: isFixing ? findWantedCover(rules.exposure, 0, item.finish === 'stainless') : 0,
      tolerance: movesAlone ? (castIn.tolerance_mm ?? (isFixing ? rules.tolerances.position_mm : 0)) : 0,
      directions: seat.directions,
      throughSide: castIn.face === 'edge' && castIn.edge !== null ? sideOf(castIn.edge) : null,
      turning:
        built.hole === null ? null : { centre: built.hole, about: cross(seat.directions[0], seat.directions[1]) },
    },
    assumptions: built.assumptions,
  };
}

interface Built {
  readonly parts: readonly ClashPart[];
  /** The middle of the cross bar. */
  readonly hole: Vector | null;
  readonly assumptions: readonly string[];
}

function findSeat(panel: Panel, castIn: CastIn, lean: 1 | -1): Seat {
  const { face, edge, x_mm, y_mm } = castIn;
  if (face !== 'edge') {
    const depth = surfaceDepth(panel, sectionAt(panel, [x_mm, y_mm]), face);
    return {
      top: [x_mm, y_mm, face === 'outside' ? depth : panel.thickness_mm - depth],
      axis: [0, 0, face === 'outside' ? 1 : -1],
      directions: [
        [1, 0, 0],
        [0, 1, 0],
      ],
    };
  }
  if (edge === null)
    throw new Error(`item ${castIn.id} of panel ${panel.mark}: on an edge without the number of its edge`);
  const { from, along, inward } = panelSide(panel, edge);
  const batter = batterOf(panel, edge, lean);
  const back = y_mm * Math.tan(batter);
  const [cos, sin] = [Math.cos(batter), Math.sin(batter)];
  return {
    top: [from[0] + along[0] * x_mm + inward[0] * back, from[1] + along[1] * x_mm + inward[1] * back, y_mm],
    axis: [inward[0] * cos, inward[1] * cos, -sin],
    directions: [
      [along[0], along[1], 0],
      [inward[0] * sin, inward[1] * sin, cos],
    ],
  };
}

/** The batter of an edge, leaning one way [rad]. */
export function batterOf(panel: Panel, edge: number, lean: 1 | -1): number {
  return (lean * (panel.edges.find((one) => one.edge === edge)?.batter_deg ?? 0) * Math.PI) / 180;
}

function buildInsert({ top, axis, directions }: Seat, castIn: CastIn, item: CatalogueItem): Built {
  const at = (depth: number) => add(top, axis, depth);
  const foot = findFoot(item);
  const parts: ClashPart[] = [
    { name: 'body', solid: makeCylinder(at(0), at(item.embedment_mm), item.bodyDiameter_mm / 2) },
  ];
  if (item.length_mm > item.embedment_mm)
    parts.push({ name: 'foot', solid: makeCylinder(at(item.embedment_mm), at(item.length_mm), foot.diameter / 2) });
  const assumptions = foot.isRound ? [] : [`${item.id}: its foot is given by its area, taken as round`];
  if (castIn.crossBar === null && item.crossBar === null) return { parts, hole: null, assumptions };
  const diameter = castIn.crossBar?.diameter_mm ?? item.crossBar?.diameter_mm;
  const length = castIn.crossBar?.length_mm ?? item.crossBar?.length_mm;
  if (item.crossHole === null || diameter === undefined || length === undefined)
    return {
      parts,
      hole: null,
      assumptions: [...assumptions, `insert ${castIn.id}: a cross bar is asked for, its hole or size is not known`],
    };
  const hole = at(item.length_mm - item.crossHole.fromFoot_mm);
  const angle = ((castIn.crossBar?.direction_deg ?? 0) * Math.PI) / 180;
  const [u, v] = directions;
  const along = add(add([0, 0, 0], u, Math.cos(angle)), v, Math.sin(angle));
  const solid = makeCylinder(add(hole, along, -length / 2), add(hole, along, length / 2), diameter / 2);
  return { parts: [...parts, { name: 'cross bar', solid }], hole, assumptions };
}

function findFoot({ foot, bodyDiameter_mm }: CatalogueItem): { readonly diameter: number; readonly isRound: boolean } {
  if (foot.kind === 'diameter') return { diameter: foot.diameter_mm, isRound: true };
  return { diameter: Math.sqrt((4 * foot.area_mm2) / Math.PI + bodyDiameter_mm * bodyDiameter_mm), isRound: false };
}

function buildOther({ top, axis, directions }: Seat, { id, description, size }: CastIn): Built | string {
  if (size === null)
    return `item ${id}${description === null ? '' : ` (${description})`} has no size: nothing was compared with it`;
  const from = top;
  const to = add(top, axis, size.depth_mm);
  if (size.kind === 'round')
    return {
      parts: [{ name: 'item', solid: makeCylinder(from, to, size.diameter_mm / 2) }],
      hole: null,
      assumptions: [],
    };
  const [u, v] = directions;
  const corners = [from, to].flatMap((end) =>
    [-0.5, 0.5].flatMap((i) => [-0.5, 0.5].map((j) => add(add(end, u, i * size.width_mm), v, j * size.height_mm))),
  );
  return { parts: [{ name: 'item', solid: makeBlock(corners) }], hole: null, assumptions: [] };
}

function add(a: Vector, b: Vector, share: number): Vector {
  return [a[0] + share * b[0], a[1] + share * b[1], a[2] + share * b[2]];
}

function cross(a: Vector, b: Vector): Vector {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}
