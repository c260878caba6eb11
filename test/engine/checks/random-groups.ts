import * as fc from 'fast-check';
import { prepare } from '../../../src/engine/checks/anchorage.ts';
import { AnchorageError } from '../../../src/engine/checks/anchorage-error.ts';
import type { AnchorageGroup, GroupActions } from '../../../src/engine/checks/anchorage-group.ts';
import type { PreparedAnchorage } from '../../../src/engine/checks/prepared.ts';
import { GeometryError } from '../../../src/engine/geometry/geometry-error.ts';
import type { Point, Polygon } from '../../../src/engine/geometry/point.ts';
import type { StandardName } from '../../../src/engine/standards/standard-name.ts';
import { HAIRPIN, HANGER, makeGroup, rectangle } from './groups.ts';

/** A group in a panel with one load combination. */
export interface Case {
  readonly group: AnchorageGroup;
  readonly actions: GroupActions;
}

type Next = (low: number, high: number) => number;

/** How many numbers one case may use up. */
const TAPE = 64;

/**
 * Random groups by any edition: one insert, a row, a grid or scattered ones; without an edge, in a rectangle, a skew panel, an L or
 * a T, with and without an opening; all options of the calculation; loads that pull, shear and twist. Shrinks toward small
 * numbers. Groups that cannot stand (an insert in the air) are left out.
 */
export const anyCase: fc.Arbitrary<Case> = fc
  .array(fc.integer({ min: 0, max: 1_000_003 }), { minLength: TAPE, maxLength: TAPE })
  .map((tape) => {
    let used = 0;
    return drawCase((low, high) => {
      const value = tape[used % TAPE]! / 1_000_003;
      used += 1;
      return low + (high - low) * value;
    });
  })
  .filter(canStand);

function canStand({ group }: Case): boolean {
  try {
    prepare(group);
    return true;
  } catch (error) {
    if (error instanceof AnchorageError || error instanceof GeometryError) return false;
    throw error;
  }
}

function drawCase(next: Next): Case {
  const isTrue = (share: number) => next(0, 1) > 1 - share;
  const w = next(500, 3000);
  const h = next(500, 3000);
  const outline = drawOutline(next, w, h);
  const embedment = next(45, 160);
  const spacing = next(50, 2.5 * embedment);
  const pattern = drawPattern(next, spacing);
  const near = () => (isTrue(0.6) ? next(30, 250) : next(100, 400));
  const [x, y] = [near(), near()];
  const at = pattern.map(([dx, dy]): Point => [x + dx, y + dy]);
  const opening = isTrue(0.4)
    ? [shift(rectangle(0, 0, next(20, 300), next(20, 300)), x + next(60, 500), y + next(-200, 300))]
    : [];
  const isCracked = isTrue(0.6);
  const standard = drawStandard(next(0, 1));
  const isLight = standard.startsWith('ACI') && isTrue(0.2);
  const group = makeGroup({
    standard,
    concrete: { strength: next(16, 85), cracked: isCracked, lightweightFactor: isLight ? next(0.75, 1) : 1 },
    thickness: embedment + next(25, 150),
    outline,
    openings: opening,
    at,
    reinforcement: {
      denseSurface: isTrue(0.3),
      edge: isTrue(0.3) ? 'bar-and-stirrups' : isTrue(0.2) ? 'bar' : 'none',
      supplementary: isTrue(0.3),
      limitsCrackWidth: isTrue(0.7),
      stirrupSpacing: isTrue(0.5) ? next(50, 150) : null,
    },
    insert: {
      embedment,
      shaftDiameter: next(16, 30),
      foot: { kind: 'diameter', diameter: next(36, 60), thickness: isTrue(0.5) ? next(3, 8) : null },
      // At times so weak that the steel governs.
      steelParts: [{ name: 'bolt', area: isTrue(0.3) ? next(8, 40) : 157, ultimate: 800, yield: 640, resists: 'both' }],
      // Ductile by every document, or by none.
      elongation: isTrue(0.5) ? 15 : 7,
      qualification: { document: 'an invented product document', standard: 'EN 1992-4; AS 5216; ACI 318-19' },
    },
    other: {
      hasMortarPad: isTrue(0.3),
      splitting: isTrue(0.6)
        ? { criticalEdge: next(1.5, 2.5) * embedment, minimumThickness: embedment + next(10, 80) }
        : null,
      leverArm: isTrue(0.15) ? { length: next(10, 60), restraint: next(1, 2), sectionModulus: 277 } : null,
      hangers: isTrue(0.15) ? [{ ...HANGER, distance: 35 }] : [],
      hairpins: isTrue(0.15) ? [{ ...HAIRPIN, depth: 25 }] : [],
    },
  });
  return { group, actions: drawActions(next, at, isTrue(0.2) ? [x + next(-150, 150), y + next(-150, 150)] : null) };
}

