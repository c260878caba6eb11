import type { Point } from '../geometry/point.ts';
import type { PlateHole } from './plate-hole.ts';

/** Below this [mm] a bolt stands on the middle of its hole, or on the middle line of its slot. */
const ON_IT = 1e-12;
/** Two shares that differ by less are equal. */
const SAME = 1e-12;
/** Most exchanges at one turn: what is proven then still holds, it is only less. */
const MOST_EXCHANGES = 60;
/** Normals of the three straight lines that every search begins with: a third of a circle apart. */
const FIRST_X = [1, -0.5, -0.5] as const;
const FIRST_Y = [0, Math.sqrt(0.75), -Math.sqrt(0.75)] as const;

/**
 * The best shift of a plate at a given turn, and a bound that holds at every turn.
 *
 * The lack of a hole is the distance of its bolt from the middle line of the hole less its slack. It is a convex function of the shift, the largest of
 * straight functions n·(a − w) − s|n·u| − r over unit normals n (a: bolt from hole, w: shift, s: half of the slot along u, r: slack; plate's axes). Three such
 * functions whose normals surround the origin have a least largest value, which lies below that of all of them. The one that is highest above it takes
 * the place of one of the three, so that this value rises, until it meets the least lack (method of exchange).
 *
 * The three functions with their shares λ (Σλ = 1, Σλn = 0) leave the shift out: Σλ(n·a − s|n·u| − r). With the normals held in the plate it is
 * A cos θ + B sin θ − C at any turn; where all three holes are round the normals may as well be held to the bolts, which gives another such
 * bound. The one that bends up more is kept.
 */
export class ShiftSearch {
  /** Least largest lack that was found [mm], the shift that has it, in the plate's axes, and what no shift can go below. */
  lack = 0;
  x = 0;
  y = 0;
  bound = 0;
  /** The bound at every turn: a cos θ + b sin θ − c. */
  a = 0;
  b = 0;
  c = 0;
  readonly count: number;
  private readonly holeX: Float64Array;
  private readonly holeY: Float64Array;
  private readonly alongX: Float64Array;
  private readonly alongY: Float64Array;
  private readonly half: Float64Array;
  private readonly slack: Float64Array;
  private readonly offX: Float64Array;
  private readonly offY: Float64Array;
  private readonly of = new Int32Array(3);
  private readonly nx = new Float64Array(3);
  private readonly ny = new Float64Array(3);
  private readonly less = new Float64Array(3);
  private readonly share = new Float64Array(3);
  private readonly tightest: number;
  /** What the last look at all holes found. */
  private worst = 0;
  private worstX = 0;
  private worstY = 0;
  private worstAway = 0;

  /** @param holes one or more, their places from the point that the plate turns about */
  constructor(holes: readonly PlateHole[]) {
    const pick = (value: (hole: PlateHole) => number) => Float64Array.from(holes, value);
    this.count = holes.length;
    this.holeX = pick(({ at }) => at[0]);
    this.holeY = pick(({ at }) => at[1]);
    this.alongX = pick(({ angle }) => Math.cos(angle));
    this.alongY = pick(({ angle }) => Math.sin(angle));
    this.half = pick(({ slot }) => slot / 2);
    this.slack = pick(({ slack }) => slack);
    this.offX = new Float64Array(holes.length);
    this.offY = new Float64Array(holes.length);
    this.tightest = this.slack.indexOf(Math.min(...this.slack));
    for (let k = 0; k < 3; k++) this.keep(k, this.tightest, FIRST_X[k]!, FIRST_Y[k]!);
  }

  /** What no movement at all can go below [mm]: no bolt stands better than on the middle of its hole. */
  get floor(): number {
    return -this.slack[this.tightest];
  }

  /** Turns the bolts into the plate's axes. */
  private turnBolts(boltX: Float64Array, boltY: Float64Array, cos: number, sin: number): void {
    for (let i = 0; i < this.count; i++) {
      this.offX[i] = cos * boltX[i] + sin * boltY[i] - this.holeX[i];
      this.offY[i] = cos * boltY[i] - sin * boltX[i] - this.holeY[i];
    }
  }

