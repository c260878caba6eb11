import type { AnchorageGroup, InsertProperties } from '../../checks/anchorage-group.ts';
import { roundForText, writeMessage } from '../../checks/messages.ts';
import { isAtMost } from '../../checks/rounding.ts';
import { measureBearing } from '../bearing-area.ts';
import type { EdgeReinforcement, Edition } from '../edition.ts';
import { nameState } from '../name-state.ts';
import * as blow from './blow-out.ts';
import * as cone from './concrete-cone.ts';
import * as edge from './concrete-edge.ts';
import * as together from './interaction.ts';
import * as factors from './partial-factors.ts';
import * as pry from './pry-out.ts';
import * as pull from './pull-out.ts';
import { resistBlowOut } from './resist-blow-out.ts';
import { resistCone, resistSplitting } from './resist-cone.ts';
import { resistEdge } from './resist-edge.ts';
import { findUncovered, LIMITS } from './scope.ts';
import { SPLITTING_RESISTANCE } from './splitting.ts';
import * as shear from './steel-shear.ts';
import { STEEL_TENSION, steelTension } from './steel-tension.ts';
import * as bars from './supplementary-reinforcement.ts';

/** EN 1992-4 without a year or of 2018, as such or as a national standard (BS EN, DIN EN). */
const MEANT = /^([A-Z]+ )?EN 1992-4(:2018\b.*)?$/;

/** Elongation above which steel counts as ductile, A5 > 8 % (7.2.2.3.1) [%]. */
const DUCTILE_ELONGATION = 8;

/** Blow-out is checked where the edge distance is at most this fraction of the embedment, 7.2.1.8. */
const BLOW_OUT_REACH = 0.5;

/** ψ_re,V with bars and stirrups along the edge in cracked concrete, 7.2.2.5. */
const STIRRUP_FACTOR = 1.4;

function isBrittle({ elongation }: InsertProperties): boolean {
  return elongation === null || elongation <= DUCTILE_ELONGATION;
}

/** Whether stirrups and bars along the edge count, and why or why not (7.2.2.5). */
function findEdgeReinforcement(group: AnchorageGroup, edgeDistance: number): EdgeReinforcement {
  const { edge: kind, stirrupSpacing } = group.reinforcement;
  if (kind !== 'bar-and-stirrups') return { factor: 1, note: null };
  if (!group.concrete.cracked) return { factor: 1, note: writeMessage('bar-stirrups-uncracked') };
  const limit = Math.min(100, 2 * edgeDistance);
  if (stirrupSpacing === null)
    return { factor: STIRRUP_FACTOR, note: writeMessage('bar-stirrups-stated', { limit: roundForText(limit) }) };
  if (stirrupSpacing <= limit) return { factor: STIRRUP_FACTOR, note: null };
  const values = { value: stirrupSpacing, limit: roundForText(limit) };
  return { factor: 1, note: writeMessage('bar-stirrups-spacing', values) };
}

