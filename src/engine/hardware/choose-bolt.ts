import type { Finish } from '../material/finish.ts';
import { listNominalLengths } from './bolt-dimensions.ts';
import {
  type BoltPath,
  chooseLength,
  type LengthChoice,
  leastClearance,
  type PackerRange,
  type PackerRow,
  splitPackerRange,
} from './bolt-length.ts';
import { type BoltLoads, findBoltLoads, findLeastStrengths } from './bolt-strengths.ts';
import { netSectionAtCrossHole } from './cross-hole.ts';
import { findFullStrengthEngagement, findStripLoads, type ThreadPair } from './engagement.ts';
import { expectNutFactors, type NutFactorRange } from './nut-factors.ts';
import { isStainlessClass, type PropertyClass } from './property-classes.ts';
import { judgePair, type PairVerdict } from './thread-pairing.ts';
import { diametralAllowance, type InternalThreadClass } from './thread-shear.ts';
import type { Thread } from './threads.ts';
import { findLowest, findTension, findTorqueLimits, type TorqueLimit, tubeSection } from './tightening.ts';

/** The insert as far as its bolt is concerned. Lengths mm, stresses MPa, torque N mm; null: not known. */
export interface InsertForBolt {
  readonly threadClass: InternalThreadClass;
  readonly finish: Finish;
  /** From the face of the concrete to the first full thread. */
  readonly threadStart: number;
  readonly threadDepth: number;
  readonly steel: { readonly yield: number; readonly ultimate: number } | null;
  readonly body: {
    readonly diameter: number;
    readonly crossHole: { readonly diameter: number; readonly bore: number } | null;
  } | null;
  /** The maker's greatest tightening torque. */
  readonly maxTorque: number | null;
}

/** Which packers to find lengths for: none, a range split as the stock allows, or ranges with one length each. */
export type PackerWish =
  | { readonly kind: 'none' }
  | { readonly kind: 'split'; readonly range: PackerRange }
  | { readonly kind: 'each'; readonly ranges: readonly PackerRange[] };

/** A bolt to be chosen. Lengths mm, forces N. */
export interface BoltQuestion {
  readonly thread: Thread;
  readonly propertyClass: PropertyClass;
  readonly boltFinish: Finish;
  /** Thickness of the bolt's coating; null: not known. */
  readonly boltCoating: number | null;
  readonly insert: InsertForBolt;
  readonly grip: number;
  readonly washer: number;
  /** What the washer may be at most; null: as thick as `washer` says. */
  readonly thickestWasher: number | null;
  /** Least length of thread in contact; null: decided here. */
  readonly minEngagement: number | null;
  /** Lengths at hand; null: the nominal lengths of ISO 4017 and ISO 4014. */
  readonly stock: readonly number[] | null;
  readonly packers: PackerWish;
  readonly nutFactor: number;
  /** null: what must be expected around `nutFactor`. */
  readonly nutFactorRange: NutFactorRange | null;
  /** Part of the proof load wanted in the bolt; 0: snug. */
  readonly preloadFraction: number;
  /** Design resistance of the concrete in tension today; null: not known. */
  readonly concreteTension: number | null;
}

/** How the least engagement was come by. */
export type EngagementRule =
  | 'given'
  | 'one diameter'
  | 'full strength'
  | 'one diameter, depth too small for full strength';

/** The bolt for a question. Lengths mm, forces N, torques N mm. */
export interface BoltAnswer {
  readonly path: BoltPath;
  readonly engagementRule: EngagementRule;
  /** Length of engagement at which the bolt breaks before a thread strips; null: not known or not covered. */
  readonly fullStrengthEngagement: number | null;
  readonly loads: BoltLoads;
  readonly pair: PairVerdict;
  /** False where a stainless finish is asked of carbon steel, or another finish of stainless steel. */
  readonly isClassOfFinish: boolean;
  /** Whether there is such a bolt and it goes into the thread; lengths alone say nothing of that. */
  readonly goesIn: boolean;
  /** For the first range of packers, or for none where none was asked. */
  readonly choice: LengthChoice | null;
  readonly packerRows: readonly PackerRow[];
  readonly nutFactorRange: NutFactorRange;
  /** Every known limit of the torque. */
  readonly torqueLimits: readonly TorqueLimit[];
  /** The limit that governs; null: snug. */
  readonly tightening: TorqueLimit | null;
  /** Tension from the tightening torque, with the greatest and with the least K; null: snug. */
  readonly preload: readonly [least: number, greatest: number] | null;
  readonly isOk: boolean;
}

/**
 * Chooses the bolt for an insert: length, engagement, pairing, tightening.
 *
 * Least engagement where none is given: one diameter (common practice), or what the bolt's full strength needs where the thread is deep enough.
 * One pitch stays free at the bottom of the thread (common practice). Tightening: the lowest of the known limits; snug where no tension is
 * wanted, where nothing but the bolt itself is known, or where no bolt fits.
 */
