import type { Point } from '../../engine/geometry/point.ts';
import { drawJointly, listJointCorners, listSingleCorners, type Shares } from '../../engine/tolerance/joint-draws.ts';
import type { ConnectionAnswer } from '../connection-answer.ts';
import { worseOf } from '../yard/assess-moved.ts';
import { assessAt, findLimit, findPlaceLimit, moveMembers, type ZoneLimit } from './zone-oracle.ts';
import type { ZoneSite } from './zone-site.ts';

/** Half the sides of a box, along x and y of the drawing [mm]. */
export interface BoxSize {
  readonly along: number;
  readonly across: number;
}

/** One plain box about each insert's place that holds for all inserts of a connection at once. */
export interface PositionBox {
  readonly kind: 'box';
  /** The largest that is as wide as it is high, in whole mm, rounded down; 0: not one whole mm holds. */
  readonly within: number;
  /** The same in tenths of a mm where not one whole mm holds; else equal. */
  readonly tenths: number;
  /** The largest found that is wider than high or higher than wide; at least `within` each way. */
  readonly size: BoxSize;
  /** The least favourable of all places that were tried in the box `size`: its strength, and the shifts of the inserts. */
  readonly worst: { readonly answer: ConnectionAnswer; readonly shifts: readonly Point[] };
  /** What ended it: the first that a box one step larger meets; null: no larger one was tried. */
  readonly limit: ZoneLimit | null;
  /** Full checks of every combination. */
  readonly checks: number;
  /** Places of all inserts at once that the box was tried at. */
  readonly tried: number;
}

/** The place as designed does not hold, so that there is no box. */
export interface NoBox {
  readonly kind: 'none';
  readonly limit: ZoneLimit;
}

/** A box is no larger than this [mm]: what is off by more is looked at by itself. */
const LARGEST_BOX = 25;

/** Places drawn at once for all inserts. */
const DRAWS = 500;

/** Of the draws: any whole number, always the same, so that the same job gives the same box. */
const SEED = 20_611;

/** A place of all inserts at once that does not hold. */
interface Failing {
  readonly shares: Shares;
  readonly limit: ZoneLimit;
}

function shiftsIn({ along, across }: BoxSize, shares: Shares): readonly Point[] {
  return Array.from({ length: shares.length / 2 }, (_, k) => [along * shares[2 * k]!, across * shares[2 * k + 1]!]);
}

/** Tries boxes; what failed before is tried first. */
class BoxTrials {
  readonly #site: ZoneSite;
  readonly cases: readonly Shares[];
  #suspects: readonly Shares[] = [];
  checks = 1;

  constructor(site: ZoneSite) {
    this.#site = site;
    const count = site.members.length;
    this.cases = [
      ...listJointCorners(count, SEED),
      ...(count === 1 ? [] : listSingleCorners(count)),
      ...drawJointly(count, DRAWS, SEED),
    ];
  }

  #suspect(shares: Shares): void {
    this.#suspects = [shares, ...this.#suspects.filter((one) => one !== shares)].slice(0, 8);
  }

  /** What speaks against a box, strength aside. */
  findInPlace(size: BoxSize): Failing | null {
    for (const shares of [...this.#suspects, ...this.cases]) {
      const limit = findPlaceLimit(this.#site, moveMembers(this.#site, shiftsIn(size, shares)));
      if (limit === null) continue;
      this.#suspect(shares);
      return { shares, limit };
    }
    return null;
  }

  /** The worst answer in a box whose places all hold; what fails ends it. */
  assess(size: BoxSize): { readonly answer: ConnectionAnswer; readonly shares: Shares } {
    let worst: { readonly answer: ConnectionAnswer; readonly shares: Shares } | null = null;
    for (const shares of [...this.#suspects, ...this.cases]) {
      this.checks += 1;
      const answer = assessAt(this.#site, moveMembers(this.#site, shiftsIn(size, shares)));
      if (worst === null || worseOf(worst.answer, answer) === answer) worst = { answer, shares };
      if (answer.state === 'passes') continue;
      this.#suspect(shares);
      break;
    }
    return worst!; // one case or more
  }
}

/** The largest whole number of steps, up to a limit, that holds; what holds at one holds below. */
function findMost(holds: (steps: number) => boolean, from: number, most: number): number {
  let [inside, outside] = [from, most + 1];
  while (outside - inside > 1) {
    const at = inside === from ? Math.min(from + 1, most) : Math.floor((inside + outside) / 2);
    if (holds(at)) inside = at;
    else outside = at;
  }
  return inside;
}

/** A family of boxes that grow in steps. */
type Family = (steps: number) => BoxSize;

const SQUARE: Family = (steps) => ({ along: steps, across: steps });

/** The largest box of a family whose places all hold, and then its strength too. */
function findLargest(trials: BoxTrials, family: Family, from: number) {
  let failing: Failing | null = null;
  const inPlace = (steps: number) => {
    const found = trials.findInPlace(family(steps));
    if (found !== null) failing = found;
    return found === null;
  };
  let steps = findMost(inPlace, from, LARGEST_BOX);
  let limit: ZoneLimit | null = (failing as Failing | null)?.limit ?? null;
  let worst = trials.assess(family(steps));
  while (worst.answer.state !== 'passes' && steps > from) {
    limit = { kind: 'strength', answer: worst.answer };
    steps -= 1;
    worst = trials.assess(family(steps));
  }
  return { steps, limit, worst };
}

/**
 * Finds the box that the yard may be given as one plain ±: it holds for all inserts of a connection at once, with the plate as it then goes on best. Every
 * combination of corners is tried (of more than four inserts some are drawn), each insert alone at its corners, and 500 places drawn at once, all by the
 * full check; the box shrinks until all pass.
 */
export function findPositionBox(site: ZoneSite): PositionBox | NoBox {
  const atDesign = findLimit(
    site,
    site.members.map(() => [0, 0]),
  );
  if (atDesign !== null) return { kind: 'none', limit: atDesign };
  const trials = new BoxTrials(site);
  const square = findLargest(trials, SQUARE, 0);
  const within = square.steps;
  const wide: Family = (steps) => ({ along: steps, across: within });
  const high: Family = (steps) => ({ along: within, across: steps });
  const [widest, highest] = [wide, high].map((family) =>
    within === 0 ? 0 : findMost((steps) => trials.findInPlace(family(steps)) === null, within, LARGEST_BOX),
  ) as [number, number]; // one each
  const family = widest >= highest ? wide : high;
  const isLonger = Math.max(widest, highest) > within;
  const longer = isLonger ? findLargest(trials, family, within) : square;
  const size = isLonger ? family(longer.steps) : SQUARE(within);
  const tenths = within > 0 ? within : findMost((at) => trials.findInPlace(SQUARE(at / 10)) === null, 0, 9) / 10;
  const { answer, shares } = longer.worst;
  return {
    kind: 'box',
    within,
    tenths,
    size,
    worst: { answer, shifts: shiftsIn(size, shares) },
    limit: longer.limit ?? square.limit,
    checks: trials.checks,
    tried: trials.cases.length,
  };
}
