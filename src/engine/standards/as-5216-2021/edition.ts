import type { Edition, ResistanceUnder } from '../edition.ts';
import { EN_1992_4_2018 as EN } from '../en-1992-4-2018/edition.ts';
import { CONCRETE_FACTOR } from '../en-1992-4-2018/partial-factors.ts';
import { findUncovered } from '../en-1992-4-2018/scope.ts';
import * as factors from './capacity-factors.ts';
import { restate, restateSink } from './document.ts';

/** AS 5216 without a year, or of 2021: editions differ on whether cast-in inserts are within its scope. */
const MEANT = /^AS 5216(:2021\b.*)?$/;

/** A resistance of EN 1992-4 whose steps are written under AS 5216. */
function restateResistance<Load>(resist: ResistanceUnder<Load>): ResistanceUnder<Load> {
  return (load, sink) => resist(load, restateSink(sink));
}

const { blowOut, splitting, bars, together } = EN;

/**
 * AS 5216:2021, cast-in inserts with a foot: the rules of EN 1992-4:2018 with capacity factors φ = 1/γ, and 0.8 for
 * supplementary bars. Editions differ on whether cast-in inserts are within its scope: an insert needs a document that says so.
 */
export const AS_5216_2021: Edition = {
  name: 'AS 5216',
  document: 'AS 5216:2021',
  namePattern: MEANT,
  limits: EN.limits,
  findUncovered: (group) => findUncovered(group, 'AS 5216', MEANT),

  design: factors.DESIGN_CAPACITY,
  safetyFactor: 'multiplies',
  fromPartialFactor: (partialFactor) => 1 / partialFactor,
  takesPartialFactors: true,
  concreteSafety(_, group, sink) {
    const given = group.partialFactors.concrete;
    const value = 1 / (given ?? CONCRETE_FACTOR);
    sink?.quantity('phi_Mc', value, '-', given === null ? '1 / 1.5' : `1 / ${given}, as given`);
    return value;
  },

  needsAreaReduction: EN.needsAreaReduction,
  steelTension: (part, sink) => EN.steelTension(part, restateSink(sink)),
  steelTensionSafety(part, _, sink) {
    const value = factors.steelTensionCapacityFactor(part.ultimate, part.yield);
    sink?.step(factors.STEEL_TENSION_CAPACITY_FACTOR, [part.ultimate, part.yield], value);
    return value;
  },
  steelShear: (part, group, sink) => EN.steelShear(part, group, restateSink(sink)),
  steelShearSafety(part, _, sink) {
    const value = factors.steelShearCapacityFactor(part.ultimate, part.yield);
    sink?.step(factors.STEEL_SHEAR_CAPACITY_FACTOR, [part.ultimate, part.yield], value);
    return value;
  },
  leverArmShear: (part, arm, tension, tensionDesign, sink) =>
    EN.leverArmShear(part, arm, tension, tensionDesign, restateSink(sink)),

  coneReach: EN.coneReach,
  reduceEmbedment: (largestEdge, largestSpacing, criticalEdge, embedment, sink) =>
    EN.reduceEmbedment(largestEdge, largestSpacing, criticalEdge, embedment, restateSink(sink)),
  concreteCone: (question) => restateResistance(EN.concreteCone(question)),

  bearingArea: (insert, sink) => EN.bearingArea(insert, restateSink(sink)),
  pullOut: (bearingArea, strength, cracked, sink) => EN.pullOut(bearingArea, strength, cracked, restateSink(sink)),

  leastDistances: EN.leastDistances,
  splitting: { ...splitting, resist: (question) => restateResistance(splitting.resist(question)) },
  blowOut: { ...blowOut, resist: (question) => restateResistance(blowOut.resist(question)) },

  pryOutFactor: (embedment, given, sink) => EN.pryOutFactor(embedment, given, restateSink(sink)),
  pryOut: (cone, factor, hasBars, sink) => EN.pryOut(cone, factor, hasBars, restateSink(sink)),

  edgeLimit: EN.edgeLimit,
  reduceEdge: (largestCorner, thickness, largestSpacing, edge, sink) =>
    EN.reduceEdge(largestCorner, thickness, largestSpacing, edge, restateSink(sink)),
  edgeReinforcement: EN.edgeReinforcement,
  concreteEdge: (question) => ({ kind: 'resultant', resist: restateResistance(EN.concreteEdge(question).resist) }),
  weakensTorsionPairs: EN.weakensTorsionPairs,

  bars: {
    safety: factors.REINFORCEMENT_CAPACITY_FACTOR,
    bondFactor: bars.bondFactor,
    steel: restate(bars.steel),
    bond: restate(bars.bond),
    anchorage: restate(bars.anchorage),
    tensionFromShear: restate(bars.tensionFromShear),
    limits: bars.limits,
    loopEfficiency: bars.loopEfficiency,
  },
  together: {
    kind: 'apart',
    steel: restate(together.steel),
    concrete: restate(together.concrete),
    reinforced: restate(together.reinforced),
  },

  clauses: {
    steelTension: restate(EN.clauses.steelTension),
    cone: restate(EN.clauses.cone),
    pullOut: restate(EN.clauses.pullOut),
    blowOut: restate(EN.clauses.blowOut),
    splitting: restate(EN.clauses.splitting),
    steelShear: restate(EN.clauses.steelShear),
    leverArm: restate(EN.clauses.leverArm),
    pryOut: restate(EN.clauses.pryOut),
    edge: restate(EN.clauses.edge),
  },
};
