import type { ConnectionState } from '../connection-answer.ts';
import type { SetOutItem } from '../set-out/set-out.ts';

/** What was found of one insert; null: not taken. Taped as the set-out says; level below the face positive [mm]. */
export interface FoundPlace {
  readonly x: number | null;
  readonly y: number | null;
  readonly level: number | null;
}

/**
 * Where the work is when an insert is judged: it can be moved while its own stage lasts, one in the trowelled face after screeding too, and never
 * once the concrete is hard.
 */
export type PlacingMoment = 1 | 2 | 'after screed' | 'hard';

/** A way to go, in the yard's own words. */
export interface Move {
  /** Whole mm, above 0. */
  readonly by: number;
  /** What stands behind the length: `toward gate stop end`, `up`. */
  readonly toward: string;
}

/** A connection computed with its inserts as placed; those that nobody measured as designed. */
export interface AsPlaced {
  readonly connection: string;
  readonly before: { readonly state: ConnectionState; readonly ratio: number | null };
  readonly after: { readonly state: ConnectionState; readonly ratio: number | null; readonly why: string | null };
  /** The plate: goes on as designed, goes on when it is shifted, or turned too, does not go on; no plate is known. Lengths mm. */
  readonly plate:
    | { readonly kind: 'as designed' | 'no plate' }
    | { readonly kind: 'shifted'; readonly by: number }
    | { readonly kind: 'turned'; readonly by: number; readonly turn_deg: number }
    | { readonly kind: 'does not go on'; readonly lacks: number; readonly hole: string };
  /** What else is wrong with it there: too near an edge, too little cover, meets a bar. In words, empty: nothing. */
  readonly findings: readonly string[];
  /** Numbers of the members of which not both lengths were taken: what is missing is taken as designed, on a template board as the board lies. */
  readonly unmeasured: readonly number[];
}

/** What to do about an insert. */
export interface PlacingAnswer {
  readonly item: SetOutItem;
  /** `good`: within its tolerance. `move`: off, and still movable in this stage. `leave`: off and no longer movable, or better left. `nothing measured`. */
  readonly advice: 'good' | 'move' | 'leave' | 'nothing measured';
  /** Found less designed, along the taped lengths; null: not taken [mm]. */
  readonly deviation: { readonly x: number | null; readonly y: number | null; readonly level: number | null };
  readonly moves: readonly Move[];
  /** Computed where it is off; null where it is good, or belongs to no connection. */
  readonly asPlaced: AsPlaced | null;
  /** What else is wrong with it there, as in `asPlaced`; also where it belongs to no connection. Empty where it is good. */
  readonly findings: readonly string[];
  /** Of the place alone: where it is good the answer of the design stands, whatever that is. */
  readonly verdict: 'works' | 'does not work' | 'not known';
  /** Who may accept it as it is: `nobody asks` within tolerance. */
  readonly decides: 'nobody asks' | 'qa' | 'design engineer';
}

/** What the measured places of a set of inserts look like beside the designed ones. */
export type Recognised =
  | { readonly kind: 'as designed' }
  /** Measured from the wrong end or rail, turned, or the panel's handed partner. `words` says which, in the yard's words. */
  | { readonly kind: 'mirrored' | 'turned' | 'from another corner' | 'handed partner'; readonly words: string }
  | { readonly kind: 'swapped'; readonly numbers: readonly [number, number]; readonly words: string }
  /** The pattern is its own mirror image within the tolerance: measuring cannot tell. What to look at instead. */
  | { readonly kind: 'cannot be told'; readonly words: string }
  | { readonly kind: 'off'; readonly words: string };
