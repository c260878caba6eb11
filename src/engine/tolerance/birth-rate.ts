import { type ContactSide, prepareSide } from './contact-sides.ts';
import { prepareNormalShare } from './quick-normal-share.ts';
import type { ScatteredHole } from './scatter-space.ts';

/** A chance below that share counts for nothing. */
const NOTHING = 1e-40;
/** Points on each straight side of a slot. */
const ON_SIDE = 2;

/** How often, per mm² of q and rad of θ, the turning plate begins to go on, with its shift at q. */
export interface BirthRate {
  /** Random numbers from 0 to 1 that one value takes: one a hole and one for pairs. */
  readonly offsets: number;
  find(turn: number, x: number, y: number, offsets: Float64Array): number;
}

/**
 * Prepares the rate at which a plate begins to go on while it is turned.
 *
 * With the plate turned by θ the shifts at which all bolts are in their holes are what discs (stadia) have in common: a convex set. It is born in a point q:
 * two edges touch from outside and come nearer, or three meet, their outward normals u around q, and open. With forces along the normals in balance it opens
 * where their work on the turn is above 0. By the formula of Kac and Rice (textbooks on random fields) the rate is the density of such contacts: for three
 * the product of the edges' densities times |det (uᵢ, uᵢ·vᵢ)|, for two that of both times (s₁ + s₂) u·(v₁ − v₂), each times the chance that all other
 * bolts are in their holes at q. Bolts scatter independently, so that all of it is a product over holes.
 *
 * Directions of the normals are spread evenly about the circle from a random start, a start of its own for every hole, so that the mean over
 * starts is exact.
 * @param holes two or more, about the point that the plate is turned about
 * @param directions of a hole's normals; even
 */
export function prepareBirthRate(holes: readonly ScatteredHole[], directions: number): BirthRate {
  const share = prepareNormalShare();
  const sides = holes.map((hole, i) => prepareSide(hole, i, share));
  const contacts = holes.map(() => new Float64Array(4 * (directions + 2 * ON_SIDE)));
  const sizes = new Int32Array(holes.length);
  const chances = new Float64Array(holes.length);

  const fill = (i: number, offset: number): void => {
    const side = sides[i]!;
    const list = contacts[i]!;
    const part = (2 * Math.PI * side.slack) / directions / chances[i];
    let k = 0;
    const add = (x: number, y: number, weight: number): void => {
      list[k] = x;
      list[k + 1] = y;
      list[k + 2] = side.speed;
      list[k + 3] = weight;
      k += 4;
    };
    for (let step = 0; step < directions; step += 1) {
      const angle = (2 * Math.PI * (step + offset)) / directions;
      const [x, y] = [Math.cos(angle), Math.sin(angle)];
      add(x, y, part * side.touch(x, y));
    }
    for (let step = 0; side.isSlot && step < 2 * ON_SIDE; step += 1) {
      const density = side.touchSide((Math.floor(step / 2) + offset) / ON_SIDE, step % 2 === 0 ? 1 : -1);
      add(side.x, side.y, density / ON_SIDE / chances[i]);
    }
    sizes[i] = k;
  };

  return {
    offsets: holes.length + 1,
    find(turn, x, y, offsets) {
      let all = 1;
      for (const [i, side] of sides.entries()) {
        side.place(turn, x, y);
        chances[i] = side.inside();
        all *= chances[i];
      }
      if (!(all > NOTHING)) return 0;
      for (let i = 0; i < sides.length; i += 1) fill(i, offsets[i]);
      return (
        all *
        (addPairs(sides, chances, contacts, sizes, directions, offsets[sides.length]) +
          addThrees(contacts, sizes, directions, offsets))
      );
    },
  };
}

