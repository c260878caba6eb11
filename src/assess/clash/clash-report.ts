import type { BarKind, ClashPartName } from '../../engine/form/clash/clash-scene.ts';
import type { Point } from '../../engine/geometry/point.ts';
import type { ConnectionState } from '../connection-answer.ts';

/** A cast-in item and which part of it. */
export interface ClashingPart {
  readonly kind: 'item';
  readonly id: string;
  readonly part: ClashPartName;
}

/** What it meets. */
export type ClashingOther =
  | ClashingPart
  | {
      readonly kind: 'bar';
      /** Which of the panel's layers of bars, from 1 as the job lists them; which bar of it, with a letter for a piece of it. */
      readonly layer: number;
      readonly bar: string;
      readonly face: 'outside' | 'inside';
      readonly diameter_mm: number;
      readonly bars: BarKind;
    }
  /** A side of the outline from corner n to the next, from 0. */
  | { readonly kind: 'edge'; readonly edge: number }
  /** From 0, as the job lists them. */
  | { readonly kind: 'opening'; readonly opening: number };

/** The smallest way out of its kind; lengths whole mm. Directions are those of the drawn face. */
export type ClashRemedy =
  | {
      readonly kind: 'shift bar' | 'shift layer';
      readonly layer: number;
      /** Of a bar alone. */
      readonly bar: string | null;
      readonly shift_mm: number;
      readonly toward: Point;
      /** The smallest legal shift the other way; null: none. */
      readonly otherWay_mm: number | null;
    }
  | {
      readonly kind: 'turn cross bar';
      readonly id: string;
      readonly face: 'outside' | 'inside' | 'edge';
      /** On an edge: the side of the outline from corner n to the next, from 0; else null. */
      readonly edge: number | null;
      /** From its x direction towards its y direction; along an edge: towards the inside face. */
      readonly turn_deg: number;
      readonly direction_deg: number;
    }
  | {
      readonly kind: 'move';
      readonly id: string;
      readonly face: 'outside' | 'inside' | 'edge';
      /** Along the coordinates that the job gives its place in. */
      readonly dx_mm: number;
      readonly dy_mm: number;
      readonly tolerance_mm: number;
    };

/** What a connection gives with an insert moved, and what it gives now. */
export interface StrengthAfter {
  readonly connection: string;
  readonly before: { readonly state: ConnectionState; readonly ratio: number | null };
  readonly after: { readonly state: ConnectionState; readonly ratio: number | null };
}

export interface ReportedClash {
  readonly a: ClashingPart;
  readonly b: ClashingOther;
  /** 0: they overlap, or touch where that is not allowed. */
  readonly clearance_mm: number;
  readonly needed_mm: number;
  /** The best way out; null: the design engineer decides. */
  readonly remedy: ClashRemedy | null;
  /** Other ways out, next best first. */
  readonly others: readonly ClashRemedy[];
  /** Of every connection that an insert belongs to, where the remedy moves it; else none. */
  readonly strengthAfter: readonly StrengthAfter[];
}

/** What meets what in a panel. */
export interface ClashReport {
  readonly panel: string;
  readonly clashes: readonly ReportedClash[];
  /** What could not be looked at, in words: bars whose places are not given, items without a size. */
  readonly unknown: readonly string[];
}
