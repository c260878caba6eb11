import type { AnchorageGroup, UncoveredUse } from '../../engine/checks/anchorage-group.ts';
import { type BoltSteel, findBoltSteel } from '../../engine/hardware/property-classes.ts';
import { findThread } from '../../engine/hardware/threads.ts';
import type { CatalogueItem } from '../documents/catalogue.ts';
import type { ConnectionSeat } from './connection-seat.ts';
import { findLeastDistanceReasons } from './least-distances.ts';
import type { LocalMember } from './local-member-type.ts';
import { findWideHoles } from './resolve-plate.ts';
import { type SteelPath, steelPathOf, testedResistances } from './steel-parts.ts';

/** A connection's numbers with one insert in it. */
export interface FilledSeat {
  readonly item: CatalogueItem;
  readonly bolt: BoltSteel;
  /** Length of full thread in contact [mm]. */
  readonly engagement: number;
  readonly steel: SteelPath;
  readonly local: Extract<LocalMember, { ok: true }>;
  readonly group: AnchorageGroup;
  /** Why the result can never be a pass, whatever the numbers say. */
  readonly notCovered: readonly string[];
}

function insertProperties(
  item: CatalogueItem,
  steelParts: AnchorageGroup['insert']['steelParts'],
  boltElongation: number | null,
): AnchorageGroup['insert'] {
  const own = item.steel.elongation_percent;
  return {
    embedment: item.embedment_mm,
    shaftDiameter: item.bodyDiameter_mm,
    foot:
      item.foot.kind === 'diameter'
        ? { kind: 'diameter', diameter: item.foot.diameter_mm, thickness: item.foot.thickness_mm }
        : { kind: 'area', area: item.foot.area_mm2 },
    steelParts,
    elongation: own === null || boltElongation === null ? null : Math.min(own, boltElongation),
    areaReduction: item.steel.areaReduction_percent,
    qualification: item.qualification,
    isFullHead: item.foot.isFullHead,
    tested: testedResistances(item),
  };
}

/**
 * The group of a connection with one insert in all its places, or why the concrete around it cannot be given.
 * @param uses what no rule covers; more than the connection's own where its inserts are of different types
 */
export function fillSeat(
  seat: ConnectionSeat,
  item: CatalogueItem,
  uses: readonly UncoveredUse[] = seat.uses,
): FilledSeat | Extract<LocalMember, { ok: false }> {
  const { connection, rules } = seat;
  const local = seat.memberFor(item.embedment_mm);
  if (!local.ok) return local;
  const thread = findThread(item.thread);
  const bolt = findBoltSteel(connection.boltClass ?? rules.defaults.boltClass);
  const engagement =
    connection.engagement_mm ?? Math.min(rules.defaults.engagement_d * thread.diameter, item.threadDepth_mm);
  const steel = steelPathOf(item, bolt, engagement);
  const group: AnchorageGroup = {
    standard: rules.standard,
    concrete: {
      strength: seat.concrete.strength,
      cracked: connection.cracked ?? rules.defaults.cracked,
      lightweightFactor: 1,
    },
    member: local.member,
    reinforcement: seat.reinforcement.reinforcement,
    insert: insertProperties(item, steel.parts, bolt.elongation),
    positions: seat.positions,
    leverArm: seat.leverArmFor(item.thread).leverArm,
    hasMortarPad: connection.isFilled && connection.packers_mm > 0,
    splitting:
      item.splitting === null
        ? null
        : { criticalEdge: item.splitting.criticalEdge_mm, minimumThickness: item.splitting.minimumThickness_mm },
    partialFactors: { ...rules.partialFactors },
    pryOutFactor: item.pryOutFactor,
    hangers: seat.hangers,
    hairpins: seat.hairpins,
    uncoveredUses: uses,
  };
  const notCovered = [
    ...local.notCovered,
    ...steel.notCovered,
    ...(seat.mix.lightweight ? ['lightweight concrete'] : []),
    ...findLeastDistanceReasons(group, item),
    ...findWideHoles(seat.holes, thread),
  ];
  return { item, bolt, engagement, steel, local, group, notCovered };
}
