import type { Sink } from '../clause.ts';
import type { ConeLoad, ConeQuestion, ResistanceUnder } from '../edition.ts';
import { nameState } from '../name-state.ts';
import * as breakout from './breakout.ts';
import type { AciUnits } from './units.ts';

/** N_b: between 11 and 25 in (280 and 635 mm) the larger of the two formulas, 17.6.2.2. */
function findBasic(units: AciUnits, question: ConeQuestion): { value: number; report(sink: Sink): void } {
  const { coefficients, printed } = units;
  const { embedment, strength, lightweightFactor: lambda } = question;
  const plain = breakout.breakoutBasic(coefficients.breakout, lambda, strength, embedment);
  const reportPlain = (sink: Sink) => {
    sink.quantity('k_c', coefficients.breakout, '-', printed.breakout);
    sink.step(breakout.BREAKOUT_BASIC, [coefficients.breakout, lambda, strength, embedment], plain);
  };
  if (embedment < coefficients.deepFrom || embedment > coefficients.deepTo)
    return { value: plain, report: reportPlain };
  const deep = breakout.breakoutBasicDeep(coefficients.deepBreakout, lambda, strength, embedment);
  const value = Math.max(plain, deep);
  return {
    value,
    report(sink) {
      reportPlain(sink);
      sink.quantity('k_d', coefficients.deepBreakout, '-', printed.deepBreakout);
      sink.step(breakout.BREAKOUT_BASIC_DEEP, [coefficients.deepBreakout, lambda, strength, embedment], deep);
      sink.quantity('N_b', value, 'N', 'the larger of the two');
    },
  };
}

/** Concrete breakout of a cluster in tension, 17.6.2. */
export function resistBreakout(units: AciUnits, question: ConeQuestion): ResistanceUnder<ConeLoad> {
  const { criticalEdge, embedment, edge, area, cracked } = question;
  const basic = findBasic(units, question);
  const reference = breakout.breakoutReferenceArea(embedment);
  const areaRatio = area / reference;
  const psiEd = edge < criticalEdge ? breakout.breakoutEdgeFactor(edge, embedment) : 1;
  const psiC = cracked ? breakout.BREAKOUT_CRACKING.cracked : breakout.BREAKOUT_CRACKING.uncracked;
  // Cast-in anchors have no loss from splitting in uncracked concrete, 17.6.2.6.
  const psiCp = 1;
  return ({ eccentricity1, eccentricity2 }, sink) => {
    const psiEc1 = breakout.breakoutEccentricityFactor(eccentricity1, embedment);
    const psiEc2 = breakout.breakoutEccentricityFactor(eccentricity2, embedment);
    const args = [basic.value, areaRatio, psiEd, psiEc1, psiEc2, psiC, psiCp] as const;
    const value = breakout.breakoutResistance(...args);
    if (sink !== null) {
      basic.report(sink);
      sink.basic(basic.value);
      sink.step(breakout.BREAKOUT_REFERENCE_AREA, [embedment], reference);
      sink.quantity('A_Nc_ratio', areaRatio, '-', 'A_Nc / A_Nco; A_Nc is the area A_c_N above');
      if (edge < criticalEdge) sink.step(breakout.BREAKOUT_EDGE_FACTOR, [edge, embedment], psiEd);
      else sink.quantity('psi_ed_N', 1, '-', 'no edge nearer than 1.5 h_ef');
      sink.step(breakout.BREAKOUT_ECCENTRICITY_FACTOR, [eccentricity1, embedment], psiEc1, 'psi_ec_N_1');
      sink.step(breakout.BREAKOUT_ECCENTRICITY_FACTOR, [eccentricity2, embedment], psiEc2, 'psi_ec_N_2');
      sink.quantity('psi_c_N', psiC, '-', `cast-in, ${nameState(cracked)} concrete`);
      sink.quantity('psi_cp_N', psiCp, '-', 'cast-in');
      sink.factor('areaRatio', areaRatio);
      sink.factor('psi_ed', psiEd);
      sink.factor('psi_c', psiC);
      sink.factor('psi_ec', psiEc1 * psiEc2);
      sink.factor('psi_cp', psiCp);
      sink.step(breakout.BREAKOUT_RESISTANCE, args, value);
    }
    return value;
  };
}
