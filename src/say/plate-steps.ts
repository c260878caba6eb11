import type { LoadCase } from '../assess/load-cases.ts';
import { isWithin } from '../engine/checks/verdict.ts';
import { writeNumber } from '../engine/checks/write-step.ts';
import type { FixtureAction, FixtureForces } from '../engine/fixture/fixture-forces.ts';
import type { PlateBending } from '../engine/fixture/plate-bending.ts';
import type { ResolvedConnection, ResolvedPlate } from '../job/resolve/resolved-connection.ts';
import { showRatio } from './numbers.ts';

/** A number without a sign on nought. */
const n = (value: number) => writeNumber(value + 0);

/** A number below this share of its like is rounding. */
const ROUNDING = 1e-9;

/** Forces balance an action where what is left over is below this share of them. */
const BALANCED = 1e-6;

/** A force or moment of rounding size shown as the nought that it is. */
function clean(value: number, size: number): number {
  return Math.abs(value) < ROUNDING * size ? 0 : value;
}

interface Balance {
  readonly what: string;
  readonly formula: string;
  readonly sum: number;
  readonly wanted: number;
  readonly isMoment: boolean;
}

/** Sums of the forces on inserts and contact against the action, moments about the action's point. */
function balance({ bolts, compression }: FixtureForces, plate: ResolvedPlate, action: FixtureAction): Balance[] {
  const [x0, y0] = action.at;
  const C = compression?.force ?? 0;
  const [xC, yC] = compression?.at ?? [x0, y0];
  const add = (part: (bolt: FixtureForces['bolts'][number], x: number, y: number) => number) =>
    bolts.reduce((total, bolt, i) => total + part(bolt, plate.bolts[i]!.x - x0, plate.bolts[i]!.y - y0), 0);
  const force = (what: string, formula: string, sum: number, wanted: number) => ({
    what,
    formula,
    sum,
    wanted,
    isMoment: false,
  });
  const moment = (what: string, formula: string, sum: number, wanted: number) => ({
    ...force(what, formula, sum, wanted),
    isMoment: true,
  });
  const aboutX = add(({ N }, _x, y) => N * y) - C * (yC - y0);
  const aboutY = C * (xC - x0) - add(({ N }, x) => N * x);
  const turning = add(({ Vx, Vy }, x, y) => x * Vy - y * Vx);
  return [
    force('N', 'ΣN - C', add(({ N }) => N) - C, action.N),
    force(
      'Vx',
      'ΣVx',
      add(({ Vx }) => Vx),
      action.Vx,
    ),
    force(
      'Vy',
      'ΣVy',
      add(({ Vy }) => Vy),
      action.Vy,
    ),
    moment('Mx', 'ΣN (y - y_0) - C (y_C - y_0)', aboutX, action.Mx),
    moment('My', 'C (x_C - x_0) - ΣN (x - x_0)', aboutY, action.My),
    moment('T', 'Σ((x - x_0) Vy - (y - y_0) Vx)', turning, action.T),
  ];
}

function measureSize({ bolts, compression }: FixtureForces, action: FixtureAction): number {
  const own = bolts.reduce((total, { N, Vx, Vy }) => total + Math.abs(N) + Math.abs(Vx) + Math.abs(Vy), 0);
  return own + (compression?.force ?? 0) + Math.abs(action.N);
}

function listShear(plate: ResolvedPlate, action: FixtureAction): string[] {
  const taking = plate.bolts.filter(({ takesShear }) => takesShear !== false);
  if (action.Vx === 0 && action.Vy === 0 && action.T === 0) return [];
  if (taking.length === 0 || taking.some(({ takesShear }) => takesShear !== true))
    return [
      'shear: the plate shifts and turns as a whole; each bolt takes it alike, a slot only along its open direction square to it',
    ];
  const x = taking.reduce((sum, bolt) => sum + bolt.x, 0) / taking.length;
  const y = taking.reduce((sum, bolt) => sum + bolt.y, 0) / taking.length;
  const polar = taking.reduce((sum, bolt) => sum + (bolt.x - x) ** 2 + (bolt.y - y) ** 2, 0);
  const turning = action.T + (action.at[0] - x) * action.Vy - (action.at[1] - y) * action.Vx;
  return [
    `shear: V = action / ${taking.length}, and T_m / Σr^2 times the distance from the middle (x_m, y_m) = (${n(x)}, ${n(y)}) mm, square to it; Σr^2 = ${n(polar)} mm2, T_m = ${n(clean(turning, Math.abs(action.Vx) + Math.abs(action.Vy)))} N mm about the middle`,
  ];
}

/** How the plate hands a combination to its bolts: sentences, then each insert's place, strain and force in words. */
interface PlateForces {
  readonly lines: readonly string[];
  /** Insert, x, y, A_s, e, N, Vx, Vy. */
  readonly rows: readonly (readonly string[])[];
}

/** A sum of forces against the action: what, of which forces, what it gives, what is wanted, whether it is equal. */
type BalanceRow = readonly [what: string, formula: string, sum: string, wanted: string, check: string];

