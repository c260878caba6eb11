import type { NutFactorRange } from '../../engine/hardware/nut-factors.ts';
import { findLowest, findTension, type TorqueLimit } from '../../engine/hardware/tightening.ts';
import type { Finish } from '../../engine/material/finish.ts';
import type { CardTightening } from './bolt-up-report.ts';
import type { ChosenBolt } from './card-bolts.ts';

/** The lowest of each kind over all bolts, the lowest first. */
function gatherLimits(bolts: readonly ChosenBolt[]): readonly TorqueLimit[] {
  const all = bolts.flatMap(({ answer }) => answer.torqueLimits.filter(({ kind }) => kind !== 'bolt'));
  const kinds = [...new Set(all.map(({ kind }) => kind))];
  return kinds
    .map((kind) => findLowest(all.filter((limit) => limit.kind === kind))!)
    .sort((a, b) => a.torque - b.torque);
}

/**
 * How hard the bolts of a connection may be tightened: snug, and never above the lowest limit that is known of any of its inserts (maker's maximum, section
 * under torque with tension, threads, concrete today). Nothing known: snug only.
 */
export function findTightening(bolts: readonly ChosenBolt[], finish: Finish): CardTightening {
  const limits = gatherLimits(bolts);
  const most = findLowest(limits);
  const diameter = bolts[0]?.answer.path.thread.diameter;
  const factors: NutFactorRange | undefined = bolts[0]?.answer.nutFactorRange;
  const tension =
    most === null || diameter === undefined || factors === undefined
      ? null
      : ([
          findTension(factors.greatest, diameter, most.torque),
          findTension(factors.least, diameter, most.torque),
        ] as const);
  return { most, tension, limits, isStainless: finish === 'stainless' };
}
