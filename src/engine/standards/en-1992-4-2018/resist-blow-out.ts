import { roundForText } from '../../checks/messages.ts';
import type { BlowOutQuestion, ResistanceUnder } from '../edition.ts';
import { nameState } from '../name-state.ts';
import * as blow from './blow-out.ts';

function describeBody(length: number, height: number): string {
  return `${roundForText(length, 4)} mm along the edge x ${roundForText(height, 4)} mm (2 c_1 and the smaller of 2 c_1 and f)`;
}

/** A row of inserts along an edge in side-face blow-out, 7.2.1.8. */
export function resistBlowOut({
  edge: c1,
  corner,
  bearingArea,
  strength,
  count,
  meanSpacing,
  cover,
  depthBehind,
  cracked,
}: BlowOutQuestion): ResistanceUnder<number> {
  const k5 = cracked ? blow.BLOW_OUT_FACTOR.cracked : blow.BLOW_OUT_FACTOR.uncracked;
  const basic = blow.blowOutBasic(k5, c1, bearingArea, strength);
  const reference = blow.blowOutReferenceArea(c1);
  const length = cover(2 * c1);
  const height = 2 * c1 + Math.min(2 * c1, depthBehind);
  const area = length * height;
  const areaRatio = area / reference;
  const psiS = corner < 2 * c1 ? blow.blowOutCornerFactor(corner, c1) : 1;
  const psiG = blow.blowOutGroupFactor(count, meanSpacing, c1);
  return (eccentricity, sink) => {
    const psiEc = blow.blowOutEccentricityFactor(eccentricity, c1);
    const value = blow.blowOutResistance(basic, areaRatio, psiS, psiG, psiEc);
    if (sink !== null) {
      if (corner < 2 * c1) sink.quantity('c_2', corner, 'mm', 'distance of the row to the nearest corner');
      sink.quantity('A_c_Nb', area, 'mm2', () => describeBody(length, height));
      if (count > 1) {
        sink.quantity('s_2', meanSpacing, 'mm', 'mean spacing along the edge');
        sink.quantity('e_N', eccentricity, 'mm', 'resultant to centroid along the edge');
      }
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
}
