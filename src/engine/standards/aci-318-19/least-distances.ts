import type { MinimumDistances } from '../../hardware/minimum-distances.ts';

/**
 * Gives the least spacing and edge distance of cast-in anchors against splitting [mm]: spacing 4 d_a, torqued 6 d_a; edge torqued
 * 6 d_a, otherwise the cover that reinforcement needs, which is left to the yard's rules.
 *
 * Source: ACI 318-19, Table 17.9.2(a), recalled: confirm against print. Supplementary reinforcement against splitting may allow
 * less: not read here.
 * - diameter: d_a, outside diameter of the insert's shaft [mm]; isTorqued: tightened beyond snug
 * Range: edge null where it is not torqued. With d_a 24, torqued: edge 144, spacing 144.
 */
export function findLeastDistances(diameter: number, isTorqued: boolean): MinimumDistances {
  return {
    edge: isTorqued ? 6 * diameter : null,
    spacing: (isTorqued ? 6 : 4) * diameter,
    thickness: null,
    source: `ACI 318-19, Table 17.9.2(a), ${isTorqued ? 'torqued' : 'not torqued'} (recalled)`,
  };
}
