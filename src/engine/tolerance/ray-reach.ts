import { type NearMovement, prepareNearMovement } from './near-movement.ts';
import type { PlateHole } from './plate-hole.ts';
import { prepareQuickReach } from './quick-reach.ts';
import { prepareProgram, type ReachProgram } from './reach-program.ts';
import { addSquareFour, factorFour, solveFour } from './symmetric-4.ts';

/** Holes prepared for rays: bolts stand at hole + base + r · direction, all at once (x and y in turn, mm; the unit of r is the caller's). */
export interface RayReach {
  /** A near movement over bolts that are off by so much; the next call writes over it. */
  near(off: Float64Array): NearMovement;
  /**
   * Where on the ray the plate stops going on; null: it does not go on at the ray's start, or it was not found.
   * @param near over direction · scale
   * @param turn the turn over the base alone [rad]
   */
  far(base: Float64Array, direction: Float64Array, near: NearMovement, scale: number, turn: number): number | null;
}

/** The program is solved when slacks times multipliers are below that on average, in the unit of r. */
const CLOSE = 1e-8;
/** Sums of forces that are nothing beside 1. */
const BALANCED = 1e-5;
const MOST_STEPS = 50;
/** A step ends this share of the way to where a slack or a multiplier would be used up. */
const SHORT_OF = 0.99;
/** Multipliers drift apart where one product is below that share of the mean, or forces are that much larger: then they are brought together first. */
const APART = 0.01;
const UNBALANCED = 1e3;

/**
 * Prepares holes for rays.
 *
 * The farthest r at which some movement of the plate (a shift and an exact turn) has every bolt in its hole is the optimum of a program in four
 * unknowns, with one smooth constraint a hole: the squared distance of bolt and slot axis. It is solved from the holes that touch (`quick-reach.ts`), else by
 * a primal-dual interior-point method with predictor and corrector (Mehrotra 1992; Nocedal and Wright, Numerical Optimization, 2nd edition, chapters 14
 * and 19; from memory). Were the turn any complex number and not of the unit circle, the program would be convex and its optimum the only one; so near to the design
 * the circle is as good as straight.
 *
 * @param holes two at least, each with a slack above 0, their middle at the origin
 */
export function prepareReach(holes: readonly PlateHole[]): RayReach {
  const program = prepareProgram(holes);
  const { unknowns, length, values, count } = program;
  const solve = prepareSolver(program);
  const least = Math.min(...holes.map(({ slack }) => slack));
  const quick = prepareQuickReach(program, least);
  /** Somewhere on the ray at which the unshifted plate goes on; null: not at its start. */
  const startOn = (base: Float64Array, direction: Float64Array, turn: number): number | null => {
    unknowns.fill(0);
    unknowns[2] = length * turn;
    program.evaluate(base, direction);
    let room = Number.POSITIVE_INFINITY;
    for (let i = 0; i < count; i += 1) {
      const { slack } = holes[i]!;
      const left = slack - Math.sqrt(Math.max(0, 2 * values[i] + slack * slack));
      room = Math.min(room, left / Math.hypot(direction[2 * i], direction[2 * i + 1]));
    }
    return room > 0 ? room : null;
  };
  return {
    near: prepareNearMovement(holes, length),
    far: (base, direction, near, scale, turn) => {
      const start = startOn(base, direction, turn);
      if (start === null) return null;
      if (quick(base, direction, near, scale) && unknowns[3] >= start) return unknowns[3];
      unknowns.fill(0);
      unknowns[2] = length * turn;
      unknowns[3] = 0.7 * start;
      return solve(base, direction, least) ? unknowns[3] : null;
    },
  };
}

type Solver = (base: Float64Array, direction: Float64Array, least: number) => boolean;