export function chooseBolt(question: BoltQuestion): BoltAnswer {
  const { thread, propertyClass, insert, packers } = question;
  const pair: ThreadPair = {
    thread,
    allowance: diametralAllowance(thread, insert.threadClass),
    bodyDiameter: insert.body?.diameter ?? null,
  };
  const { steel } = insert;
  const bolt = findLeastStrengths(propertyClass, thread);
  const fullStrengthEngagement =
    steel === null ? null : findFullStrengthEngagement(pair, { bolt: bolt.ultimate, insert: steel.ultimate });
  const { minEngagement, engagementRule } = decideEngagement(question, fullStrengthEngagement);
  const path: BoltPath = {
    thread,
    grip: question.grip,
    washer: question.washer,
    thickestWasher: question.thickestWasher ?? question.washer,
    threadStart: insert.threadStart,
    threadDepth: insert.threadDepth,
    minEngagement,
  };
  const stock = question.stock ?? listAllNominalLengths();
  const packerRows = findPackerRows(path, stock, packers);
  const [first] = packerRows;
  const choice = first === undefined ? chooseLength(path, stock, [0, 0]) : first.choice;
  const verdict = judgePair({
    thread,
    insertClass: insert.threadClass,
    insertFinish: insert.finish,
    boltFinish: question.boltFinish,
    boltCoating: question.boltCoating,
  });
  const isClassOfFinish = isStainlessClass(propertyClass) === (question.boltFinish === 'stainless');
  const goesIn = verdict.isAllowed && isClassOfFinish;
  const isOk = choice !== null && goesIn && packerRows.every((row) => row.choice !== null);
  const answer = {
    path,
    engagementRule,
    fullStrengthEngagement,
    loads: findBoltLoads(propertyClass, thread),
    pair: verdict,
    isClassOfFinish,
    goesIn,
    choice,
    packerRows,
    isOk,
  };
  return { ...answer, ...tighten(question, pair, answer) };
}

/** Every nominal length of both standards, in order. */
function listAllNominalLengths(): readonly number[] {
  return [...new Set([...listNominalLengths('ISO 4017'), ...listNominalLengths('ISO 4014')])].sort((a, b) => a - b);
}

function decideEngagement(
  { thread, minEngagement, insert }: BoltQuestion,
  fullStrength: number | null,
): { readonly minEngagement: number; readonly engagementRule: EngagementRule } {
  if (minEngagement !== null) return { minEngagement, engagementRule: 'given' };
  const d = thread.diameter;
  if (fullStrength === null || fullStrength <= d) return { minEngagement: d, engagementRule: 'one diameter' };
  return fullStrength <= insert.threadDepth - leastClearance(thread)
    ? { minEngagement: fullStrength, engagementRule: 'full strength' }
    : { minEngagement: d, engagementRule: 'one diameter, depth too small for full strength' };
}

function findPackerRows(path: BoltPath, stock: readonly number[], packers: PackerWish): readonly PackerRow[] {
  switch (packers.kind) {
    case 'none':
      return [];
    case 'split':
      return splitPackerRange(path, stock, packers.range);
    case 'each':
      return packers.ranges.map((range) => ({ packers: range, choice: chooseLength(path, stock, range) }));
  }
}

/** What of an answer the tightening depends on. */
interface Placed {
  readonly choice: LengthChoice | null;
  readonly packerRows: readonly PackerRow[];
  readonly loads: BoltLoads;
  readonly goesIn: boolean;
}

function tighten(
  question: BoltQuestion,
  pair: ThreadPair,
  { choice, packerRows, loads, goesIn }: Placed,
): Pick<BoltAnswer, 'nutFactorRange' | 'torqueLimits' | 'tightening' | 'preload'> {
  const { thread, insert, nutFactor } = question;
  const nutFactorRange = question.nutFactorRange ?? expectNutFactors(nutFactor, question.boltFinish);
  const engagements = [choice, ...packerRows.map((row) => row.choice)].flatMap((one) => one?.engagement.least ?? []);
  const torqueLimits = findTorqueLimits({
    diameter: thread.diameter,
    nutFactor,
    nutFactorRange,
    makersMaximum: insert.maxTorque,
    ...findTwistedSections(insert, thread.diameter + pair.allowance),
    threads: findThreadYield(question, pair, engagements),
    concrete: question.concreteTension,
    wantedTension: question.preloadFraction * loads.proof,
  });
  const isSnug =
    question.preloadFraction === 0 || choice === null || !goesIn || torqueLimits.every(({ kind }) => kind === 'bolt');
  const tightening = isSnug ? null : findLowest(torqueLimits);
  const from = (K: number, torque: number) => findTension(K, thread.diameter, torque);
  const preload =
    tightening === null
      ? null
      : ([from(nutFactorRange.greatest, tightening.torque), from(nutFactorRange.least, tightening.torque)] as const);
  return { nutFactorRange, torqueLimits, tightening, preload };
}

/** The insert's wall around its thread, and its body at the cross hole. */
function findTwistedSections({ body, steel }: InsertForBolt, bore: number) {
  if (body === null || steel === null) return { bodyAtThread: null, bodyAtCrossHole: null };
  const { diameter, crossHole } = body;
  return {
    bodyAtThread: { ...tubeSection(diameter, bore), yield: steel.yield },
    bodyAtCrossHole:
      crossHole === null
        ? null
        : { ...netSectionAtCrossHole(diameter, crossHole.bore, crossHole.diameter), yield: steel.yield },
  };
}

/** Tensions at which the threads shear at yield, with the least engagement of all; null where none is known. */
function findThreadYield(
  { thread, propertyClass, insert }: BoltQuestion,
  pair: ThreadPair,
  engagements: readonly number[],
) {
  if (insert.steel === null || engagements.length === 0) return null;
  const bolt = findLeastStrengths(propertyClass, thread).yield;
  return findStripLoads(pair, Math.min(...engagements), { bolt, insert: insert.steel.yield });
}