/** EN 1992-4:2018, headed fasteners (cast-in inserts with a foot). */
export const EN_1992_4_2018 = {
  name: 'EN 1992-4',
  document: 'EN 1992-4:2018',
  namePattern: MEANT,
  limits: LIMITS,
  findUncovered: (group) => findUncovered(group, 'EN 1992-4', MEANT),

  design: factors.DESIGN_RESISTANCE,
  safetyFactor: 'divides',
  fromPartialFactor: (partialFactor) => partialFactor,
  takesPartialFactors: true,
  concreteSafety(_, group, sink) {
    const given = group.partialFactors.concrete;
    const value = given ?? factors.CONCRETE_FACTOR;
    sink?.quantity('gamma_Mc', value, '-', given === null ? 'recommended value, 4.4.2' : 'as given');
    return value;
  },

  needsAreaReduction: false,
  steelTension(part, sink) {
    const value = steelTension(part.area, part.ultimate);
    sink?.step(STEEL_TENSION, [part.area, part.ultimate], value);
    return value;
  },
  steelTensionSafety(part, _, sink) {
    const value = factors.steelTensionFactor(part.ultimate, part.yield);
    sink?.step(factors.STEEL_TENSION_FACTOR, [part.ultimate, part.yield], value);
    return value;
  },
  steelShear(part, group, sink) {
    const isBrittleGroup = group.positions.length > 1 && isBrittle(group.insert);
    const k6 = shear.shearFactor(part.ultimate);
    const k7 = isBrittleGroup ? 0.8 : 1;
    const value = shear.steelShear(k7, k6, part.area, part.ultimate);
    if (sink !== null) {
      sink.step(shear.SHEAR_FACTOR, [part.ultimate], k6);
      sink.basic(part.area * part.ultimate);
      sink.factor('k_6', k6);
      sink.factor('k_7', k7);
      sink.quantity(
        'k_7',
        k7,
        '-',
        isBrittleGroup ? 'group of brittle steel (A5 up to 8 %, or not known)' : 'single insert or ductile steel',
      );
      sink.step(shear.STEEL_SHEAR, [k7, k6, part.area, part.ultimate], value);
    }
    return value;
  },
  steelShearSafety(part, _, sink) {
    const value = factors.steelShearFactor(part.ultimate, part.yield);
    sink?.step(factors.STEEL_SHEAR_FACTOR, [part.ultimate, part.yield], value);
    return value;
  },
  leverArmShear(part, arm, tension, tensionDesign, sink) {
    const pulled = Math.max(0, tension);
    const moment = shear.steelBending(arm.sectionModulus, part.ultimate, pulled, tensionDesign);
    const value = shear.leverArmShear(arm.restraint, moment, arm.length);
    sink?.step(shear.STEEL_BENDING, [arm.sectionModulus, part.ultimate, pulled, tensionDesign], moment);
    sink?.step(shear.LEVER_ARM_SHEAR, [arm.restraint, moment, arm.length], value);
    return value;
  },

  coneReach: 1.5,
  reduceEmbedment(largestEdge, largestSpacing, criticalEdge, embedment, sink) {
    const value = cone.coneReducedEmbedment(largestEdge, largestSpacing, criticalEdge, embedment);
    sink?.step(cone.CONE_REDUCED_EMBEDMENT, [largestEdge, largestSpacing, criticalEdge, embedment], value);
    return value;
  },
  concreteCone: resistCone,

  bearingArea: (insert, sink) => measureBearing(insert, pull.BEARING_AREA, sink),
  pullOut(bearingArea, strength, cracked, sink) {
    const k2 = cracked ? pull.PULL_OUT_FACTOR.cracked : pull.PULL_OUT_FACTOR.uncracked;
    const value = pull.pullOut(k2, bearingArea, strength);
    sink?.quantity('k2', k2, '-', `headed fasteners, ${nameState(cracked)} concrete`);
    sink?.step(pull.PULL_OUT, [k2, bearingArea, strength], value);
    sink?.basic(value);
    return value;
  },

  leastDistances: null,
  splitting: { groupEdge: 1.2, resist: resistSplitting },

  blowOut: {
    isNear: (c1, embedment) => isAtMost(c1, BLOW_OUT_REACH * embedment),
    reach: BLOW_OUT_REACH,
    chain: 4,
    body: 2,
    resist: resistBlowOut,
  },

  pryOutFactor(embedment, given, sink) {
    if (given !== null) {
      sink?.quantity('k_8', given, '-', 'as given');
      return given;
    }
    const value = pry.pryOutFactor(embedment);
    sink?.step(pry.PRY_OUT_FACTOR, [embedment], value);
    return value;
  },
  pryOut(coneResistance, factor, hasBars, sink) {
    const kRe = hasBars ? 0.75 : 1;
    const value = pry.pryOut(kRe, factor, coneResistance);
    sink?.factor('k_8', factor);
    sink?.quantity('k_re', kRe, '-', hasBars ? 'supplementary reinforcement' : 'no supplementary reinforcement');
    if (hasBars) sink?.factor('k_re', kRe);
    sink?.step(pry.PRY_OUT, [kRe, factor, coneResistance], value);
    return value;
  },

  edgeLimit: (embedment, diameter) => Math.max(10 * embedment, 60 * diameter),
  reduceEdge(largestCorner, thickness, largestSpacing, c1, sink) {
    const value = edge.edgeReducedDistance(largestCorner, thickness, largestSpacing, c1);
    sink?.step(edge.EDGE_REDUCED_DISTANCE, [largestCorner, thickness, largestSpacing, c1], value);
    return value;
  },
  edgeReinforcement: findEdgeReinforcement,
  concreteEdge: (question) => ({ kind: 'resultant', resist: resistEdge(question) }),
  weakensTorsionPairs: true,

  bars: {
    safety: factors.REINFORCEMENT_FACTOR,
    bondFactor: (group) => group.partialFactors.concrete ?? factors.CONCRETE_FACTOR,
    steel: bars.BAR_STEEL,
    bond: bars.BOND_STRENGTH,
    anchorage: bars.BAR_ANCHORAGE,
    tensionFromShear: bars.BAR_TENSION_FROM_SHEAR,
    limits: bars.BAR_LIMITS,
    loopEfficiency: bars.LOOP_EFFICIENCY,
  },

  together: {
    kind: 'apart',
    steel: together.STEEL_INTERACTION,
    concrete: together.CONCRETE_INTERACTION,
    reinforced: together.REINFORCED_INTERACTION,
  },

  clauses: {
    steelTension: STEEL_TENSION,
    cone: cone.CONE_RESISTANCE,
    pullOut: pull.PULL_OUT,
    blowOut: blow.BLOW_OUT_RESISTANCE,
    splitting: SPLITTING_RESISTANCE,
    steelShear: shear.STEEL_SHEAR,
    leverArm: shear.LEVER_ARM_SHEAR,
    pryOut: pry.PRY_OUT,
    edge: edge.EDGE_RESISTANCE,
  },
} satisfies Edition;