/** The method itself; what it needs of memory is taken once. */
function prepareSolver(program: ReachProgram): Solver {
  const { count, unknowns, weights, values, gradients, curvature } = program;
  const slackSteps = new Float64Array(count);
  const weightSteps = new Float64Array(count);
  const corrections = new Float64Array(count);
  const bends = new Float64Array(count);
  const right = new Float64Array(4);
  const step = new Float64Array(4);
  const kept = new Float64Array(4);

  /** Newton step towards slack × multiplier = `aim` less the corrections. */
  const findStep = (aim: number): void => {
    right[0] = 0;
    right[1] = 0;
    right[2] = 0;
    right[3] = 1;
    for (let i = 0; i < count; i += 1) {
      const pull = (aim - corrections[i]) / -values[i];
      right[0] -= pull * gradients[4 * i];
      right[1] -= pull * gradients[4 * i + 1];
      right[2] -= pull * gradients[4 * i + 2];
      right[3] -= pull * gradients[4 * i + 3];
    }
    solveFour(curvature, right, step);
    for (let i = 0; i < count; i += 1) {
      const k = 4 * i;
      slackSteps[i] =
        -gradients[k] * step[0] - gradients[k + 1] * step[1] - gradients[k + 2] * step[2] - gradients[k + 3] * step[3];
      weightSteps[i] = (aim - corrections[i] - weights[i] * slackSteps[i]) / -values[i] - weights[i];
    }
    program.bend(step, bends);
  };

  /** The largest part of the step, at most 1, that leaves every slack above 0: slack + part · step − part² · bend. */
  const roomOfSlacks = (): number => {
    let most = 1;
    for (let i = 0; i < count; i += 1) {
      const [slack, by, bend] = [-values[i], slackSteps[i], bends[i]];
      if (slack + most * (by - most * bend) >= 0) continue;
      const root = Math.sqrt(by * by + 4 * bend * slack);
      most = Math.min(most, by > 0 ? (by + root) / (2 * bend) : (2 * slack) / (root - by));
    }
    return most;
  };
  const roomOfWeights = (): number => {
    let most = 1;
    for (let i = 0; i < count; i += 1) if (weights[i] + most * weightSteps[i] < 0) most = weights[i] / -weightSteps[i];
    return most;
  };
  const isInside = (): boolean => {
    for (let i = 0; i < count; i += 1) if (!(values[i] < 0)) return false;
    return true;
  };

  return (base, direction, least) => {
    weights.fill(1 / (count * least));
    program.evaluate(base, direction);
    if (!isInside()) return false;
    for (let iteration = 0; iteration < MOST_STEPS; iteration += 1) {
      let gap = 0;
      for (let i = 0; i < count; i += 1) gap -= values[i] * weights[i];
      gap /= count;
      let unbalanced = 0;
      for (let axis = 0; axis < 4; axis += 1) {
        let sum = axis === 3 ? -1 : 0;
        for (let i = 0; i < count; i += 1) sum += weights[i] * gradients[4 * i + axis];
        unbalanced = Math.max(unbalanced, Math.abs(sum));
      }
      if (gap < CLOSE && unbalanced < BALANCED) return true;
      for (let i = 0; i < count; i += 1) {
        addSquareFour(curvature, weights[i] / -values[i], gradients, 4 * i);
      }
      factorFour(curvature);
      corrections.fill(0);
      findStep(0);
      const trial = Math.min(roomOfSlacks(), roomOfWeights());
      let reached = 0;
      for (let i = 0; i < count; i += 1) {
        const slack = -values[i] + trial * (slackSteps[i] - trial * bends[i]);
        reached += slack * (weights[i] + trial * weightSteps[i]);
        corrections[i] = trial * trial * (slackSteps[i] * weightSteps[i] - weights[i] * bends[i]);
      }
      let smallest = 1;
      for (let i = 0; i < count; i += 1) smallest = Math.min(smallest, (-values[i] * weights[i]) / gap);
      const part = reached / count / gap;
      const isApart = smallest < APART || unbalanced > UNBALANCED * gap;
      const centring = isApart ? 0.6 : Math.max(Math.min(1, part * part * part), 1e-3);
      findStep(centring * gap);
      let share = Math.min(1, SHORT_OF * Math.min(roomOfSlacks(), roomOfWeights()));
      kept.set(unknowns);
      for (let tries = 0; tries < 20; tries += 1) {
        for (let axis = 0; axis < 4; axis += 1) unknowns[axis] = kept[axis] + share * step[axis];
        program.evaluate(base, direction);
        if (isInside()) break;
        share *= 0.7;
      }
      if (!isInside()) {
        // Back, and away from the edges.
        unknowns.set(kept);
        program.evaluate(base, direction);
        for (let i = 0; i < count; i += 1) weights[i] = (2 * gap) / -values[i];
        program.evaluate(base, direction);
        continue;
      }
      for (let i = 0; i < count; i += 1) weights[i] += share * weightSteps[i];
    }
    return false;
  };
}
