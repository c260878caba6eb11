import { type Adjustment, adjust } from '../geometry/least-squares.ts';
import { fitPoints } from './fit-points.ts';
import { moveOn, movePoint, type Pose, turnsOf } from './pose.ts';
import { SurveyError } from './survey-error.ts';
import { dot, lengthOf, type Matrix, meanOf, minus, multiply, transpose, type Vector } from './vector.ts';

/**
 * What is known of one measured point on the panel: its place, or only its distance from a straight edge (in 3D from a plane), in the
 * panel's frame. Lengths mm; all points of a survey have two, or all three, numbers.
 */
export type Control =
  | {
      readonly kind: 'point';
      readonly design: Vector;
      readonly measured: Vector;
      /** Standard deviation along every axis, of the place on the panel and of the instrument together. */
      readonly deviation: number;
    }
  | {
      readonly kind: 'edge';
      /** Any point of the edge, and the unit vector across it. */
      readonly through: Vector;
      readonly across: Vector;
      readonly measured: Vector;
      readonly deviation: number;
    };

/** A point brought onto the panel. */
export interface Registered {
  readonly at: Vector;
  /** Covariance of its coordinates [mm²]: the control points' and the instrument's. */
  readonly covariance: Matrix;
}

/** The instrument's frame brought onto the panel. */
export interface Registration {
  readonly pose: Pose;
  /** Designed less measured on the panel, a vector a control; of an edge only the part across it. */
  readonly residuals: readonly Vector[];
  /** Root mean square of the lengths of the residuals [mm]. */
  readonly rms: number;
  /** Σ(v/σ)². */
  readonly sum: number;
  /** How many coordinates and distances are more than needed. */
  readonly redundancy: number;
  /** Brings a measured point onto the panel; `deviation` is the instrument's along every axis. */
  place(measured: Vector, deviation: number): Registered;
}

const STEPS = 60;
const HALVINGS = 30;
/** A step below this [mm] at the farthest control moves nothing that an instrument could see. */
const AT_REST = 1e-9;

/** One coordinate or distance: n · (R m + t) = c. */
interface Condition {
  readonly control: number;
  readonly normal: Vector;
  readonly offset: number;
}

function listConditions(controls: readonly Control[]): readonly Condition[] {
  return controls.flatMap((one, control): Condition[] => {
    if (one.kind === 'edge') return [{ control, normal: one.across, offset: dot(one.across, one.through) }];
    return one.design.map((offset, axis) => ({
      control,
      normal: one.design.map((_, k) => (k === axis ? 1 : 0)),
      offset,
    }));
  });
}

/**
 * Finds the rigid movement from the instrument's frame onto the panel by weighted least squares: Gauss–Newton over turn and shift, every
 * coordinate of a control point and every distance across an edge an observation, from the best fit of the points or from `start`.
 *
 * Standard deviations follow from those given; they are not scaled by how well the controls agree.
 *
 * @param start where to begin; needed where too few controls are points (from the inserts' designed places, for one)
 * @throws SurveyError where the controls do not fix the panel
 */
export function registerControls(controls: readonly Control[], start: Pose | null = null): Registration {
  const conditions = listConditions(controls);
  const deviations = conditions.map(({ control }) => controls[control]!.deviation);
  let pose = start ?? startFrom(controls);
  let local = adjustAt(controls, conditions, deviations, pose);
  for (let step = 0; step < STEPS; step += 1) {
    const next = descend(controls, conditions, pose, local);
    if (next === null) break;
    pose = next.pose;
    local = adjustAt(controls, conditions, deviations, pose);
    if (next.size < AT_REST) break;
  }
  return describe(controls, conditions, pose, local);
}

