import type { NearMovement } from './near-movement.ts';
import type { ReachProgram } from './reach-program.ts';
import { addSquareFour, factorFour, solveFour } from './symmetric-4.ts';

/** Holes that touch are held by this stiffness: what it leaves open the next step takes away. */
const STIFF = 1e7;
/** Along a slot nothing holds a hole: such a movement is held by that share of the multipliers, so that it does not run away. */
const DRAG = 0.1;
const MOST_STEPS = 20;
/** Half squared distances agree to that [mm²]. */
const CLOSE = 1e-8;
/** From this share of the largest distance on a hole is taken as one that touches, to begin with. */
const NEAR = 0.85;
/** After a step that short [mm, units of r] the next would change nothing. */
const RESTING = 1e-4;
/** A step beyond it [mm, or units of r] leads nowhere. */
const WILD = 1e3;

/**
 * Solves a ray's program (see `ray-reach.ts`) by the holes that touch: Newton steps on their constraints, held by a multiplier and a stiffness each; one that
 * would pull is let go, the one that is most in the way is added. Two to four steps from a near movement; where it does not come to rest the
 * slower way must be gone.
 * @returns a function of base, direction, a near movement over the bolts at `scale` along the ray; false: not found
 */
export function prepareQuickReach(
  program: ReachProgram,
  leastSlack: number,
): (base: Float64Array, direction: Float64Array, near: NearMovement, scale: number) => boolean {
  const { count, unknowns, weights, values, gradients, curvature } = program;
  const touches = new Uint8Array(count);
  const held = new Float64Array(10);
  const next = new Float64Array(count);
  const right = new Float64Array(4);
  const step = new Float64Array(4);

  const begin = (near: NearMovement, scale: number): void => {
    unknowns[0] = near.a / near.most;
    unknowns[1] = near.b / near.most;
    unknowns[2] = near.h / near.most;
    unknowns[3] = scale / near.most;
    let touching = 0;
    for (let i = 0; i < count; i += 1) {
      touches[i] = near.sizes[i] > NEAR * near.most ? 1 : 0;
      touching += touches[i];
    }
    for (let i = 0; i < count; i += 1) weights[i] = (touches[i] * unknowns[3]) / (touching * leastSlack * leastSlack);
  };

  /** One Newton step with the holes that touch; those that would pull are let go first. */
  const solve = (drag: number): void => {
    for (let tries = 0; tries <= count; tries += 1) {
      held.set(curvature);
      let all = 0;
      for (let i = 0; i < count; i += 1) all += weights[i];
      held[0] += drag * all;
      held[4] += drag * all;
      held[7] += drag * all;
      held[9] += drag * all;
      right[0] = 0;
      right[1] = 0;
      right[2] = 0;
      right[3] = 1;
      for (let i = 0; i < count; i += 1) if (touches[i] === 1) hold(i);
      factorFour(held);
      solveFour(held, right, step);
      if (!letGo()) return;
    }
  };
  const hold = (i: number): void => {
    addSquareFour(held, STIFF, gradients, 4 * i);
    const pull = weights[i] + STIFF * values[i];
    right[0] -= pull * gradients[4 * i];
    right[1] -= pull * gradients[4 * i + 1];
    right[2] -= pull * gradients[4 * i + 2];
    right[3] -= pull * gradients[4 * i + 3];
  };
  /** Writes the new multipliers; the one that pulls most is let go: true. */
  const letGo = (): boolean => {
    let worst = -1;
    let lowest = -1e-9;
    for (let i = 0; i < count; i += 1) {
      next[i] = 0;
      if (touches[i] === 0) continue;
      const k = 4 * i;
      const moved =
        gradients[k] * step[0] + gradients[k + 1] * step[1] + gradients[k + 2] * step[2] + gradients[k + 3] * step[3];
      next[i] = weights[i] + STIFF * (values[i] + moved);
      if (next[i] >= lowest) continue;
      lowest = next[i];
      worst = i;
    }
    if (worst >= 0) touches[worst] = 0;
    return worst >= 0;
  };

  return (base, direction, near, scale) => {
    begin(near, scale);
    let size = WILD;
    for (let iteration = 0; iteration < MOST_STEPS; iteration += 1) {
      program.evaluate(base, direction);
      let off = 0;
      let worst = -1;
      let most = CLOSE;
      for (let i = 0; i < count; i += 1) {
        if (touches[i] === 1) off = Math.max(off, Math.abs(values[i]));
        else if (values[i] > most) {
          most = values[i];
          worst = i;
        }
      }
      if (worst >= 0) touches[worst] = 1;
      else if (off < CLOSE && size < RESTING) return true;
      solve(DRAG * 0.5 ** iteration);
      size = Math.abs(step[0]) + Math.abs(step[1]) + Math.abs(step[2]) + Math.abs(step[3]);
      if (!(size < WILD)) return false;
      for (let axis = 0; axis < 4; axis += 1) unknowns[axis] += step[axis];
      weights.set(next);
    }
    return false;
  };
}
