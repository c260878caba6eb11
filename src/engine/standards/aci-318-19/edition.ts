import type { AnchorageGroup, InsertProperties } from '../../checks/anchorage-group.ts';
import { roundForText, writeMessage } from '../../checks/messages.ts';
import { isAtMost } from '../../checks/rounding.ts';
import { measureBearing } from '../bearing-area.ts';
import type { EdgeReinforcement, Edition } from '../edition.ts';
import { nameState } from '../name-state.ts';
import { BLOW_OUT_RESISTANCE } from './blow-out.ts';
import * as breakout from './breakout.ts';
import * as edge from './edge-breakout.ts';
import { INTERACTION } from './interaction.ts';
import { findLeastDistances } from './least-distances.ts';
import * as pry from './pry-out.ts';
import * as pull from './pull-out.ts';
import { CORNER_REACH, resistBlowOut } from './resist-blow-out.ts';
import { resistBreakout } from './resist-breakout.ts';
import { resistEdge } from './resist-edge.ts';
import { findUncovered, LIMITS, MEANT } from './scope.ts';
import * as shear from './steel-shear.ts';
import * as tension from './steel-tension.ts';
import * as phi from './strength-reduction.ts';
import { type AciUnits, INCH_POUND_UNITS, SI_UNITS } from './units.ts';

/** Ductile steel, 2.3: elongation at least 14 % and reduction of area at least 30 %. */
const DUCTILE_ELONGATION = 14;
const DUCTILE_AREA_REDUCTION = 30;

/** Blow-out is checked where h_ef is above this multiple of c_a1, 17.6.4.1. */
const BLOW_OUT_DEPTH = 2.5;

/** ψ_c,V, 17.7.2.5: uncracked; cracked with stirrups no wider than 4 in (100 mm), with a bar, without either. */
const EDGE_CRACKING = { uncracked: 1.4, stirrups: 1.4, bar: 1.2, none: 1 } as const;

function describeDuctility({ elongation, areaReduction }: InsertProperties): { isDuctile: boolean; how: string } {
  if (elongation === null || areaReduction === null)
    return { isDuctile: false, how: 'brittle: elongation or reduction of area not known (17.5.3)' };
  const isDuctile = elongation >= DUCTILE_ELONGATION && areaReduction >= DUCTILE_AREA_REDUCTION;
  return { isDuctile, how: `${isDuctile ? 'ductile' : 'brittle'}: A5 ${elongation} %, Z ${areaReduction} % (17.5.3)` };
}

function findEdgeReinforcement({ concrete, reinforcement }: AnchorageGroup, widestStirrups: number): EdgeReinforcement {
  if (!concrete.cracked) return { factor: EDGE_CRACKING.uncracked, note: null };
  const { edge: kind, stirrupSpacing } = reinforcement;
  if (kind !== 'bar-and-stirrups') return { factor: EDGE_CRACKING[kind], note: null };
  const limit = roundForText(widestStirrups);
  if (stirrupSpacing === null)
    return { factor: EDGE_CRACKING.stirrups, note: writeMessage('stirrups-stated', { limit }) };
  if (stirrupSpacing <= widestStirrups) return { factor: EDGE_CRACKING.stirrups, note: null };
  return { factor: EDGE_CRACKING.bar, note: writeMessage('stirrups-wide', { value: stirrupSpacing, limit }) };
}