/** The first of the steps 1, 1/2, 1/4 … that does not raise the sum; null where none lowers it: at rest. */
function descend(
  controls: readonly Control[],
  conditions: readonly Condition[],
  pose: Pose,
  { adjustment, centre }: Local,
): { readonly pose: Pose; readonly size: number } | null {
  const turns = turnsOf(centre).length;
  const now = sumSquares(controls, conditions, pose);
  const reach = Math.max(...controls.map(({ measured }) => lengthOf(minus(movePoint(pose, measured), centre))));
  for (let k = 0, share = 1; k < HALVINGS; k += 1, share /= 2) {
    const step = adjustment.unknowns.map((value) => value * share);
    const [turn, shift] = [step.slice(0, turns), step.slice(turns)];
    const next = moveOn(pose, turn, centre, shift);
    const size = lengthOf(turn) * reach + lengthOf(shift);
    if (sumSquares(controls, conditions, next) <= now) return { pose: next, size };
    if (size < AT_REST) return null;
  }
  return null;
}

/** The conditions as they grow about a pose: unknowns are a small turn about the middle of the controls, and a shift. */
interface Local {
  readonly adjustment: Adjustment;
  readonly centre: Vector;
}

function adjustAt(
  controls: readonly Control[],
  conditions: readonly Condition[],
  deviations: readonly number[],
  pose: Pose,
): Local {
  const places = controls.map(({ measured }) => movePoint(pose, measured));
  const centre = meanOf(
    places,
    controls.map(({ deviation }) => deviation ** -2),
  );
  const rows = conditions.map(({ control, normal }) => [
    ...turnsOf(minus(places[control]!, centre)).map((turn) => dot(normal, turn)),
    ...normal,
  ]);
  const misses = conditions.map(({ control, normal, offset }) => offset - dot(normal, places[control]!));
  const adjustment = adjust(rows, misses, deviations);
  if (adjustment === null) throw leavesOpen(controls);
  return { adjustment, centre };
}

function leavesOpen(controls: readonly Control[]): SurveyError {
  const points = controls.filter(({ kind }) => kind === 'point').length;
  return new SurveyError(
    'control',
    `${points} control point${points === 1 ? '' : 's'} and ${controls.length - points} points on edges leave the panel free to move or turn; expected at least ${
      controls[0]?.measured.length === 2
        ? 'two points, or three on two edges that are not parallel'
        : 'three points off one line, or points on edges and faces in all directions'
    }`,
  );
}

/** The best fit of the points alone. */
function startFrom(controls: readonly Control[]): Pose {
  return fitPoints(
    controls.flatMap((one) =>
      one.kind === 'point' ? [{ design: one.design, measured: one.measured, weight: one.deviation ** -2 }] : [],
    ),
  );
}

function sumSquares(controls: readonly Control[], conditions: readonly Condition[], pose: Pose): number {
  return conditions.reduce((sum, { control, normal, offset }) => {
    const { measured, deviation } = controls[control]!;
    return sum + ((offset - dot(normal, movePoint(pose, measured))) / deviation) ** 2;
  }, 0);
}

function describe(
  controls: readonly Control[],
  conditions: readonly Condition[],
  pose: Pose,
  { adjustment, centre }: Local,
): Registration {
  const residuals = controls.map((one) => {
    const place = movePoint(pose, one.measured);
    if (one.kind === 'point') return minus(one.design, place);
    const across = dot(one.across, minus(one.through, place));
    return one.across.map((part) => part * across);
  });
  const count = controls.length;
  return {
    pose,
    residuals,
    rms: Math.sqrt(residuals.reduce((sum, residual) => sum + dot(residual, residual), 0) / count),
    sum: sumSquares(controls, conditions, pose),
    redundancy: conditions.length - adjustment.unknowns.length,
    place: (measured, deviation) => {
      const at = movePoint(pose, measured);
      // How the place follows the small turn and the shift, an unknown a row.
      const follows = [...turnsOf(minus(at, centre)), ...at.map((_, axis) => at.map((__, k) => (k === axis ? 1 : 0)))];
      const spread = transpose(follows).map((row) => multiply(adjustment.covariance, row));
      return {
        at,
        covariance: transpose(follows).map((row, i) =>
          spread.map((column, j) => dot(row, column) + (i === j ? deviation ** 2 : 0)),
        ),
      };
    },
  };
}
