import type { EdgeLoad, EdgeQuestion, ResistanceUnder } from '../edition.ts';
import { nameState } from '../name-state.ts';
import * as edge from './concrete-edge.ts';

/** Largest diameter that counts in the edge formula, d_nom (7.2.2.5) [mm]. */
const LARGEST_DIAMETER = 60;

/** A row of inserts along an edge in shear, by the resultant of its shear, 7.2.2.5. */
export function resistEdge(question: EdgeQuestion): ResistanceUnder<EdgeLoad> {
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
}
