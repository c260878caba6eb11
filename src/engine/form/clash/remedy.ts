import type { BarKind, Clash } from './clash-scene.ts';

/** One way out of a clash, the smallest of its kind. Numbers are places in the lists of the scene. */
export type Remedy =
  | {
      readonly kind: 'turn cross bar';
      readonly item: number;
      /** About `ClashItem.turning.about` [rad], in steps of 5°; where both ways are as small, the positive one. */
      readonly angle: number;
    }
  | {
      readonly kind: 'shift bar';
      readonly bar: number;
      /** Whole mm along `ClashBar.across`; negative: against it. */
      readonly shift: number;
      /** The smallest legal shift the other way; null: none. */
      readonly otherWay: number | null;
    }
  | {
      readonly kind: 'shift layer';
      readonly layer: string;
      /** Whole mm along `ClashBar.across` of its bars; negative: against it. */
      readonly shift: number;
      readonly otherWay: number | null;
    }
  | {
      readonly kind: 'move';
      readonly item: number;
      /** Whole mm along each of `ClashItem.directions`. */
      readonly along: readonly [number, number];
      /** How far that is [mm]. */
      readonly distance: number;
    };

/**
 * A clash with its ways out, best first: turning the cross bar changes no strength, shifting a bar leaves the insert where it was designed,
 * moving the insert changes its strength. None: the design engineer decides.
 */
export interface ClashRemedies {
  readonly clash: Clash;
  readonly remedies: readonly Remedy[];
  /** Why the bar is not shifted: a mesh is one piece, a strand is stressed; null where it is loose, or no bar is part of the clash. */
  readonly fixedBar: Exclude<BarKind, 'bars'> | null;
}