  /** The largest lack at a shift, whose it is and which way its bolt lies [mm]. */
  private look(x: number, y: number): number {
    let largest = Number.NEGATIVE_INFINITY;
    for (let i = 0; i < this.count; i++) {
      let dx = this.offX[i] - x;
      let dy = this.offY[i] - y;
      const half = this.half[i];
      if (half > 0) {
        const ux = this.alongX[i];
        const uy = this.alongY[i];
        const along = Math.max(-half, Math.min(half, dx * ux + dy * uy));
        dx -= along * ux;
        dy -= along * uy;
      }
      const away = Math.sqrt(dx * dx + dy * dy);
      const lack = away - this.slack[i];
      if (lack <= largest) continue;
      largest = lack;
      this.worst = i;
      this.worstX = dx;
      this.worstY = dy;
      this.worstAway = away;
    }
    return largest;
  }

  private keep(k: number, hole: number, nx: number, ny: number): void {
    this.of[k] = hole;
    this.nx[k] = nx;
    this.ny[k] = ny;
    this.less[k] = this.half[hole] * Math.abs(nx * this.alongX[hole] + ny * this.alongY[hole]) + this.slack[hole];
  }

  private height(k: number): number {
    const hole = this.of[k];
    return this.nx[k] * this.offX[hole] + this.ny[k] * this.offY[hole] - this.less[k];
  }

  /** The largest lack with the plate turned and shifted [mm]. */
  lackAt(boltX: Float64Array, boltY: Float64Array, turn: number, x: number, y: number): number {
    this.turnBolts(boltX, boltY, Math.cos(turn), Math.sin(turn));
    return this.look(x, y);
  }

  /** Where each bolt stands from its hole, in the axes of the turned plate [mm]. */
  listOffsets(boltX: Float64Array, boltY: Float64Array, turn: number): readonly Point[] {
    this.turnBolts(boltX, boltY, Math.cos(turn), Math.sin(turn));
    return Array.from(this.offX, (x, i): Point => [x, this.offY[i]]);
  }

  /** The lack of each hole with the plate turned and shifted [mm]. */
  listLacks(boltX: Float64Array, boltY: Float64Array, turn: number, x: number, y: number): readonly number[] {
    return this.listOffsets(boltX, boltY, turn).map(([offX, offY], i) => {
      const [dx, dy] = [offX - x, offY - y];
      const along = dx * this.alongX[i] + dy * this.alongY[i];
      const beyond = Math.max(0, Math.abs(along) - this.half[i]);
      return Math.hypot(beyond, dy * this.alongX[i] - dx * this.alongY[i]) - this.slack[i];
    });
  }

  /** The turn that brings the holes nearest to the bolts by the sum of squares, both from the point that the plate turns about [rad]. */
  findSquaresTurn(boltX: Float64Array, boltY: Float64Array): number {
    let cross = 0;
    let dot = 0;
    for (let i = 0; i < this.count; i++) {
      cross += this.holeX[i] * boltY[i] - this.holeY[i] * boltX[i];
      dot += this.holeX[i] * boltX[i] + this.holeY[i] * boltY[i];
    }
    return Math.atan2(cross, dot);
  }

