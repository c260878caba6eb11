/** A square in which a margin is known: by nine values, or by asking for each place. */
interface Cell {
  readonly x: number;
  readonly y: number;
  /** Half of its side. */
  readonly half: number;
  /** Row by row from the least y; NaN: fails, not by a number. */
  readonly values: readonly number[];
  readonly kind: 'clear' | 'blocked' | 'smooth' | 'exact' | 'split';
  /** By how much less than between its values the margin may be. */
  readonly off: number;
  children: readonly Cell[] | null;
}

/** How finely a map is drawn. Lengths mm. */
export interface MapScale {
  /** Half the side of the square around the origin that is asked about. */
  readonly extent: number;
  /** No square is asked about as a whole that is wider. */
  readonly widest: number;
  /** In a square this wide or less, each place is asked for. */
  readonly narrowest: number;
  /** Where the margin is 0 is known to this. */
  readonly within: number;
}

/** A square whose least margin is above this share of how much it changes is taken as clear; as blocked likewise. */
const CLEAR = 0.5;

/** Of how two ways of filling in differ, so much is taken off: the better of the two errs far less. */
const CAUTION = 0.5;

const WEIGHTS = (t: number): readonly [number, number, number] => [(t * (t - 1)) / 2, 1 - t * t, (t * (t + 1)) / 2];

function fillIn(values: readonly number[], u: number, v: number): number {
  const [a, b] = [WEIGHTS(u), WEIGHTS(v)];
  let sum = 0;
  for (let row = 0; row < 3; row++)
    for (let column = 0; column < 3; column++) sum += b[row]! * a[column]! * values[3 * row + column]!;
  return sum;
}

/** How far the curved surface through nine values lies off the four flat ones between them, at most. */
function findOff(values: readonly number[]): number {
  let most = 0;
  for (const [row, v] of [-0.5, 0.5].entries())
    for (const [column, u] of [-0.5, 0.5].entries()) {
      const at = 3 * row + column;
      const flat = (values[at]! + values[at + 1]! + values[at + 3]! + values[at + 4]!) / 4;
      most = Math.max(most, Math.abs(fillIn(values, u, v) - flat));
    }
  return most;
}

/**
 * A margin (above 0: passes) that costs much to find, asked for where it is needed and filled in between. A square where it is far from 0 is taken as
 * a whole; where it comes near 0 squares are halved until what lies between the values is known well enough, or each place is asked for.
 */
export class MarginMap {
  readonly #find: (x: number, y: number) => number;
  readonly #known = new Map<string, number>();
  readonly #scale: MapScale;
  readonly #roots: readonly Cell[];
  readonly #rows: number;

  /** @param find the margin at a place; NaN: fails, not by a number that changes steadily */
  constructor(find: (x: number, y: number) => number, scale: MapScale) {
    this.#find = find;
    this.#scale = scale;
    const { extent, widest } = scale;
    this.#rows = Math.max(1, Math.ceil((2 * extent) / widest));
    const half = extent / this.#rows;
    this.#roots = Array.from({ length: this.#rows ** 2 }, (_, k) =>
      this.#open(
        -extent + (2 * (k % this.#rows) + 1) * half,
        -extent + (2 * Math.floor(k / this.#rows) + 1) * half,
        half,
      ),
    );
  }

  /** How often the margin itself was asked for. */
  get asked(): number {
    return this.#known.size;
  }

  /** Whether every place of the map is far from failing. */
  get isClear(): boolean {
    return this.#roots.every(({ kind }) => kind === 'clear');
  }

  #ask(x: number, y: number): number {
    const key = `${x.toFixed(4)},${y.toFixed(4)}`;
    const known = this.#known.get(key);
    if (known !== undefined) return known;
    const found = this.#find(x, y);
    this.#known.set(key, found);
    return found;
  }

  #open(x: number, y: number, half: number): Cell {
    const values = [-1, 0, 1].flatMap((v) => [-1, 0, 1].map((u) => this.#ask(x + u * half, y + v * half)));
    const cell = { x, y, half, values, off: 0, children: null };
    const numbers = values.filter((value) => !Number.isNaN(value));
    if (numbers.length === 0) return { ...cell, kind: 'blocked' };
    const isNarrow = 2 * half <= this.#scale.narrowest;
    if (numbers.length < values.length) return { ...cell, kind: isNarrow ? 'exact' : 'split' };
    const [least, most] = [Math.min(...values), Math.max(...values)];
    const change = most - least;
    if (least > CLEAR * change && least > 0) return { ...cell, kind: 'clear' };
    if (most < -CLEAR * change && most < 0) return { ...cell, kind: 'blocked' };
    const off = findOff(values);
    // The margin changes by about `change` over the square's width: what is off by less moves its 0 by less than what is asked.
    if (off * 2 * half <= this.#scale.within * change) return { ...cell, kind: 'smooth', off: CAUTION * off };
    return { ...cell, kind: isNarrow ? 'exact' : 'split' };
  }

  #childOf(cell: Cell, x: number, y: number): Cell {
    const quarter = cell.half / 2;
    cell.children ??= [-1, 1].flatMap((v) =>
      [-1, 1].map((u) => this.#open(cell.x + u * quarter, cell.y + v * quarter, quarter)),
    );
    return cell.children[(y < cell.y ? 0 : 2) + (x < cell.x ? 0 : 1)]!;
  }

  /** Whether the margin is above 0 at a place, on the safe side of what is filled in. */
  passes(x: number, y: number): boolean {
    const { extent } = this.#scale;
    const row = (at: number) =>
      Math.min(this.#rows - 1, Math.max(0, Math.floor(((at + extent) * this.#rows) / (2 * extent))));
    let cell = this.#roots[row(y) * this.#rows + row(x)]!;
    while (cell.kind === 'split') cell = this.#childOf(cell, x, y);
    if (cell.kind === 'clear') return true;
    if (cell.kind === 'blocked') return false;
    if (cell.kind === 'exact') return this.#ask(x, y) > 0;
    return fillIn(cell.values, (x - cell.x) / cell.half, (y - cell.y) / cell.half) > cell.off;
  }
}
