import type { Point } from '../geometry/point.ts';
import type { PlateHole } from './plate-hole.ts';
import { ShiftSearch } from './shift-search.ts';
import { findLeastOfGreater } from './turn-bound.ts';

/** At one turn the bound comes as near to the lack as this share of what is asked of the whole search. */
const SHARE_OF_TURN = 0.125;
/** Turns that are looked at, at most; the proof then says how much is left open. */
const MOST_TURNS = 2000;
/** Rounding of the cosine of an angle, and by how much wider [rad] the arc is looked at for it. */
const ROUNDING = 1e-12;
const WIDER = 1e-9;
/** Room for the first bounds; more is taken where it is needed. */
const FIRST_ROOM = 32;

/** What a search knows of a plate [mm, rad]: its best movement so far and what no movement can go below. */
export class TurnSearch {
  /** Least largest lack found, and the movement that has it: the turn, and the shift in the axes of the turned plate. */
  lack = 0;
  turn = 0;
  x = 0;
  y = 0;
  /** No movement has a lack below this. */
  bound = 0;
  readonly shifts: ShiftSearch;
  private readonly boltX: Float64Array;
  private readonly boltY: Float64Array;
  private mostTurn = 0;
  /** The two holes whose distance limits the turn, and what it may differ by at no lack. */
  private readonly pair: readonly [number, number] | null;
  private readonly pairPlay: number;
  private readonly pairX: number;
  private readonly pairY: number;
  private bounds = new Float64Array(3 * FIRST_ROOM);
  private from = new Float64Array(2 * FIRST_ROOM);
  private to = new Float64Array(2 * FIRST_ROOM);
  private left = new Int32Array(2 * FIRST_ROOM);
  private right = new Int32Array(2 * FIRST_ROOM);
  private least = new Float64Array(2 * FIRST_ROOM);
  private at = new Float64Array(2 * FIRST_ROOM);
  private turns = 0;
  private spans = 0;
  private readonly found = new Float64Array(2);

  /** @param holes one or more, their places from the point that the plate turns about */
  constructor(holes: readonly PlateHole[]) {
    this.shifts = new ShiftSearch(holes);
    this.boltX = new Float64Array(holes.length);
    this.boltY = new Float64Array(holes.length);
    this.pair = findPair(holes);
    const [i, j] = this.pair ?? [0, 0];
    this.pairX = holes[i]!.at[0] - holes[j]!.at[0];
    this.pairY = holes[i]!.at[1] - holes[j]!.at[1];
    this.pairPlay = playOf(holes[i]!) + playOf(holes[j]!);
  }

  /**
   * Takes the bolts.
   * @param places x, y of each, in the order of the holes [mm]
   * @param middleX the point that the plate turns about, in the axes of these places
   */
  setBolts(places: Float64Array, middleX: number, middleY: number): void {
    for (let i = 0; i < this.boltX.length; i++) {
      this.boltX[i] = places[2 * i] - middleX;
      this.boltY[i] = places[2 * i + 1] - middleY;
    }
  }

  /**
   * Searches until no movement can be better by more than `known`, or until it is sure on which side of a level the least lack lies.
   * @param mostTurn greatest turn either way [rad]; π: any. A plate with one hole is not turned
   * @param level lack at which it is enough to know that some movement has it, or that none has; null: the least is wanted
   */
  run(known: number, mostTurn: number, level: number | null): void {
    const { shifts } = this;
    this.mostTurn = shifts.count === 1 ? 0 : Math.min(Math.PI, mostTurn);
    this.turns = 0;
    this.spans = 0;
    this.bound = shifts.floor;
    this.turn = 0;
    this.x = 0;
    this.y = 0;
    this.lack = shifts.lackAt(this.boltX, this.boltY, 0, 0, 0);
    if (this.isDone(known, level)) return;
    this.look(this.guessTurn(), known);
    if (this.isDone(known, level)) return;
    this.spanAll();
    while (this.turns < MOST_TURNS) {
      const next = this.findLowest();
      this.bound = Math.max(shifts.floor, next === -1 ? this.lack : Math.min(this.lack, this.least[next]));
      if (next === -1 || this.isDone(known, level)) return;
      this.look(this.at[next], known);
      this.split(next);
    }
  }

  private isDone(known: number, level: number | null): boolean {
    if (this.lack - this.bound <= known) return true;
    return level !== null && (this.lack <= level || this.bound > level);
  }

  /** The lack of each hole with the plate turned, then shifted in its own axes [mm]. */
  listLacks(turn: number, x: number, y: number): readonly number[] {
    return this.shifts.listLacks(this.boltX, this.boltY, turn, x, y);
  }

  /** The best shift at a turn [mm], in the axes of the turned plate. */
  shiftAt(turn: number, known: number): { readonly lack: number; readonly shift: Point } {
    const { shifts } = this;
    shifts.solve(this.boltX, this.boltY, turn, known);
    return { lack: shifts.lack, shift: [shifts.x, shifts.y] };
  }

  /** Where each bolt stands from its hole, in the axes of the plate turned but not shifted [mm]. */
  listOffsets(turn: number): readonly Point[] {
    return this.shifts.listOffsets(this.boltX, this.boltY, turn);
  }