  /**
   * Finds the best shift at a turn.
   * @param boltX bolts as they stand, from the point that the plate turns about
   * @param known how near the bound must come to the lack [mm]
   */
  solve(boltX: Float64Array, boltY: Float64Array, turn: number, known: number): void {
    const { nx, ny, share } = this;
    const cos = Math.cos(turn);
    const sin = Math.sin(turn);
    this.turnBolts(boltX, boltY, cos, sin);
    this.lack = Number.POSITIVE_INFINITY;
    for (let round = 0; ; round++) {
      const size = nx[1] * ny[2] - nx[2] * ny[1] + nx[2] * ny[0] - nx[0] * ny[2] + nx[0] * ny[1] - nx[1] * ny[0];
      share[0] = Math.max(0, (nx[1] * ny[2] - nx[2] * ny[1]) / size);
      share[1] = Math.max(0, (nx[2] * ny[0] - nx[0] * ny[2]) / size);
      share[2] = Math.max(0, 1 - share[0] - share[1]);
      const height = this.height(0);
      const rise1 = this.height(1) - height;
      const rise2 = this.height(2) - height;
      const x = (rise1 * (ny[2] - ny[0]) - rise2 * (ny[1] - ny[0])) / size;
      const y = (rise2 * (nx[1] - nx[0]) - rise1 * (nx[2] - nx[0])) / size;
      this.bound = height + share[1] * rise1 + share[2] * rise2;
      const lack = this.look(x, y);
      if (lack < this.lack) {
        this.lack = lack;
        this.x = x;
        this.y = y;
      }
      if (this.worstAway < ON_IT) {
        this.boundByMiddle();
        return;
      }
      if (this.lack - this.bound <= known || round === MOST_EXCHANGES) break;
      if (!this.exchange(size)) break;
    }
    this.boundAtEveryTurn(cos, sin);
  }

  /** Puts the function of the worst hole in the place of one of the three, such that the shares of the others stay above 0. */
  private exchange(size: number): boolean {
    const { nx, ny, share } = this;
    const ex = this.worstX / this.worstAway;
    const ey = this.worstY / this.worstAway;
    const m0 = ((nx[1] - ex) * (ny[2] - ey) - (nx[2] - ex) * (ny[1] - ey)) / size;
    const m1 = ((nx[2] - ex) * (ny[0] - ey) - (nx[0] - ex) * (ny[2] - ey)) / size;
    const m2 = 1 - m0 - m1;
    let leaves = -1;
    let least = Number.POSITIVE_INFINITY;
    let pivot = 0;
    for (let k = 0; k < 3; k++) {
      const m = k === 0 ? m0 : k === 1 ? m1 : m2;
      if (m <= SAME) continue;
      const ratio = share[k] / m;
      if (ratio > least + SAME || (ratio > least - SAME && m < pivot)) continue;
      least = ratio;
      leaves = k;
      pivot = m;
    }
    if (leaves === -1) return false;
    this.keep(leaves, this.worst, ex, ey);
    return true;
  }

  /** The worst bolt stands on the middle of its hole: no movement can make that better. */
  private boundByMiddle(): void {
    this.bound = this.lack;
    this.a = 0;
    this.b = 0;
    this.c = -this.lack;
  }

  private boundAtEveryTurn(cos: number, sin: number): void {
    const { nx, ny, share, of } = this;
    let toHole = 0;
    let acrossHole = 0;
    let toBolt = 0;
    let acrossBolt = 0;
    let less = 0;
    let areRound = true;
    for (let k = 0; k < 3; k++) {
      if (share[k] === 0) continue;
      const i = of[k];
      areRound &&= this.half[i] === 0;
      const bx = this.offX[i] + this.holeX[i];
      const by = this.offY[i] + this.holeY[i];
      toHole += share[k] * (nx[k] * this.holeX[i] + ny[k] * this.holeY[i]);
      acrossHole += share[k] * (ny[k] * this.holeX[i] - nx[k] * this.holeY[i]);
      toBolt += share[k] * (nx[k] * bx + ny[k] * by);
      acrossBolt += share[k] * (nx[k] * by - ny[k] * bx);
      less += share[k] * this.less[k];
    }
    // Held to the bolts the bound bends by toHole, held to the plate by −toBolt; both as seen from this turn.
    const isHeldToBolts = areRound && toHole > -toBolt;
    const a = isHeldToBolts ? -toHole : toBolt;
    const b = isHeldToBolts ? -acrossHole : acrossBolt;
    this.c = (isHeldToBolts ? -toBolt : toHole) + less;
    this.a = a * cos - b * sin;
    this.b = a * sin + b * cos;
  }
}
