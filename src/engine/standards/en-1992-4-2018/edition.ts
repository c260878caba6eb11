import type { InsertProperties, SteelPart } from '../../checks/anchorage-group.ts';
import type { Sink } from '../clause.ts';
import type { ConeLoad, ConeQuestion, Edition } from '../edition.ts';
import * as blow from './blow-out.ts';
import * as cone from './concrete-cone.ts';
import * as edge from './concrete-edge.ts';
import * as together from './interaction.ts';
import * as factors from './partial-factors.ts';
import * as pry from './pry-out.ts';
import * as pull from './pull-out.ts';
import { findUncovered } from './scope.ts';
import * as split from './splitting.ts';
import * as shear from './steel-shear.ts';
import { STEEL_TENSION, steelTension } from './steel-tension.ts';

/** Elongation above which steel counts as ductile, A5 > 8 % (7.2.2.3.1) [%]. */
const DUCTILE_ELONGATION = 8;

/** Largest diameter that counts in the edge formula, d_nom (7.2.2.5) [mm]. */
const LARGEST_DIAMETER = 60;

function nameState(isCracked: boolean): string {
  return isCracked ? 'cracked' : 'uncracked';
}

/** What cone and splitting share and the load does not touch. */
function prepareCone(question: ConeQuestion) {
  const { criticalEdge, embedment, strength } = question;
  const k1 = question.cracked ? cone.CONE_FACTOR.cracked : cone.CONE_FACTOR.uncracked;
  const plain = cone.coneBasic(k1, strength, embedment);
  const reference = cone.coneReferenceArea(criticalEdge);
  const areaRatio = question.area / reference;
  const psiS = question.edge < criticalEdge ? cone.coneEdgeFactor(question.edge, criticalEdge) : 1;
  const psiRe = question.denseSurface ? cone.coneShellFactor(embedment) : 1;
  return {
    plain,
    areaRatio,
    psiS,
    psiRe,
    spacing: 2 * criticalEdge,
    reportPlain(sink: Sink): void {
      sink.quantity('k1', k1, '-', `headed fasteners, ${nameState(question.cracked)} concrete`);
      sink.step(cone.CONE_BASIC, [k1, strength, embedment], plain);
    },
    reportFactors(sink: Sink, { eccentricity1, eccentricity2 }: ConeLoad, psiEc1: number, psiEc2: number): void {
      sink.step(cone.CONE_REFERENCE_AREA, [criticalEdge], reference);
      sink.quantity('A_c_N_ratio', areaRatio, '-', 'A_c_N / A0_c_N');
      if (question.edge < criticalEdge) sink.step(cone.CONE_EDGE_FACTOR, [question.edge, criticalEdge], psiS);
      else sink.quantity('psi_s_N', 1, '-', 'no edge nearer than c_cr_N');
      if (question.denseSurface) sink.step(cone.CONE_SHELL_FACTOR, [embedment], psiRe);
      else sink.quantity('psi_re_N', 1, '-', 'surface reinforcement not dense');
      sink.step(cone.CONE_ECCENTRICITY_FACTOR, [eccentricity1, 2 * criticalEdge], psiEc1, 'psi_ec_N_1');
      sink.step(cone.CONE_ECCENTRICITY_FACTOR, [eccentricity2, 2 * criticalEdge], psiEc2, 'psi_ec_N_2');
      sink.factor('areaRatio', areaRatio);
      sink.factor('psi_s', psiS);
      sink.factor('psi_re', psiRe);
      sink.factor('psi_ec', psiEc1 * psiEc2);
    },
  };
}

