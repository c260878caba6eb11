import type { GoverningMode } from '../../engine/checks/result.ts';
import {
  findBoltSteel,
  isStainlessClass,
  type PropertyClass,
  propertyClasses,
} from '../../engine/hardware/property-classes.ts';
import type { CatalogueItem } from '../../job/documents/catalogue.ts';
import type { SeatHardware } from '../../job/resolve/fill-seat.ts';
import type { Decisive } from '../connection-answer.ts';
import type { TrialJudgement, TrialSeat } from './trial-seat.ts';

/** Modes in which a bolt's own steel may govern. */
const STEEL_MODES: ReadonlySet<Decisive> = new Set<GoverningMode>([
  'steel-tension',
  'steel-shear',
  'interaction-steel',
  'interaction-all',
]);

/** Carbon steel by itself, stainless steel by its group (A2, A4). */
function familyOf(propertyClass: PropertyClass): string {
  return isStainlessClass(propertyClass) ? propertyClass.slice(0, 2) : 'carbon';
}

/** Stronger classes of the same steel, weakest first. */
export function findStrongerClasses(propertyClass: PropertyClass): readonly PropertyClass[] {
  const strength = (one: PropertyClass) => findBoltSteel(one).ultimate * 1e4 + findBoltSteel(one).yield;
  return propertyClasses
    .filter((one) => familyOf(one) === familyOf(propertyClass) && strength(one) > strength(propertyClass))
    .sort((a, b) => strength(a) - strength(b));
}

/** A judgement with the bolts that it took, and the first one, with the connection's own bolts. */
export interface BoltedJudgement {
  readonly first: TrialJudgement;
  readonly judgement: TrialJudgement;
  readonly boltClass: PropertyClass;
}

/**
 * The full check again with stronger bolts, as long as steel governs and fails. At most four more checks: the weakest class
 * with which something else governs, or all passes, stays.
 * @param first the check with the bolts as they are
 */
export function judgeWithBolts(
  trial: TrialSeat,
  item: CatalogueItem,
  hardware: SeatHardware,
  stronger: readonly PropertyClass[],
  first: TrialJudgement,
): BoltedJudgement {
  let { boltClass } = hardware;
  let judgement = first;
  for (const next of stronger) {
    const mode = judgement.governing?.mode;
    if (judgement.state !== 'fails' || !judgement.canBeCovered || mode === undefined || !STEEL_MODES.has(mode)) break;
    boltClass = next;
    judgement = trial.judge(item, { ...hardware, boltClass });
  }
  return { first, judgement, boltClass };
}
