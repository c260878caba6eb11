import { approximateNormalQuantile } from '../statistics/normal.ts';
import type { ScatteredHole } from './scatter-space.ts';

/** Heights across a round end at which what it holds is added up; spectral, so that 16 leave some 1e-8. */
const HEIGHTS = 16;
/**
 * Slots are taken as tapered by that much [rad], all towards the same end: two parallel sides that touch then touch in a point, and always at that end. Every
 * hole has a little more of it than the one before, so that no two normals are opposite.
 */
const TAPER = 1e-7;

/**
 * One hole as the plate's shift sees it: with the plate turned by θ, the shifts at which the bolt is in its hole are a disc of the slack's radius (a slot: a
 * stadium) about bolt − R(θ)·hole, which is normal about a known middle.
 */
export interface ContactSide {
  /** Turns the plate [rad] and shifts it by q [mm]. */
  place(turn: number, x: number, y: number): void;
  /** Chance that the bolt is in its hole. */
  inside(): number;
  /** Density that the round edge touches q with its outward normal (x, y) [1/mm²]; sets `speed`. */
  touch(x: number, y: number): number;
  /** Density of a point on a straight side, `part` from 0 to 1 along it, `sign` +1 or −1 [1/mm]; sets `x`, `y`, `speed`. */
  touchSide(part: number, sign: number): number;
  /** How fast the edge moves outward as the plate is turned [mm/rad], after `touch` and `touchSide`; the normal after `touchSide`. */
  speed: number;
  x: number;
  y: number;
  readonly slack: number;
  readonly isSlot: boolean;
}

/** Prepares a hole about the point that the plate is turned about. */
export function prepareSide(hole: ScatteredHole, index: number, share: (z: number) => number): ContactSide {
  const { at, slack, sigma, bias } = hole;
  const half = hole.slot / 2;
  const [startX, startY] = [at[0] + (bias?.[0] ?? 0), at[1] + (bias?.[1] ?? 0)];
  // Which way round a slot was drawn changes nothing.
  const angle = hole.angle - Math.PI * Math.floor(hole.angle / Math.PI + TAPER);
  const taper = TAPER * (1 + index / 64);
  const scale = 1 / (2 * Math.PI * sigma * sigma);
  const heights = Float64Array.from(
    { length: HEIGHTS },
    (_, k) => slack * Math.cos(((k + 1) * Math.PI) / (HEIGHTS + 1)),
  );
  const widths = heights.map((height) => Math.sqrt(slack * slack - height * height));
  const line = 1 / (Math.sqrt(2 * Math.PI) * sigma);
  let [px, py, ex, ey, dx, dy] = [0, 0, 1, 0, 0, 0];
  const below = (x: number): number => share(x / sigma);

  const side: ContactSide = {
    slack,
    isSlot: half > 0,
    speed: 0,
    x: 0,
    y: 0,
    place(turn, x, y) {
      const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
      px = cos * at[0] - sin * at[1];
      py = sin * at[0] + cos * at[1];
      // From the middle of the normal cloud to q.
      dx = x - (startX - px);
      dy = y - (startY - py);
      if (half > 0) {
        ex = Math.cos(angle + turn);
        ey = Math.sin(angle + turn);
      }
    },
    inside() {
      const along = half > 0 ? dx * ex + dy * ey : Math.hypot(dx, dy);
      const across = half > 0 ? dy * ex - dx * ey : 0;
      let sum = 0;
      for (let k = 0; k < HEIGHTS; k += 1) {
        const off = (heights[k] - across) / sigma;
        const wide = widths[k];
        const wideShare =
          half > 0
            ? below(half + wide - along) - below(half - along) + below(-half - along) - below(-half - wide - along)
            : below(wide - along) - below(-wide - along);
        sum += Math.exp(-0.5 * off * off) * wide * wideShare;
      }
      const ends = (sum * line * Math.PI) / (HEIGHTS + 1);
      if (half === 0) return ends;
      const straight = (below(half - along) - below(-half - along)) * (below(slack - across) - below(-slack - across));
      return ends + straight;
    },
    touch(x, y) {
      const end = half > 0 ? (x * ex + y * ey > 0 ? half : -half) : 0;
      const offX = dx - slack * x - end * ex;
      const offY = dy - slack * y - end * ey;
      side.speed = x * (py - end * ey) - y * (px - end * ex);
      return scale * Math.exp((-0.5 * (offX * offX + offY * offY)) / (sigma * sigma));
    },
    touchSide(part, sign) {
      side.x = taper * ex - sign * ey;
      side.y = taper * ey + sign * ex;
      const along = dx * ex + dy * ey;
      const off = (dx * side.x + dy * side.y - slack) / sigma;
      const [low, high] = [below(-half - along), below(half - along)];
      const mass = high - low;
      if (!(mass > 0)) return 0;
      // The middle of the slot's straight part lies at q − x·e; x is drawn from its own normal density, cut at both ends.
      const level = Math.max(1e-15, Math.min(1 - 1e-15, low + mass * part));
      const x = Math.max(-half, Math.min(half, along + sigma * approximateNormalQuantile(level)));
      side.speed = side.x * (py - x * ey) - side.y * (px - x * ex);
      return line * Math.exp(-0.5 * off * off) * mass;
    },
  };
  return side;
}
