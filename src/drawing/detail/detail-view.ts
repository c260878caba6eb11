import { nameCorner } from '../../assess/set-out/form-check.ts';
import type { PanelSetOut, SetOutGroup, SetOutItem } from '../../assess/set-out/set-out.ts';
import type { Point } from '../../engine/geometry/point.ts';

/**
 * How one looks at a connection, at 1:1 [mm]. At a large face from above, x and y as in the plan. At an edge from inside the form at the face of
 * its side form: x along it, y above the bed.
 */
export interface DetailView {
  readonly kind: 'plan' | 'edge';
  readonly toView: (plan: Point, aboveBed: number | null) => Point;
  /** Signs of printed distances along x and y of the view. */
  readonly signs: readonly [1 | -1, 1 | -1];
  /** The middle that the members are measured from. */
  readonly centre: Point;
  /** From the middle toward the datum corner. */
  readonly towardDatum: Point;
  /** At an edge: the ends of the side, in the view. */
  readonly ends: readonly [number, number] | null;
}

/** Lengths that lie this close together [mm] are one. */
const ROUNDING = 1e-3;

/** The items of a group with how far each is from its middle. */
export function listMembers(
  setOut: PanelSetOut,
  group: SetOutGroup,
): readonly { readonly item: SetOutItem; readonly dx: number; readonly dy: number }[] {
  return group.members.map(({ number, dx, dy }) => {
    const item = setOut.items.find((candidate) => candidate.number === number);
    if (item === undefined) throw new Error(`connection ${group.connection}: no item ${number} on the sheet`);
    return { item, dx, dy };
  });
}

/** The side of the outline that a place lies on: its ends, and the number of its first corner. */
interface OutlineSide {
  readonly ends: readonly [Point, Point];
  readonly first: number;
}

function findSide({ outline }: PanelSetOut, at: Point, inward: Point): OutlineSide {
  const off = ([x, y]: Point) => Math.abs((x - at[0]) * inward[0] + (y - at[1]) * inward[1]);
  const sides = outline.map((corner, first): OutlineSide => {
    return { ends: [corner, outline[(first + 1) % outline.length]!], first };
  });
  const side = sides.find(({ ends: [a, b] }) => {
    if (off(a) > ROUNDING || off(b) > ROUNDING) return false;
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
    const along = ((at[0] - a[0]) * (b[0] - a[0]) + (at[1] - a[1]) * (b[1] - a[1])) / length;
    return along > -ROUNDING && along < length + ROUNDING;
  });
  if (side === undefined) throw new Error(`no side of the outline passes ${at[0]}, ${at[1]}`);
  return side;
}

/**
 * Where the tape along a side starts, and a place that it runs toward, by what is printed: from a corner of the side along it, or, in a rail or
 * an end of the form, from the end or rail at the datum corner (which may lie beyond the side).
 */
function findTape(
  { datumAt, length, width, outline }: PanelSetOut,
  { ends, first }: OutlineSide,
  from: string,
): readonly [from: Point, toward: Point] {
  const corner = [first, (first + 1) % outline.length].findIndex((index) => nameCorner(index) === from);
  if (corner < 0) {
    const [[ax, ay], [bx, by]] = ends;
    const isAlongX = Math.abs(ay - by) < Math.abs(ax - bx);
    const [datumX, datumY] = datumAt;
    return isAlongX
      ? [
          [datumX, ay],
          [length - datumX, ay],
        ]
      : [
          [ax, datumY],
          [ax, width - datumY],
        ];
  }
  return corner === 0 ? ends : [ends[1], ends[0]];
}

function viewPlan(setOut: PanelSetOut, group: SetOutGroup): DetailView {
  const { datumAt, datum } = setOut;
  const signs = [datum.endsWith('left') ? 1 : -1, datum.startsWith('bottom') ? 1 : -1] as const;
  const centre: Point = [datumAt[0] + signs[0] * group.centre[0], datumAt[1] + signs[1] * group.centre[1]];
  return {
    kind: 'plan',
    toView: (plan) => plan,
    signs,
    centre,
    towardDatum: [datumAt[0] - centre[0], datumAt[1] - centre[1]],
    ends: null,
  };
}

/**
 * One stands inside the form and faces its side, so looks against `inward`. What is then to the hand that x grows toward is the view direction
 * turned clockwise, seen from above.
 */
function viewEdge(setOut: PanelSetOut, group: SetOutGroup, inward: Point, at: Point, tapedFrom: string): DetailView {
  const across: Point = [0 - inward[1], inward[0]];
  const toX = ([x, y]: Point) => x * across[0] + y * across[1];
  const side = findSide(setOut, at, inward);
  const [from, toward] = findTape(setOut, side, tapedFrom);
  const sign = toX(toward) > toX(from) ? 1 : -1;
  const centre: Point = [toX(from) + sign * group.centre[0], group.centre[1]];
  return {
    kind: 'edge',
    toView: (plan, aboveBed) => [toX(plan), aboveBed ?? 0],
    signs: [sign, 1],
    centre,
    towardDatum: [-sign, 0],
    ends: [Math.min(...side.ends.map(toX)), Math.max(...side.ends.map(toX))],
  };
}

/** Finds how one looks at a connection. Throws Error when the set-out contradicts itself. */
export function findDetailView(setOut: PanelSetOut, group: SetOutGroup): DetailView {
  if (group.place !== 'edge') return viewPlan(setOut, group);
  const [first] = listMembers(setOut, group);
  if (first === undefined || first.item.inward === null || first.item.printed.kind !== 'edge')
    throw new Error(`connection ${group.connection}: an edge without a direction, or without a length along it`);
  return viewEdge(setOut, group, first.item.inward, first.item.plan, first.item.printed.from);
}
