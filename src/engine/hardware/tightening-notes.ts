import type { BoltAnswer, BoltQuestion } from './choose-bolt.ts';
import { findPublishedNutFactors } from './nut-factors.ts';
import { findLowest, type TorqueLimit } from './tightening.ts';

/** Most of the proof load that a bolt is tightened to where it stays: Shigley (recalled). */
const USUAL_MOST = 0.9;

/** A torque [N mm] in whole N m, cut off: a limit is never rounded up. */
function showTorque(torque: number): string {
  return `${Math.floor(torque / 1000 + 1e-9)} N m`;
}

function showForce(force: number): string {
  return `${(force / 1000).toFixed(1)} kN`;
}

/** Tells how to tighten: snug or to which torque, what limits it, what is not known. */
export function describeTightening(question: BoltQuestion, answer: BoltAnswer): string[] {
  const { tightening } = answer;
  return [
    ...(tightening === null ? describeSnug(answer) : describeTorque(question, answer, tightening)),
    ...describeUnknown(question),
    ...describeFactor(question),
  ];
}

function describeSnug({ choice, pair, isClassOfFinish, torqueLimits }: BoltAnswer): string[] {
  if (choice === null || !pair.isAllowed || !isClassOfFinish) return ['no tightening torque: this bolt does not fit'];
  const lowest = findLowest(torqueLimits.filter(({ kind }) => kind !== 'bolt'));
  if (lowest === null)
    return ['snug only, by hand with a short spanner: no limit is known but that of the bolt itself'];
  const most = `never above ${showTorque(lowest.torque)} (${lowest.kind})`;
  return [`snug, by hand with a short spanner: no tension is asked of the bolt; ${most}`];
}

function describeTorque(question: BoltQuestion, answer: BoltAnswer, { kind, torque }: TorqueLimit): string[] {
  const { loads, preload } = answer;
  const [least, greatest] = preload ?? [0, 0];
  const notes = [
    `at most ${showTorque(torque)}, by hand with a torque wrench, no impact tool in a cast-in thread (${kind} governs); tension ${showForce(least)} to ${showForce(greatest)}, carried by insert and concrete`,
  ];
  if (greatest > loads.proof)
    notes.push(`where the thread rubs least, the bolt passes its proof load of ${showForce(loads.proof)}`);
  if (question.preloadFraction > USUAL_MOST)
    notes.push(
      `${question.preloadFraction} of the proof load is more than the usual ${USUAL_MOST} (Shigley, recalled)`,
    );
  return notes;
}

/** Limits that a torque ought to have and that nobody gave. */
function describeUnknown({ insert, concreteTension, preloadFraction }: BoltQuestion): string[] {
  if (preloadFraction === 0) return [];
  const unknown = [
    ...(insert.maxTorque === null ? ["the maker's maximum torque"] : []),
    ...(insert.body === null || insert.steel === null ? ["the insert's own section"] : []),
    ...(insert.steel === null ? ["the insert's thread"] : []),
    ...(concreteTension === null ? ['the concrete at its strength today'] : []),
  ];
  return unknown.length === 0 ? [] : [`not known, so not a limit here: ${unknown.join(', ')}`];
}

/** How the nut factor stands beside what books print. */
function describeFactor({ nutFactor, nutFactorRange, boltFinish, preloadFraction }: BoltQuestion): string[] {
  if (preloadFraction === 0) return [];
  const book = findPublishedNutFactors(boltFinish);
  const notes: string[] = [];
  if (nutFactorRange === null) notes.push('range of the nut factor not given: tension taken to scatter by 35 %');
  if (book !== null && (nutFactor < book.least || nutFactor > book.greatest))
    notes.push(
      `nut factor ${nutFactor}: books give ${book.least} to ${book.greatest} for a ${boltFinish} bolt (${book.source})`,
    );
  return notes;
}
