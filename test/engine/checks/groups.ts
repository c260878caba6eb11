import type {
  AnchorageGroup,
  GroupActions,
  Hairpin,
  InsertAction,
  InsertProperties,
  SupplementaryBar,
} from '../../../src/engine/checks/anchorage-group.ts';
import type { AnchorageResult, Mode, Row } from '../../../src/engine/checks/result.ts';
import type { Polygon } from '../../../src/engine/geometry/point.ts';

/** An invented insert: 100 mm deep, body 24 mm, foot 44 mm, steel 157 mm² of 800/640 MPa. */
export const INSERT: InsertProperties = {
  embedment: 100,
  shaftDiameter: 24,
  foot: { kind: 'diameter', diameter: 44, thickness: null },
  steelParts: [{ name: 'bolt', area: 157, ultimate: 800, yield: 640, resists: 'both' }],
  elongation: 12,
  areaReduction: 40,
  qualification: { document: 'an invented product document', standard: 'EN 1992-4' },
  isFullHead: true,
  tested: [],
};

/** What a test changes of the plain group. */
export interface Changes {
  readonly standard?: AnchorageGroup['standard'];
  readonly concrete?: Partial<AnchorageGroup['concrete']>;
  readonly thickness?: number;
  readonly outline?: Polygon | null;
  readonly openings?: readonly Polygon[];
  readonly reinforcement?: Partial<AnchorageGroup['reinforcement']>;
  readonly insert?: Partial<InsertProperties>;
  readonly at?: readonly (readonly [x: number, y: number])[];
  readonly other?: Partial<
    Pick<
      AnchorageGroup,
      | 'leverArm'
      | 'isTorqued'
      | 'hasMortarPad'
      | 'splitting'
      | 'partialFactors'
      | 'pryOutFactor'
      | 'hangers'
      | 'hairpins'
      | 'uncoveredUses'
    >
  >;
}

/** One insert in cracked C32 far from any edge, 200 mm thick, with crack-width reinforcement; and what the test changes. */
export function makeGroup(changes: Changes = {}): AnchorageGroup {
  const at = changes.at ?? [[0, 0]];
  return {
    standard: changes.standard ?? 'EN 1992-4',
    concrete: { strength: 32, cracked: true, lightweightFactor: 1, ...changes.concrete },
    member: {
      thickness: changes.thickness ?? 200,
      outline: changes.outline ?? null,
      openings: changes.openings ?? [],
    },
    reinforcement: {
      denseSurface: false,
      edge: 'none',
      supplementary: false,
      limitsCrackWidth: true,
      stirrupSpacing: null,
      ...changes.reinforcement,
    },
    insert: { ...INSERT, ...changes.insert },
    positions: at.map(([x, y], i) => ({ id: String.fromCharCode(65 + i), x, y })),
    leverArm: null,
    isTorqued: false,
    hasMortarPad: false,
    splitting: null,
    partialFactors: { concrete: 1.5, steelTension: null, steelShear: null },
    pryOutFactor: null,
    hangers: [],
    hairpins: [],
    uncoveredUses: [],
    ...changes.other,
  };
}

/** Actions in kN: [N, Vx, Vy] an insert. */
export function load(...inserts: readonly (readonly [N: number, Vx: number, Vy: number])[]): GroupActions {
  return {
    inserts: inserts.map(([N, Vx, Vy]): InsertAction => ({ N: N * 1000, Vx: Vx * 1000, Vy: Vy * 1000 })),
    compression: null,
  };
}

/** A rectangle by two opposite corners, counter-clockwise. */
export function rectangle(x1: number, y1: number, x2: number, y2: number): Polygon {
  return [
    [x1, y1],
    [x2, y1],
    [x2, y2],
    [x1, y2],
  ];
}

/** The only applying row of a mode. */
export function rowOf(result: AnchorageResult, mode: Mode): Row {
  const rows = result.rows.filter((row) => row.mode === mode && row.applies);
  if (rows.length !== 1) throw new Error(`${rows.length} applying rows of ${mode}, one was expected`);
  return rows[0]!;
}

/** The row of a mode toward the edge whose outward normal has this direction [degrees]. */
export function rowToward(result: AnchorageResult, mode: Mode, degrees: number): Row {
  const found = result.rows.filter(
    (row) =>
      row.mode === mode &&
      row.direction !== null &&
      Math.abs(Math.sin(row.direction - (degrees * Math.PI) / 180)) < 1e-6,
  );
  const rows = found.filter((row) => Math.cos(row.direction! - (degrees * Math.PI) / 180) > 0);
  if (rows.length !== 1) throw new Error(`${rows.length} rows of ${mode} toward ${degrees} degrees, one was expected`);
  return rows[0]!;
}

/** A hooked bar of 10 mm with 80 mm bond in the body. */
export const HANGER: SupplementaryBar = {
  diameter: 10,
  legs: 6,
  distance: 50,
  anchorageInside: 80,
  anchorageOutside: 150,
  yield: 500,
  hooked: true,
  goodBond: true,
};

/** The same bar as a loop toward the left edge, 30 mm below the shear force. */
export const HAIRPIN: Hairpin = { ...HANGER, legs: 4, distance: 40, toward: Math.PI, depth: 30 };