/** EN 1992-4:2018, headed fasteners (cast-in inserts with a foot). */
export const EN_1992_4_2018: Edition = {
  name: 'EN 1992-4',
  document: 'EN 1992-4:2018',
  findUncovered,

  steelTension(part: SteelPart, sink: Sink | null): number {
    const value = steelTension(part.area, part.ultimate);
    sink?.step(STEEL_TENSION, [part.area, part.ultimate], value);
    return value;
  },
  steelTensionSafety(part: SteelPart, sink: Sink | null): number {
    const value = factors.steelTensionFactor(part.ultimate, part.yield);
    sink?.step(factors.STEEL_TENSION_FACTOR, [part.ultimate, part.yield], value);
    return value;
  },
  steelShear(part: SteelPart, isBrittleGroup: boolean, sink: Sink | null): number {
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
  steelShearSafety(part: SteelPart, sink: Sink | null): number {
    const value = factors.steelShearFactor(part.ultimate, part.yield);
    sink?.step(factors.STEEL_SHEAR_FACTOR, [part.ultimate, part.yield], value);
    return value;
  },
  isBrittle: (insert: InsertProperties): boolean =>
    insert.elongation === null || insert.elongation <= DUCTILE_ELONGATION,
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
  concreteCone(question) {
    const prepared = prepareCone(question);
    const { plain: basic, areaRatio, psiS, psiRe, spacing } = prepared;
    const { embedment } = question;
    return (load, sink) => {
      const psiEc1 = cone.coneEccentricityFactor(load.eccentricity1, spacing);
      const psiEc2 = cone.coneEccentricityFactor(load.eccentricity2, spacing);
      const arm = load.compressionArm;
      const psiM = arm === null ? 1 : cone.coneCompressionFactor(arm, embedment);
      const value = cone.coneResistance(basic, areaRatio, psiS, psiRe, psiEc1, psiEc2, psiM);
      if (sink !== null) {
        prepared.reportPlain(sink);
        sink.basic(basic);
        prepared.reportFactors(sink, load, psiEc1, psiEc2);
        if (arm === null) sink.quantity('psi_M_N', 1, '-', 'no compression counted');
        else sink.step(cone.CONE_COMPRESSION_FACTOR, [arm, embedment], psiM);
        sink.factor('psi_M', psiM);
        sink.step(cone.CONE_RESISTANCE, [basic, areaRatio, psiS, psiRe, psiEc1, psiEc2, psiM], value);
      }
      return value;
    };
  },

  bearingArea(insert: InsertProperties, sink: Sink | null): number {
    const { foot, shaftDiameter } = insert;
    if (foot.kind === 'area') {
      sink?.quantity('A_h', foot.area, 'mm2', 'bearing area as given');
      return foot.area;
    }
    const limit = foot.thickness === null ? Number.POSITIVE_INFINITY : 6 * foot.thickness + shaftDiameter;
    const value = pull.bearingArea(foot.diameter, limit, shaftDiameter);
    if (foot.thickness !== null) sink?.quantity('d_h_max', limit, 'mm', '6 t_h + d');
    sink?.step(pull.BEARING_AREA, [foot.diameter, limit, shaftDiameter], value);
    return value;
  },
  pullOut(bearingArea, strength, cracked, sink) {
    const k2 = cracked ? pull.PULL_OUT_FACTOR.cracked : pull.PULL_OUT_FACTOR.uncracked;
    const value = pull.pullOut(k2, bearingArea, strength);
    sink?.quantity('k2', k2, '-', `headed fasteners, ${nameState(cracked)} concrete`);
    sink?.step(pull.PULL_OUT, [k2, bearingArea, strength], value);
    return value;
  },

  splittingGroupEdge: 1.2,
  splitting(question) {
    const prepared = prepareCone(question);
    const { plain, areaRatio, psiS, psiRe, spacing } = prepared;
    const basic = split.splittingBasic(question.pullOut, plain);
    // With no edge near, the thickness alone sets the limit of psi_h.
    const c1 = Math.min(question.edge, question.criticalEdge);
    const args = [question.thickness, question.minimumThickness, question.embedment, c1] as const;
    const psiH = split.splittingThicknessFactor(...args);
    return (load, sink) => {
      const psiEc1 = cone.coneEccentricityFactor(load.eccentricity1, spacing);
      const psiEc2 = cone.coneEccentricityFactor(load.eccentricity2, spacing);
      const value = split.splittingResistance(basic, areaRatio, psiS, psiRe, psiEc1, psiEc2, psiH);
      if (sink !== null) {
        prepared.reportPlain(sink);
        sink.step(split.SPLITTING_BASIC, [question.pullOut, plain], basic);
        sink.basic(basic);
        prepared.reportFactors(sink, load, psiEc1, psiEc2);
        sink.step(split.SPLITTING_THICKNESS_FACTOR, args, psiH);
        sink.factor('psi_h', psiH);
        sink.step(split.SPLITTING_RESISTANCE, [basic, areaRatio, psiS, psiRe, psiEc1, psiEc2, psiH], value);
      }
      return value;
    };
  },

  blowOutReach: 0.5,
  blowOutChain: 4,
  blowOut({ edge: c1, corner, bearingArea, strength, count, meanSpacing, area, cracked }) {
    const k5 = cracked ? blow.BLOW_OUT_FACTOR.cracked : blow.BLOW_OUT_FACTOR.uncracked;
    const basic = blow.blowOutBasic(k5, c1, bearingArea, strength);
    const reference = blow.blowOutReferenceArea(c1);
    const areaRatio = area / reference;
    const psiS = corner < 2 * c1 ? blow.blowOutCornerFactor(corner, c1) : 1;
    const psiG = blow.blowOutGroupFactor(count, meanSpacing, c1);
    return (eccentricity, sink) => {
      const psiEc = blow.blowOutEccentricityFactor(eccentricity, c1);
      const value = blow.blowOutResistance(basic, areaRatio, psiS, psiG, psiEc);
      if (sink !== null) {
        sink.quantity('k5', k5, '-', `headed fasteners, ${nameState(cracked)} concrete`);
        sink.step(blow.BLOW_OUT_BASIC, [k5, c1, bearingArea, strength], basic);
        sink.basic(basic);
        sink.step(blow.BLOW_OUT_REFERENCE_AREA, [c1], reference);
        sink.quantity('A_c_Nb_ratio', areaRatio, '-', 'A_c_Nb / A0_c_Nb');
        if (corner < 2 * c1) sink.step(blow.BLOW_OUT_CORNER_FACTOR, [corner, c1], psiS);
        else sink.quantity('psi_s_Nb', 1, '-', 'no corner nearer than 2 c_1');
        sink.step(blow.BLOW_OUT_GROUP_FACTOR, [count, meanSpacing, c1], psiG);
        sink.step(blow.BLOW_OUT_ECCENTRICITY_FACTOR, [eccentricity, c1], psiEc);
        sink.factor('areaRatio', areaRatio);
        sink.factor('psi_s', psiS);
        sink.factor('psi_g', psiG);
        sink.factor('psi_ec', psiEc);
        sink.step(blow.BLOW_OUT_RESISTANCE, [basic, areaRatio, psiS, psiG, psiEc], value);
      }
      return value;
    };
  },

  pryOutFactor(embedment, sink) {
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
  concreteEdge(question) {
    const { embedment, strength, cracked, edge: c1, corner, thickness, reinforcementFactor: psiRe } = question;
    const d = Math.min(question.diameter, LARGEST_DIAMETER);
    const k9 = cracked ? edge.EDGE_FACTOR.cracked : edge.EDGE_FACTOR.uncracked;
    const length = edge.bearingLength(embedment, d);
    const basic = edge.edgeBasic(k9, d, length, strength, c1);
    const reference = edge.edgeReferenceArea(c1);
    const areaRatio = question.area / reference;
    const psiS = corner < 1.5 * c1 ? edge.edgeCornerFactor(corner, c1) : 1;
    const psiH = edge.edgeThicknessFactor(c1, thickness);
    return ({ eccentricity, toward, along, isTorsionPair }, sink) => {
      const psiEc = edge.edgeEccentricityFactor(eccentricity, c1);
      const psiAlpha = edge.edgeAngleFactor(toward, along);
      const kT = isTorsionPair ? edge.TORSION_PAIR_FACTOR : 1;
      const value = edge.edgeResistance(basic, areaRatio, psiS, psiH, psiEc, psiAlpha, psiRe, kT);
      if (sink !== null) {
        sink.quantity('k9', k9, '-', `${nameState(cracked)} concrete`);
        sink.step(edge.BEARING_LENGTH, [embedment, d], length);
        sink.step(edge.EDGE_BASIC, [k9, d, length, strength, c1], basic);
        sink.basic(basic);
        sink.step(edge.EDGE_REFERENCE_AREA, [c1], reference);
        sink.quantity('A_c_V_ratio', areaRatio, '-', 'A_c_V / A0_c_V');
        if (corner < 1.5 * c1) sink.step(edge.EDGE_CORNER_FACTOR, [corner, c1], psiS);
        else sink.quantity('psi_s_V', 1, '-', 'no corner nearer than 1.5 c_1');
        sink.step(edge.EDGE_THICKNESS_FACTOR, [c1, thickness], psiH);
        sink.step(edge.EDGE_ECCENTRICITY_FACTOR, [eccentricity, c1], psiEc);
        const angle = Math.atan2(along, toward);
        sink.quantity('alpha', angle, 'rad', 'between the shear and the normal to the edge, atan(V_along / V_toward)');
        sink.step(edge.EDGE_ANGLE_FACTOR, [toward, along], psiAlpha);
        sink.quantity('psi_re_V', psiRe, '-', 'edge reinforcement');
        sink.factor('areaRatio', areaRatio);
        sink.factor('psi_s', psiS);
        sink.factor('psi_h', psiH);
        sink.factor('psi_ec', psiEc);
        sink.factor('psi_alpha', psiAlpha);
        sink.factor('psi_re', psiRe);
        sink.quantity(
          'k_T',
          kT,
          '-',
          isTorsionPair ? 'two inserts in torsion, bodies overlapping' : 'no pair in torsion',
        );
        if (isTorsionPair) sink.factor('k_T', kT);
        sink.step(edge.EDGE_RESISTANCE, [basic, areaRatio, psiS, psiH, psiEc, psiAlpha, psiRe, kT], value);
      }
      return value;
    };
  },
  stirrupFactor: 1.4,

  designResistance: factors.designResistance,

  steelInteraction: together.steelInteraction,
  concreteInteraction: together.concreteInteraction,
  reinforcedInteraction: together.reinforcedInteraction,

  clauses: {
    design: factors.DESIGN_RESISTANCE,
    steelTension: STEEL_TENSION,
    cone: cone.CONE_RESISTANCE,
    pullOut: pull.PULL_OUT,
    blowOut: blow.BLOW_OUT_RESISTANCE,
    splitting: split.SPLITTING_RESISTANCE,
    steelShear: shear.STEEL_SHEAR,
    leverArm: shear.LEVER_ARM_SHEAR,
    pryOut: pry.PRY_OUT,
    edge: edge.EDGE_RESISTANCE,
    steelInteraction: together.STEEL_INTERACTION,
    concreteInteraction: together.CONCRETE_INTERACTION,
    reinforcedInteraction: together.REINFORCED_INTERACTION,
  },
};