  /** The turn that fits by least squares, within what is allowed. */
  private guessTurn(): number {
    const turn = this.shifts.findSquaresTurn(this.boltX, this.boltY);
    return Math.max(-this.mostTurn, Math.min(this.mostTurn, turn));
  }

  /** Finds the best shift at a turn and keeps the bound that comes of it. */
  private look(turn: number, known: number): void {
    const { shifts } = this;
    shifts.solve(this.boltX, this.boltY, turn, known * SHARE_OF_TURN);
    if (shifts.lack < this.lack) {
      this.lack = shifts.lack;
      this.turn = turn;
      this.x = shifts.x;
      this.y = shifts.y;
    }
    if (3 * this.turns === this.bounds.length) this.makeRoom();
    this.bounds[3 * this.turns] = shifts.a;
    this.bounds[3 * this.turns + 1] = shifts.b;
    this.bounds[3 * this.turns + 2] = shifts.c;
    this.turns += 1;
  }

  private makeRoom(): void {
    const grow = <T extends Float64Array | Int32Array>(old: T, larger: T): T => {
      larger.set(old);
      return larger;
    };
    this.bounds = grow(this.bounds, new Float64Array(2 * this.bounds.length));
    const room = 2 * this.from.length;
    this.from = grow(this.from, new Float64Array(room));
    this.to = grow(this.to, new Float64Array(room));
    this.left = grow(this.left, new Int32Array(room));
    this.right = grow(this.right, new Int32Array(room));
    this.least = grow(this.least, new Float64Array(room));
    this.at = grow(this.at, new Float64Array(room));
  }

  /**
   * The turns at which some movement may be better than the best so far. Two bolts that are R(−θ)p apart in the plate's axes, and their holes g apart, have a
   * lack of at least half of |R(−θ)p − g| less half of their slacks and slots; outside of an arc about the angle from g to p that is more than the best.
   */
  private spanAll(): void {
    const most = this.mostTurn;
    if (this.pair === null) {
      this.addSpan(-most, most);
      return;
    }
    const [i, j] = this.pair;
    const px = this.boltX[i] - this.boltX[j];
    const py = this.boltY[i] - this.boltY[j];
    const apart = 2 * this.lack + this.pairPlay;
    const product = 2 * Math.hypot(px, py) * Math.hypot(this.pairX, this.pairY);
    const squares = px * px + py * py + this.pairX * this.pairX + this.pairY * this.pairY;
    const cosine = (squares - apart * apart) / product;
    if (cosine > 1 + ROUNDING) return;
    if (!(cosine > -1)) {
      this.addSpan(-most, most);
      return;
    }
    const middle = Math.atan2(this.pairX * py - this.pairY * px, this.pairX * px + this.pairY * py);
    const half = Math.acos(Math.min(1, cosine)) + WIDER;
    for (let circle = -1; circle <= 1; circle++) {
      const from = Math.max(-most, middle - half + 2 * Math.PI * circle);
      const to = Math.min(most, middle + half + 2 * Math.PI * circle);
      if (from <= to) this.addSpan(from, to);
    }
  }

  private addSpan(from: number, to: number): void {
    this.setSpan(this.spans, from, to, 0, 0);
    this.spans += 1;
  }

  private setSpan(span: number, from: number, to: number, left: number, right: number): void {
    findLeastOfGreater(this.bounds, left, right, from, to, this.found);
    this.from[span] = from;
    this.to[span] = to;
    this.left[span] = left;
    this.right[span] = right;
    this.at[span] = this.found[0];
    this.least[span] = this.found[1];
  }

  private findLowest(): number {
    let lowest = -1;
    let value = Number.POSITIVE_INFINITY;
    for (let i = 0; i < this.spans; i++) {
      if (this.least[i] >= value) continue;
      value = this.least[i];
      lowest = i;
    }
    return lowest;
  }

  /** Parts a span where it was looked at last; both parts know the bound from there. */
  private split(span: number): void {
    const newest = this.turns - 1;
    const turn = this.at[span];
    const to = this.to[span];
    const right = this.right[span];
    this.setSpan(span, this.from[span], turn, this.left[span], newest);
    this.setSpan(this.spans, turn, to, newest, right);
    this.spans += 1;
  }
}

/** What a hole leaves its bolt along its slot, from the middle [mm]. */
function playOf({ slack, slot }: PlateHole): number {
  return slack + slot / 2;
}

/** The two holes whose distance limits the turn most: far apart beside their play; null: all lie on one place. */
function findPair(holes: readonly PlateHole[]): readonly [number, number] | null {
  let pair: readonly [number, number] | null = null;
  let most = 0;
  for (let i = 0; i < holes.length; i++)
    for (let j = i + 1; j < holes.length; j++) {
      const [a, b] = [holes[i]!, holes[j]!];
      const apart = Math.hypot(a.at[0] - b.at[0], a.at[1] - b.at[1]);
      const worth = apart / (1 + Math.max(0, playOf(a)) + Math.max(0, playOf(b)));
      if (worth <= most) continue;
      most = worth;
      pair = [i, j];
    }
  return pair;
}
