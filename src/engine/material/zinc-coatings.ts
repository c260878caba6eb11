/** What is galvanised, as ISO 1461 asks: spun (centrifuged) with or without a thread, or not spun. */
export type GalvanisedKind = 'thread' | 'centrifuged' | 'not centrifuged';

/** Names of the kinds of galvanised article. */
export const GALVANISED_KINDS = [
  'thread',
  'centrifuged',
  'not centrifuged',
] as const satisfies readonly GalvanisedKind[];

/** Least thickness of zinc [µm]: at any place, and on average. */
export interface LeastCoating {
  readonly local: number;
  readonly mean: number;
}

interface Row extends LeastCoating {
  /** From this size on [mm], itself counting or not. */
  readonly from: number;
  readonly counts: boolean;
}

/**
 * Thickest first. Not spun: ISO 1461:2009, Table 3, by thickness of the steel. Spun: Table 4, threads by their diameter and other
 * articles by the thickness of the steel; recalled: confirm in print.
 */
const GALVANISING: Readonly<Record<GalvanisedKind, readonly Row[]>> = {
  'not centrifuged': [
    { from: 6, counts: false, local: 70, mean: 85 },
    { from: 3, counts: false, local: 55, mean: 70 },
    { from: 1.5, counts: true, local: 45, mean: 55 },
    { from: 0, counts: true, local: 35, mean: 45 },
  ],
  thread: [
    { from: 6, counts: false, local: 40, mean: 50 },
    { from: 0, counts: true, local: 20, mean: 25 },
  ],
  centrifuged: [
    { from: 3, counts: true, local: 45, mean: 55 },
    { from: 0, counts: true, local: 35, mean: 45 },
  ],
};

/**
 * Gives the least hot-dip galvanising of an article [µm].
 *
 * - size: thread diameter for `thread`, else thickness of the steel [mm], above 0
 * Source: ISO 1461:2009, Tables 3 and 4. Example: not centrifuged, 8 mm → local 70, mean 85; thread M16 → 40, 50.
 */
export function leastGalvanising(kind: GalvanisedKind, size: number): LeastCoating {
  const { local, mean } = GALVANISING[kind].find(({ from, counts }) => size > from || (counts && size === from))!;
  return { local, mean };
}

/** A nominal thickness of electroplated zinc and what the average of a batch may be [µm]. */
export interface Plating {
  readonly nominal: number;
  /** Least thickness where it is measured. */
  readonly localMin: number;
  readonly meanMin: number;
  readonly meanMax: number;
}

/** Source: ISO 4042:1999, nominal thickness and batch average. */
export const PLATINGS: readonly Plating[] = [
  { nominal: 5, localMin: 5, meanMin: 4, meanMax: 6 },
  { nominal: 8, localMin: 8, meanMin: 7, meanMax: 10 },
  { nominal: 12, localMin: 12, meanMin: 11, meanMax: 15 },
  { nominal: 15, localMin: 15, meanMin: 14, meanMax: 18 },
  { nominal: 20, localMin: 20, meanMin: 18, meanMax: 23 },
  { nominal: 25, localMin: 25, meanMin: 23, meanMax: 28 },
];

/** Gives the thickest average of any electroplated batch [µm]: more zinc than that was not put on by plating. */
export function thickestPlating(): number {
  return Math.max(...PLATINGS.map(({ meanMax }) => meanMax));
}