/** ACI 318-19 Chapter 17, cast-in headed anchors, with the coefficients of one of its two editions. */
function makeEdition(units: AciUnits): Edition {
  const { coefficients } = units;
  const usable = (ultimate: number, yieldStrength: number) =>
    tension.usableUltimate(ultimate, yieldStrength, coefficients.highestUltimate);
  return {
    name: units.name,
    document: units.name,
    namePattern: MEANT,
    limits: LIMITS,
    findUncovered,

    design: phi.DESIGN_STRENGTH,
    safetyFactor: 'multiplies',
    fromPartialFactor: (partialFactor) => 1 / partialFactor,
    takesPartialFactors: false,
    concreteSafety(mode, { reinforcement }, sink) {
      if (mode === 'pull-out' || mode === 'pry-out') {
        sink?.quantity('phi', phi.PULL_OUT_PHI, '-', 'pull-out and pry-out, 17.5.3');
        return phi.PULL_OUT_PHI;
      }
      const { supplementary } = reinforcement;
      const value = supplementary ? phi.CONCRETE_PHI.supplementary : phi.CONCRETE_PHI.plain;
      sink?.quantity('phi', value, '-', `${supplementary ? 'with' : 'without'} supplementary reinforcement, 17.5.3`);
      return value;
    },

    needsAreaReduction: true,
    steelTension(part, sink) {
      const ultimate = usable(part.ultimate, part.yield);
      const value = tension.steelTension(part.area, ultimate);
      sink?.step(tension.USABLE_ULTIMATE, [part.ultimate, part.yield, coefficients.highestUltimate], ultimate);
      sink?.step(tension.STEEL_TENSION, [part.area, ultimate], value);
      return value;
    },
    steelTensionSafety(_, insert, sink) {
      const { isDuctile, how } = describeDuctility(insert);
      const value = isDuctile ? phi.STEEL_PHI.ductile.tension : phi.STEEL_PHI.brittle.tension;
      sink?.quantity('phi', value, '-', how);
      return value;
    },
    steelShear(part, { hasMortarPad }, sink) {
      const pad = hasMortarPad ? shear.GROUT_PAD_FACTOR : 1;
      const ultimate = usable(part.ultimate, part.yield);
      const value = shear.steelShear(pad, part.area, ultimate);
      if (sink !== null) {
        sink.step(tension.USABLE_ULTIMATE, [part.ultimate, part.yield, coefficients.highestUltimate], ultimate);
        sink.quantity('k_grout', pad, '-', hasMortarPad ? 'on a pad of mortar, 17.7.1.2.1' : 'no pad of mortar');
        sink.step(shear.STEEL_SHEAR, [pad, part.area, ultimate], value);
        sink.basic(value / pad);
        sink.factor('k_grout', pad);
      }
      return value;
    },
    steelShearSafety(_, insert, sink) {
      const { isDuctile, how } = describeDuctility(insert);
      const value = isDuctile ? phi.STEEL_PHI.ductile.shear : phi.STEEL_PHI.brittle.shear;
      sink?.quantity('phi', value, '-', how);
      return value;
    },
    leverArmShear: null,

    coneReach: 1.5,
    reduceEmbedment(largestEdge, largestSpacing, criticalEdge, embedment, sink) {
      const args = [largestEdge, largestSpacing, criticalEdge, embedment] as const;
      const value = breakout.breakoutReducedEmbedment(...args);
      sink?.step(breakout.BREAKOUT_REDUCED_EMBEDMENT, args, value);
      return value;
    },
    concreteCone: (question) => resistBreakout(units, question),

    bearingArea: (insert, sink) => measureBearing(insert, pull.BEARING_AREA, sink),
    pullOut(bearingArea, strength, cracked, sink) {
      const basic = pull.pullOutBasic(bearingArea, strength);
      const psiC = cracked ? pull.PULL_OUT_CRACKING.cracked : pull.PULL_OUT_CRACKING.uncracked;
      const value = pull.pullOutResistance(psiC, basic);
      if (sink !== null) {
        sink.step(pull.PULL_OUT_BASIC, [bearingArea, strength], basic);
        sink.quantity('psi_c_P', psiC, '-', `${nameState(cracked)} concrete`);
        sink.step(pull.PULL_OUT_RESISTANCE, [psiC, basic], value);
        sink.basic(basic);
        sink.factor('psi_c', psiC);
      }
      return value;
    },

    leastDistances: findLeastDistances,
    splitting: null,
    blowOut: {
      isNear: (c, embedment) => !isAtMost(embedment, BLOW_OUT_DEPTH * c),
      reach: 1 / BLOW_OUT_DEPTH,
      chain: 6,
      body: CORNER_REACH,
      resist: (question) => resistBlowOut(units, question),
    },

    pryOutFactor(embedment, given, sink) {
      if (given !== null) {
        sink?.quantity('k_cp', given, '-', 'as given');
        return given;
      }
      const value = pry.pryOutFactor(embedment, coefficients.pryOutDepth);
      sink?.step(pry.PRY_OUT_FACTOR, [embedment, coefficients.pryOutDepth], value);
      return value;
    },
    pryOut(cone, factor, _, sink) {
      const value = pry.pryOut(factor, cone);
      sink?.factor('k_cp', factor);
      sink?.step(pry.PRY_OUT, [factor, cone], value);
      return value;
    },

    edgeLimit: () => null,
    reduceEdge(largestCorner, thickness, largestSpacing, c, sink) {
      const value = edge.edgeReducedDistance(largestCorner, thickness, largestSpacing, c);
      sink?.step(edge.EDGE_REDUCED_DISTANCE, [largestCorner, thickness, largestSpacing, c], value);
      return value;
    },
    edgeReinforcement: (group) => findEdgeReinforcement(group, coefficients.widestStirrups),
    concreteEdge: (question) => resistEdge(units, question),
    weakensTorsionPairs: false,

    bars: null,
    together: { kind: 'all', all: INTERACTION },

    clauses: {
      steelTension: tension.STEEL_TENSION,
      cone: breakout.BREAKOUT_RESISTANCE,
      pullOut: pull.PULL_OUT_RESISTANCE,
      blowOut: BLOW_OUT_RESISTANCE,
      splitting: { reference: 'ACI 318-19 and 318M-19, 17.9' },
      steelShear: shear.STEEL_SHEAR,
      leverArm: shear.STEEL_SHEAR,
      pryOut: pry.PRY_OUT,
      edge: edge.EDGE_RESISTANCE,
    },
  };
}

/** ACI 318-19 with its inch-pound coefficients, converted exactly; takes and gives N, mm, MPa like every edition here. */
export const ACI_318_19: Edition = makeEdition(INCH_POUND_UNITS);

/** ACI 318M-19 with the coefficients that the SI edition prints. */
export const ACI_318M_19: Edition = makeEdition(SI_UNITS);
