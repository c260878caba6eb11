import { writeMessage } from '../../checks/messages.ts';
import type { Sink } from '../clause.ts';
import type { ConeLoad, ConeQuestion, ResistanceUnder, SplittingQuestion } from '../edition.ts';
import { nameState } from '../name-state.ts';
import * as cone from './concrete-cone.ts';
import * as split from './splitting.ts';

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

/** The cone of a cluster, 7.2.1.4. */
export function resistCone(question: ConeQuestion): ResistanceUnder<ConeLoad> {
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
      else {
        sink.step(cone.CONE_COMPRESSION_FACTOR, [arm, embedment], psiM);
        sink.note(writeMessage('compression-factor'));
      }
      if (question.denseSurface) sink.note(writeMessage('dense-surface'));
      sink.factor('psi_M', psiM);
      sink.step(cone.CONE_RESISTANCE, [basic, areaRatio, psiS, psiRe, psiEc1, psiEc2, psiM], value);
    }
    return value;
  };
}

/** Splitting under load, 7.2.1.7. */
export function resistSplitting(question: SplittingQuestion): ResistanceUnder<ConeLoad> {
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
}
