import type { GoverningMode } from '../engine/checks/result.ts';

/** The answers to "does it hold?", never merged into one another. */
export const CONNECTION_STATES = [
  'passes',
  'fails',
  'not covered',
  'cannot be computed',
  'strength not checked',
] as const;

export type ConnectionState = (typeof CONNECTION_STATES)[number];

/** What decides a connection: a mode of the anchorage, or the bending of its plate. */
export type Decisive = GoverningMode | 'plate-bending';

/** The bending of the plate, on which "rigid" rests. */
export type PlateAnswer =
  | { readonly kind: 'checked'; readonly ratio: number; readonly requiredThickness: number }
  | { readonly kind: 'not checked'; readonly missing: readonly string[] };

/** The short answer for one connection. */
export interface ConnectionAnswer {
  readonly mark: string;
  readonly panel: string;
  readonly face: string;
  readonly inserts: readonly string[];
  readonly state: ConnectionState;
  /** Largest load ratio of all combinations; Infinity where nothing is left; null where nothing was computed. */
  readonly ratio: number | null;
  /** What gave that ratio, and in which combination. */
  readonly governing: { readonly mode: Decisive; readonly combination: string } | null;
  /** Why it is not covered, cannot be computed, or was not checked. */
  readonly reasons: readonly string[];
  readonly assumptions: readonly string[];
  readonly warnings: readonly string[];
  readonly plate: PlateAnswer | null;
}