/** AS 5216 has the numbers of EN 1992-4 and needs few cases of its own. */
function drawStandard(share: number): StandardName {
  if (share < 0.4) return 'EN 1992-4';
  if (share < 0.5) return 'AS 5216';
  return share < 0.75 ? 'ACI 318-19' : 'ACI 318M-19';
}

function drawOutline(next: Next, w: number, h: number): Polygon | null {
  const kind = Math.floor(next(0, 5));
  if (kind === 0) return null;
  if (kind === 1) return rectangle(0, 0, w, h);
  if (kind === 2) {
    const skew = () => next(0, 0.2) * Math.min(w, h);
    return [
      [-skew(), -skew()],
      [w + skew(), -skew()],
      [w + skew(), h + skew()],
      [-skew(), h + skew()],
    ];
  }
  const [a, b] = [next(250, 450), next(250, 450)];
  if (kind === 3)
    return [
      [0, 0],
      [w, 0],
      [w, b],
      [a, b],
      [a, h],
      [0, h],
    ];
  return [
    [0, 0],
    [a, 0],
    [a, b],
    [w, b],
    [w, h],
    [-w, h],
    [-w, b],
    [0, b],
  ];
}

function drawPattern(next: Next, s: number): readonly Point[] {
  const kind = Math.floor(next(0, 5));
  const t = next(0.5, 1.5) * s;
  if (kind === 0) return [[0, 0]];
  if (kind === 1) return [0, 1, 2].slice(0, next(0, 1) > 0.5 ? 3 : 2).map((i): Point => [0, i * s]);
  if (kind === 2)
    return [
      [0, 0],
      [s, 0],
      [0, t],
      [s, t],
    ];
  if (kind === 3)
    return [
      [0, 0],
      [s, next(-0.5, 0.5) * s],
    ];
  return [
    [0, 0],
    [s, next(-0.3, 0.3) * s],
    [next(-0.3, 0.3) * s, t],
  ];
}

/** Tension on most inserts, shear of one direction plus torsion; some loads of one kind only. */
function drawActions(next: Next, at: readonly Point[], pressedAt: Point | null): GroupActions {
  const pulls = next(0, 1) > 0.2;
  const shears = next(0, 1) > 0.2;
  const [Vx, Vy] = [next(-8000, 8000), next(-8000, 8000)];
  const twist = next(0, 1) > 0.5 ? next(-40, 40) : 0;
  const cx = at.reduce((sum, [x]) => sum + x, 0) / at.length;
  const cy = at.reduce((sum, [, y]) => sum + y, 0) / at.length;
  const inserts = at.map(([x, y]) => ({
    N: pulls ? Math.max(0, next(-3000, 15000)) : 0,
    Vx: shears ? Vx / at.length - twist * (y - cy) : 0,
    Vy: shears ? Vy / at.length + twist * (x - cx) : 0,
  }));
  const pull = inserts.reduce((sum, { N }) => sum + N, 0);
  return { inserts, compression: pressedAt === null ? null : { force: pull, at: pressedAt } };
}

/** A case with every point moved by a rigid movement (turn about the origin, mirror in the y axis first, shift). */
export function moveCase({ group, actions }: Case, turn: number, isMirrored: boolean, by: Point): Case {
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  const turned = ([x, y]: Point): Point => {
    const mx = isMirrored ? -x : x;
    return [mx * c - y * s, mx * s + y * c];
  };
  const moved = (point: Point): Point => {
    const [x, y] = turned(point);
    return [x + by[0], y + by[1]];
  };
  return {
    group: {
      ...group,
      member: {
        ...group.member,
        outline: group.member.outline?.map(moved) ?? null,
        openings: group.member.openings.map((opening) => opening.map(moved)),
      },
      positions: group.positions.map(({ id, x, y }) => {
        const [mx, my] = moved([x, y]);
        return { id, x: mx, y: my };
      }),
      hairpins: group.hairpins.map((loop) => ({
        ...loop,
        toward: (isMirrored ? Math.PI - loop.toward : loop.toward) + turn,
      })),
    },
    actions: {
      inserts: actions.inserts.map(({ N, Vx, Vy }) => {
        const [mx, my] = turned([Vx, Vy]);
        return { N, Vx: mx, Vy: my };
      }),
      compression: actions.compression === null ? null : { ...actions.compression, at: moved(actions.compression.at) },
    },
  };
}

function shift(polygon: Polygon, dx: number, dy: number): Polygon {
  return polygon.map(([x, y]): Point => [x + dx, y + dy]);
}

/** The case prepared; a shorthand. */
export function prepareCase({ group }: Case): PreparedAnchorage {
  return prepare(group);
}