/** The plate of one combination in steps that can be followed by hand. */
export interface PlateSteps extends PlateForces {
  /** Equilibrium, moments about the action's point. */
  readonly balance: readonly BalanceRow[];
}

/** Each insert's force, and the strain plane that it comes from. */
function listForces(plate: ResolvedPlate, action: FixtureAction, forces: FixtureForces): PlateForces {
  const { a, b, c } = forces.plane;
  const [x0, y0] = action.at;
  // About the action's point the plane's numbers keep their digits, however far the origin of the face is.
  const atAction = a + b * x0 + c * y0;
  const reach = measureReach(plate, action);
  const strain = Math.abs(atAction) + reach * (Math.abs(b) + Math.abs(c));
  const tilt = (slope: number) => n(clean(slope, strain / reach));
  const size = measureSize(forces, action);
  const rows = forces.bolts.map(({ id, N, Vx, Vy }, i) => {
    const { x, y, stressArea } = plate.bolts[i]!;
    const e = atAction + b * (x - x0) + c * (y - y0);
    return [id, n(x), n(y), n(stressArea), n(clean(e, strain)), n(N), n(clean(Vx, size)), n(clean(Vy, size))];
  });
  const { compression, maxContact } = forces;
  const contact =
    compression === null
      ? 'no contact: C = 0'
      : `contact C = ${n(compression.force)} at (x_C, y_C) = (${n(compression.at[0])}, ${n(compression.at[1])}), at most ${n(maxContact)} MPa`;
  return {
    lines: [
      `action at (x_0, y_0) = (${n(x0)}, ${n(y0)}): N ${n(action.N)}, Vx ${n(action.Vx)}, Vy ${n(action.Vy)}, Mx ${n(action.Mx)}, My ${n(action.My)}, T ${n(action.T)}`,
      `rigid plate: e = ${n(clean(atAction, strain))} + (${tilt(b)}) (x - x_0) + (${tilt(c)}) (y - y_0); a bolt pulls N = n A_s max(0, e), n = ${n(plate.modularRatio)}; the contact presses with max(0, -e)`,
      contact,
      ...listShear(plate, action),
    ],
    rows,
  };
}

/** The distance from the action to the farthest corner of the plate [mm]. */
function measureReach(plate: ResolvedPlate, { at: [x0, y0] }: FixtureAction): number {
  return Math.max(...plate.outline.map(([x, y]) => Math.hypot(x - x0, y - y0)));
}

function listBalance(plate: ResolvedPlate, action: FixtureAction, forces: FixtureForces): readonly BalanceRow[] {
  const size = measureSize(forces, action);
  return balance(forces, plate, action).map(({ what, formula, sum, wanted, isMoment }) => {
    const scale = isMoment ? size * measureReach(plate, action) : size;
    const rest = Math.abs(sum - wanted);
    return [what, formula, n(clean(sum, scale)), n(wanted), rest <= BALANCED * scale ? 'equal' : `off by ${n(rest)}`];
  });
}

/** The plate of one combination: its action, the strain plane, each insert's force, and the check of equilibrium; null without a plate. */
export function listPlateSteps({ plate, actions }: ResolvedConnection, { combination }: LoadCase): PlateSteps | null {
  if (plate === null || combination.kind === 'unsolved' || combination.forces === null || actions.kind !== 'loads')
    return null;
  const found = actions.combinations.find(({ name }) => name === combination.name);
  if (found === undefined) return null;
  return {
    ...listForces(plate, found.action, combination.forces),
    balance: listBalance(plate, found.action, combination.forces),
  };
}

/** The plate's bending in steps, and what the rule leaves out. */
export interface BendingSteps {
  readonly lines: readonly string[];
  readonly limits: readonly string[];
}

/** The plate's bending along the line that governs, step by step. */
export function listBendingSteps(bending: PlateBending | null, plate: ResolvedPlate | null): BendingSteps | null {
  if (bending === null || plate === null || bending.kind === 'not-checked' || bending.governing === null) return null;
  const { from, to, boltMoment, boltWidth, contactMoment, contactWidth, momentPerWidth, stress, ratio } =
    bending.governing;
  const isByBolts = boltWidth > 0 && momentPerWidth === boltMoment / boltWidth;
  const [moment, carried] = isByBolts ? [boltMoment, boltWidth] : [contactMoment, contactWidth];
  const point = ([x, y]: readonly [number, number]) => `(${n(x)}, ${n(y)})`;
  return {
    lines: [
      `line ${point(from)} to ${point(to)} mm; beyond it ${isByBolts ? 'the bolts pull' : 'the contact presses'} with M = ${n(moment)} N mm on a width b = ${n(carried)} mm`,
      `m = M / b = ${n(moment)} / ${n(carried)} = ${n(momentPerWidth)} N`,
      `σ = 6 m / t^2 = 6 * ${n(momentPerWidth)} / ${n(plate.thickness)}^2 = ${n(stress)} MPa`,
      `ratio = σ / f_yd = ${n(stress)} / ${n(stress / ratio)} = ${n(ratio)}: ${showRatio(ratio)}, ${isWithin(ratio) ? 'passes' : 'FAILS'}`,
      bending.rule,
    ],
    limits: bending.limits,
  };
}
