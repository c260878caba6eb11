import { AnchorageError } from '../engine/checks/anchorage-error.ts';
import type { AnchorageGroup, GroupActions, InsertProperties, SteelPart } from '../engine/checks/anchorage-group.ts';
import { GeometryError } from '../engine/geometry/geometry-error.ts';
import { findEdition } from '../engine/standards/editions.ts';
import type { ActionsInput, GroupInput } from './anchorage-input.ts';
import { CalcError } from './calc-error.ts';

const N_PER_KN = 1000;
const RAD_PER_DEG = Math.PI / 180;

function readInsert(given: GroupInput['insert']): InsertProperties {
  const parts: readonly SteelPart[] = given.steelParts?.map((part) => ({
    name: part.name,
    area: part.area_mm2,
    ultimate: part.ultimate_MPa,
    yield: part.yield_MPa,
    resists: part.resists ?? 'both',
    isEmbedded: part.embedded ?? false,
  })) ?? [
    {
      name: 'weakest section',
      area: given.stressArea_mm2!,
      ultimate: given.ultimate_MPa!,
      yield: given.yield_MPa!,
      resists: 'both',
    },
  ];
  return {
    embedment: given.embedment_mm,
    shaftDiameter: given.shaftDiameter_mm,
    foot:
      given.headDiameter_mm !== undefined
        ? { kind: 'diameter', diameter: given.headDiameter_mm, thickness: given.headThickness_mm ?? null }
        : { kind: 'area', area: given.bearingArea_mm2! },
    steelParts: parts,
    elongation: given.elongation_percent ?? null,
    areaReduction: given.areaReduction_percent ?? null,
    qualification: given.qualification ?? null,
    isFullHead: given.fullHead ?? true,
    tested: (given.tested ?? []).map((test) => ({
      mode: test.mode,
      characteristic: test.characteristic_kN * N_PER_KN,
      safety: test.safety ?? null,
      fromStrength: test.fromStrength_MPa,
      report: test.report,
    })),
  };
}

function readBar(given: NonNullable<GroupInput['hangers']>[number]) {
  return {
    diameter: given.diameter_mm,
    legs: given.count,
    distance: given.distance_mm,
    anchorageInside: given.anchorageInside_mm,
    anchorageOutside: given.anchorageOutside_mm,
    yield: given.yield_MPa,
    hooked: given.hooked,
    goodBond: given.goodBond,
  };
}

/** A group of inserts as the engine takes it. */
export function readGroup(given: GroupInput): AnchorageGroup {
  return {
    standard: given.standard,
    concrete: {
      strength: given.concrete.strength_MPa,
      cracked: given.concrete.cracked,
      lightweightFactor: given.concrete.lightweightFactor ?? 1,
    },
    member: {
      thickness: given.member.thickness_mm,
      outline: given.member.outline_mm,
      openings: given.member.openings_mm ?? [],
    },
    reinforcement: {
      denseSurface: given.reinforcement.denseSurface,
      edge: given.reinforcement.edge,
      supplementary: given.reinforcement.supplementary,
      limitsCrackWidth: given.reinforcement.limitsCrackWidth,
      stirrupSpacing: given.reinforcement.stirrupSpacing_mm ?? null,
    },
    insert: readInsert(given.insert),
    positions: given.positions.map(({ id, x_mm, y_mm }) => ({ id, x: x_mm, y: y_mm })),
    leverArm:
      given.leverArm === undefined
        ? null
        : {
            length: given.leverArm.length_mm,
            restraint: given.leverArm.restraint,
            sectionModulus: given.leverArm.sectionModulus_mm3,
          },
    isTorqued: given.torqued ?? false,
    hasMortarPad: given.mortarPad ?? false,
    splitting:
      given.splitting === undefined
        ? null
        : { criticalEdge: given.splitting.c_cr_mm, minimumThickness: given.splitting.h_min_mm },
    partialFactors: {
      concrete: given.partialFactors?.gamma_Mc ?? null,
      steelTension: given.partialFactors?.gamma_Ms_N ?? null,
      steelShear: given.partialFactors?.gamma_Ms_V ?? null,
    },
    pryOutFactor: given.pryOutFactor ?? null,
    hangers: (given.hangers ?? []).map(readBar),
    hairpins: (given.hairpins ?? []).map((hairpin) => ({
      ...readBar(hairpin),
      toward: hairpin.toward_deg * RAD_PER_DEG,
      depth: hairpin.depth_mm,
    })),
    uncoveredUses: given.uses ?? [],
  };
}

/** The force on each insert, in the order of the positions; every insert has one. */
export function readActions(given: GroupInput, actions: ActionsInput): GroupActions {
  const byId = new Map(actions.map((action) => [action.id, action]));
  return {
    inserts: given.positions.map(({ id }) => {
      const action = byId.get(id)!;
      return { N: action.N_kN * N_PER_KN, Vx: action.Vx_kN * N_PER_KN, Vy: action.Vy_kN * N_PER_KN };
    }),
    compression:
      given.compression === undefined
        ? null
        : { force: given.compression.C_kN * N_PER_KN, at: given.compression.at_mm },
  };
}

/** What was not given and is taken as the rules recommend, or is given and not used. */
export function listAssumptions(given: GroupInput): string[] {
  const assumed: string[] = [];
  if (given.concrete.lightweightFactor === undefined)
    assumed.push('lightweightFactor not given: normal-weight concrete');
  if (given.insert.fullHead === undefined)
    assumed.push('fullHead not given: the foot taken as a full circumferential head');
  if (given.insert.steelParts !== undefined && given.insert.stressArea_mm2 !== undefined)
    assumed.push('steelParts given: stressArea_mm2 and its stresses are not used');
  const edition = findEdition(given.standard);
  if (given.partialFactors?.gamma_Mc === undefined && edition.takesPartialFactors)
    assumed.push(
      given.standard === 'AS 5216' ? 'phi_Mc 1/1.5, as gamma_Mc 1.5 recommends' : 'gamma_Mc 1.5, the recommended value',
    );
  if (edition.leastDistances !== null && given.torqued === undefined)
    assumed.push('torqued not given: bolts snug only, least distances for inserts that are not torqued');
  return assumed;
}

/** Keys of the contract where they differ from the engine's names. */
const CONTRACT_KEYS: Readonly<Record<string, string>> = { 'insert.embedment': 'insert.embedment_mm' };

/** Runs a calculation about a group; what the engine refuses is told by the key of the contract. */
export function tellByKey<T>(work: () => T): T {
  try {
    return work();
  } catch (error) {
    if (error instanceof AnchorageError)
      throw new CalcError(CONTRACT_KEYS[error.key] ?? error.key, error.message.slice(error.key.length + 2));
    if (error instanceof GeometryError)
      throw new CalcError(
        error.ring === 'outline' ? 'member.outline_mm' : `member.openings_mm[${error.ring}]`,
        error.message,
      );
    throw error;
  }
}