/** Two edges that touch from outside. */
function addPairs(
  sides: readonly ContactSide[],
  chances: Float64Array,
  contacts: readonly Float64Array[],
  sizes: Int32Array,
  directions: number,
  offset: number,
): number {
  const count = sides.length;
  let sum = 0;
  const densities = new Float64Array(count);
  const speeds = new Float64Array(count);
  const others = new Float64Array(count);
  const back = new Float64Array(count);
  for (let step = 0; step < directions / 2; step += 1) {
    const angle = (2 * Math.PI * (step + offset)) / directions;
    const [x, y] = [Math.cos(angle), Math.sin(angle)];
    for (let i = 0; i < count; i += 1) {
      const side = sides[i]!;
      densities[i] = side.touch(x, y) / chances[i];
      speeds[i] = side.speed;
      others[i] = side.touch(-x, -y) / chances[i];
      back[i] = side.speed;
    }
    for (let i = 0; i < count; i += 1) {
      for (let j = 0; j < count; j += 1) {
        const opening = speeds[i] + back[j];
        if (j !== i && opening > 0) sum += (sides[i]!.slack + sides[j]!.slack) * densities[i] * others[j] * opening;
      }
    }
  }
  sum *= (2 * Math.PI) / directions;
  for (let i = 0; i < count; i += 1) {
    const list = contacts[i]!;
    for (let k = 4 * directions; k < sizes[i]; k += 4) {
      for (let j = 0; j < count; j += 1) {
        if (j === i) continue;
        const side = sides[j]!;
        const density = side.touch(-list[k], -list[k + 1]) / chances[j];
        sum += list[k + 3] * density * Math.max(0, list[k + 2] + side.speed);
      }
    }
  }
  return sum;
}

/** Three edges that meet, their normals around the point. */
function addThrees(
  contacts: readonly Float64Array[],
  sizes: Int32Array,
  directions: number,
  offsets: Float64Array,
): number {
  const round = 4 * directions;
  let sum = 0;
  for (let i = 0; i < contacts.length; i += 1) {
    const one = contacts[i]!;
    for (let j = i + 1; j < contacts.length; j += 1) {
      const two = contacts[j]!;
      for (let a = 0; a < sizes[i]; a += 4) {
        const ax = one[a];
        const ay = one[a + 1];
        for (let b = 0; b < sizes[j]; b += 4) {
          const turned = ax * two[b + 1] - ay * two[b];
          const isLeft = turned > 0;
          const sign = isLeft ? 1 : -1;
          const bx = sign * two[b];
          const by = sign * two[b + 1];
          const cx = sign * ax;
          const cy = sign * ay;
          const across = sign * turned;
          const av = one[a + 2];
          const bv = two[b + 2];
          const areBothRound = a < round && b < round;
          // In steps from one direction to the next: the third normal lies between the opposites of both.
          const atA = a / 4 + offsets[i];
          const atB = b / 4 + offsets[j];
          const from = (isLeft ? atA : atB) + directions / 2;
          const to = (isLeft ? atB : atA) + directions / 2;
          const end = to < from ? to + directions : to;
          let inner = 0;
          for (let l = j + 1; l < contacts.length; l += 1) {
            const three = contacts[l]!;
            let rest = 0;
            if (areBothRound) {
              rest = round;
              const last = end - offsets[l];
              for (let step = Math.ceil(from - offsets[l]); step < last; step += 1) {
                const c = 4 * (step % directions);
                const x = three[c];
                const y = three[c + 1];
                const work = av * (bx * y - by * x) + bv * (x * cy - y * cx) + three[c + 2] * across;
                if (work > 0) inner += three[c + 3] * work;
              }
            }
            for (let c = rest; c < sizes[l]; c += 4) {
              const bc = bx * three[c + 1] - by * three[c];
              const ca = three[c] * cy - three[c + 1] * cx;
              if (!(bc > 0 && ca > 0)) continue;
              const work = av * bc + bv * ca + three[c + 2] * across;
              if (work > 0) inner += three[c + 3] * work;
            }
          }
          sum += one[a + 3] * two[b + 3] * inner;
        }
      }
    }
  }
  return sum;
}
