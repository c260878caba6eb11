import type { Sink } from '../clause.ts';
import type { EdgeQuestion, EdgeResistance } from '../edition.ts';
import * as edge from './edge-breakout.ts';
import { EDGE_PARTS } from './interaction.ts';
import type { AciUnits } from './units.ts';

/** Concrete breakout of a row along an edge in shear, toward the edge and along it, 17.7.2. */
export function resistEdge(units: AciUnits, question: EdgeQuestion): Extract<EdgeResistance, { kind: 'parts' }> {
  const { diameter, embedment, strength, edge: c, corner, thickness, lightweightFactor: lambda } = question;
  const { edge: k1, edgeCap: k2 } = units.coefficients;
  const length = edge.bearingLength(embedment, diameter);
  const basic = edge.edgeBasic(k1, k2, length, diameter, lambda, strength, c);
  const reference = edge.edgeReferenceArea(c);
  const areaRatio = question.area / reference;
  const isAtCorner = corner < 1.5 * c;
  const psiEd = isAtCorner ? edge.edgeCornerFactor(corner, c) : 1;
  const psiH = edge.edgeThicknessFactor(c, thickness);
  const psiC = question.reinforcementFactor;

  function report(sink: Sink, eccentricity: number, psiEc: number, ownPsiEd: number): void {
    sink.step(edge.BEARING_LENGTH, [embedment, diameter], length);
    sink.quantity('k_1', k1, '-', units.printed.edge);
    sink.quantity('k_2', k2, '-', units.printed.edgeCap);
    sink.step(edge.EDGE_BASIC, [k1, k2, length, diameter, lambda, strength, c], basic);
    sink.basic(basic);
    sink.step(edge.EDGE_REFERENCE_AREA, [c], reference);
    sink.quantity('A_Vc_ratio', areaRatio, '-', 'A_Vc / A_Vco; A_Vc is the area A_c_V above');
    sink.step(edge.EDGE_THICKNESS_FACTOR, [c, thickness], psiH);
    sink.step(edge.EDGE_ECCENTRICITY_FACTOR, [eccentricity, c], psiEc);
    sink.quantity('psi_c_V', psiC, '-', 'cracking and edge reinforcement, 17.7.2.5');
    sink.factor('areaRatio', areaRatio);
    sink.factor('psi_ed', ownPsiEd);
    sink.factor('psi_h', psiH);
    sink.factor('psi_ec', psiEc);
    sink.factor('psi_c', psiC);
  }

  return {
    kind: 'parts',
    together: EDGE_PARTS,
    toward(eccentricity, sink) {
      const psiEc = edge.edgeEccentricityFactor(eccentricity, c);
      const value = edge.edgeResistance(basic, areaRatio, psiEd, psiH, psiEc, psiC);
      if (sink !== null) {
        report(sink, eccentricity, psiEc, psiEd);
        if (isAtCorner) sink.step(edge.EDGE_CORNER_FACTOR, [corner, c], psiEd);
        else sink.quantity('psi_ed_V', 1, '-', 'no corner nearer than 1.5 c_a1');
        sink.step(edge.EDGE_RESISTANCE, [basic, areaRatio, psiEd, psiH, psiEc, psiC], value);
      }
      return value;
    },
    along(eccentricity, sink) {
      const psiEc = edge.edgeEccentricityFactor(eccentricity, c);
      const value = edge.edgeResistanceAlong(basic, areaRatio, psiH, psiEc, psiC);
      if (sink !== null) {
        report(sink, eccentricity, psiEc, 1);
        sink.factor('k_along', 2);
        sink.quantity('psi_ed_V', 1, '-', 'shear along the edge, 17.7.2.1');
        sink.step(edge.EDGE_RESISTANCE_ALONG, [basic, areaRatio, psiH, psiEc, psiC], value);
      }
      return value;
    },
  };
}
