import type { AnchorageGroup } from '../../engine/checks/anchorage-group.ts';
import type { UncoveredUse } from '../../engine/checks/uncovered-use.ts';
import { type BoltSteel, findBoltSteel, type PropertyClass } from '../../engine/hardware/property-classes.ts';
import { judgePair } from '../../engine/hardware/thread-pairing.ts';
import { findThread } from '../../engine/hardware/threads.ts';
import { findEdition } from '../../engine/standards/editions.ts';
import type { StandardName } from '../../engine/standards/standard-name.ts';
import type { CatalogueItem } from '../documents/catalogue.ts';
import type { Connection } from '../documents/connection.ts';
import type { FixtureHole } from '../documents/fixture.ts';
import type { ConnectionSeat } from './connection-seat.ts';
import { findLeastDistanceReasons } from './least-distances.ts';
import type { LocalMember } from './local-member-type.ts';
import { findWideHoles } from './resolve-plate.ts';
import { type SteelPath, steelPathOf, testedResistances } from './steel-parts.ts';
import { countTests } from './tests-that-count.ts';

/** A connection's numbers with one insert in it. */
export interface FilledSeat {
  /** With those tests only that count under the rules' standard. */
  readonly item: CatalogueItem;
  readonly bolt: BoltSteel;
  /** Length of full thread in contact [mm]. */
  readonly engagement: number;
  readonly steel: SteelPath;
  readonly local: Extract<LocalMember, { ok: true }>;
  readonly group: AnchorageGroup;
  /** Why the result can never be a pass, whatever the numbers say. */
  readonly notCovered: readonly string[];
  /** Whether all of these come from the place, so that another place might be covered. */
  readonly partsAreCovered: boolean;
}

/** What insert and bolt together have of ductility: the lesser, and not known where one is not. */
function findLesser(a: number | null, b: number | null): number | null {
  return a === null || b === null ? null : Math.min(a, b);
}

function insertProperties(
  item: CatalogueItem,
  steelParts: AnchorageGroup['insert']['steelParts'],
  bolt: BoltSteel,
): AnchorageGroup['insert'] {
  return {
    embedment: item.embedment_mm,
    shaftDiameter: item.bodyDiameter_mm,
    foot:
      item.foot.kind === 'diameter'
        ? { kind: 'diameter', diameter: item.foot.diameter_mm, thickness: item.foot.thickness_mm }
        : { kind: 'area', area: item.foot.area_mm2 },
    steelParts,
    elongation: findLesser(item.steel.elongation_percent, bolt.elongation),
    areaReduction: findLesser(item.steel.areaReduction_percent, bolt.areaReduction),
    qualification: item.qualification,
    isFullHead: item.foot.isFullHead,
    tested: testedResistances(item),
  };
}

/** Bolts and holes that an insert is used with. */
export interface SeatHardware {
  readonly boltClass: PropertyClass;
  /** One an insert, in their order; none without a plate. */
  readonly holes: readonly FixtureHole[];
}

/** Bolts and holes as a connection has them. */
export function ownHardware({ connection, rules, holes }: ConnectionSeat): SeatHardware {
  return { boltClass: connection.boltClass ?? rules.defaults.boltClass, holes };
}

/** What a connection's inserts are computed as, and what no rule covers of them. */
export interface GoverningInsert {
  /** Where types are mixed: the one with the least embedment. */
  readonly item: CatalogueItem;
  readonly uses: readonly UncoveredUse[];
  readonly isMixed: boolean;
}

/** Finds the insert type that all of a connection's inserts are computed as. */
export function findGoverningInsert(seat: ConnectionSeat, items: readonly CatalogueItem[]): GoverningInsert {
  const item = items.reduce((least, one) => (one.embedment_mm < least.embedment_mm ? one : least));
  const isMixed = items.some(({ id }) => id !== item.id);
  return { item, isMixed, uses: isMixed ? [...seat.uses, 'mixed types'] : seat.uses };
}

/** For documents with factors of their own, as ACI 318 has. */
const NO_PARTIAL_FACTORS = { concrete: null, steelTension: null, steelShear: null } as const;

/** Why the bolt that the connection asks for does not go into the insert's thread. */
function findPairRefusal({ boltFinish }: Connection, item: CatalogueItem): readonly string[] {
  if (boltFinish === null) return [];
  const { isAllowed, notes } = judgePair({
    thread: findThread(item.thread),
    insertClass: item.threadClass,
    insertFinish: item.finish,
    boltFinish,
    boltCoating: null,
  });
  return isAllowed ? [] : notes.slice(0, 1);
}

/** k_cp of ACI 318-19, 17.7.3.1, at most. */
const GREATEST_K_CP = 2;

/** The factor of pry-out of the insert's document; ACI takes no more than its own k_cp. */
function findPryOutFactor(
  { id, pryOutFactor: given }: CatalogueItem,
  standard: StandardName,
): { readonly factor: number | null; readonly assumptions: readonly string[] } {
  if (given === null || given <= GREATEST_K_CP || !standard.startsWith('ACI 318'))
    return { factor: given, assumptions: [] };
  return {
    factor: GREATEST_K_CP,
    assumptions: [
      `pry-out factor ${given} of ${id} taken as ${GREATEST_K_CP}: ${standard} has no greater k_cp (17.7.3.1)`,
    ],
  };
}

/**
 * The group of a connection with one insert in all its places, or why the concrete around it cannot be given.
 * @param uses what no rule covers
 */
export function fillSeat(
  seat: ConnectionSeat,
  given: CatalogueItem,
  { boltClass, holes }: SeatHardware,
  uses: readonly UncoveredUse[],
): FilledSeat | Extract<LocalMember, { ok: false }> {
  const { connection, rules } = seat;
  const local = seat.memberFor(given.embedment_mm);
  if (!local.ok) return local;
  const { item, assumptions: ofTests } = countTests(given, rules.standard);
  const pryOut = findPryOutFactor(item, rules.standard);
  const decided = [...ofTests, ...pryOut.assumptions];
  const thread = findThread(item.thread);
  const bolt = findBoltSteel(boltClass);
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
    insert: insertProperties(item, steel.parts, bolt),
    positions: seat.positions,
    leverArm: seat.leverArmFor(item.thread).leverArm,
    // An insert with a tightening torque of its own will be torqued; without one its bolt is brought to snug only.
    isTorqued: item.maxTorque_Nm !== null,
    hasMortarPad: connection.isFilled && connection.packers_mm > 0,
    splitting:
      item.splitting === null
        ? null
        : { criticalEdge: item.splitting.criticalEdge_mm, minimumThickness: item.splitting.minimumThickness_mm },
    partialFactors: findEdition(rules.standard).takesPartialFactors ? rules.partialFactors : NO_PARTIAL_FACTORS,
    pryOutFactor: pryOut.factor,
    hangers: seat.hangers,
    hairpins: seat.hairpins,
    uncoveredUses: uses,
  };
  const ofPlace = [...local.notCovered, ...findLeastDistanceReasons(group, item, () => seat.roomIn(local.member))];
  const ofParts = [
    ...steel.notCovered,
    ...findPairRefusal(connection, item),
    ...(seat.mix.lightweight ? ['lightweight concrete'] : []),
    ...findWideHoles(holes, thread),
  ];
  const notCovered = [...ofPlace, ...ofParts];
  return {
    item,
    bolt,
    engagement,
    // What was decided about the insert's tests and document is told with what was about its steel.
    steel: decided.length === 0 ? steel : { ...steel, assumptions: [...steel.assumptions, ...decided] },
    local,
    group,
    notCovered,
    partsAreCovered: ofParts.length === 0,
  };
}
