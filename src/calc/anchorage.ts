import { anchorage } from '../engine/checks/anchorage.ts';
import { AnchorageError } from '../engine/checks/anchorage-error.ts';
import type { AnchorageGroup, GroupActions, InsertProperties, SteelPart } from '../engine/checks/anchorage-group.ts';
import { GeometryError } from '../engine/geometry/geometry-error.ts';
import { type AnchorageInput, anchorageInput } from './anchorage-input.ts';
import { type AnchorageOutput, anchorageOutput, writeAnchorage } from './anchorage-output.ts';
import { CalcError } from './calc-error.ts';

const N_PER_KN = 1000;
const RAD_PER_DEG = Math.PI / 180;

function readInsert(given: AnchorageInput['insert']): InsertProperties {
  const parts: readonly SteelPart[] = given.steelParts?.map((part) => ({
    name: part.name,
    area: part.area_mm2,
    ultimate: part.ultimate_MPa,
    yield: part.yield_MPa,
    resists: part.resists ?? 'both',
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

function readBar(given: NonNullable<AnchorageInput['hangers']>[number]) {
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

function readGroup(given: AnchorageInput): AnchorageGroup {
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

function readActions(given: AnchorageInput): GroupActions | null {
  if (given.actions === undefined) return null;
  const byId = new Map(given.actions.map((action) => [action.id, action]));
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

/** Keys of the contract where they differ from the engine's names. */
const CONTRACT_KEYS: Readonly<Record<string, string>> = { 'insert.embedment': 'insert.embedment_mm' };

/**
 * Resistance of a group of cast-in inserts, every failure mode, as the contract gives it.
 * @throws CalcError where the group cannot be computed
 */
function run(given: AnchorageInput, keepsSteps: boolean): AnchorageOutput {
  try {
    const actions = readActions(given);
    const result = anchorage(readGroup(given), actions, keepsSteps);
    const assumed: string[] = [];
    if (given.concrete.lightweightFactor === undefined)
      assumed.push('lightweightFactor not given: normal-weight concrete');
    if (given.insert.fullHead === undefined)
      assumed.push('fullHead not given: the foot taken as a full circumferential head');
    if (given.insert.steelParts !== undefined && given.insert.stressArea_mm2 !== undefined)
      assumed.push('steelParts given: stressArea_mm2 and its stresses are not used');
    if (given.partialFactors?.gamma_Mc === undefined && !given.standard.startsWith('ACI'))
      assumed.push('gamma_Mc 1.5, the recommended value');
    if (actions === null) assumed.push('no action given: resistances only, strength not checked');
    return writeAnchorage(result, assumed, keepsSteps);
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

export const anchorageCalc = {
  name: 'anchorage',
  gives: 'resistance of every failure mode of a group of cast-in inserts (EN 1992-4, AS 5216, ACI 318)',
  input: anchorageInput,
  output: anchorageOutput,
  run,
};
