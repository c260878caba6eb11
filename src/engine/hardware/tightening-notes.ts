import type { BoltAnswer, BoltQuestion } from './choose-bolt.ts';
import { findPublishedNutFactors } from './nut-factors.ts';
import { findLowest, findTorque, type TorqueLimit, type TorqueLimitKind } from './tightening.ts';

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
    ...describeUnknown(question, answer),
    ...describeFactor(question, answer),
  ];
}

function describeSnug({ choice, goesIn, torqueLimits }: BoltAnswer): string[] {
  if (choice === null || !goesIn) return ['no tightening torque: this bolt does not fit'];
  const lowest = findLowest(torqueLimits.filter(({ kind }) => kind !== 'bolt'));
  if (lowest === null)
    return [
      'snug only, by hand with a short spanner: no limit is known but that of the bolt itself; nothing is known of what the insert and the concrete stand, so no torque is given, whatever tension is wanted',
    ];
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

/** Parts of insert and concrete whose limits a torque ought to have, in words. */
const WANTED_LIMITS = [
  ["maker's maximum", "the maker's maximum torque"],
  ['body around the thread', "the insert's own section"],
  ['body at the cross hole', 'the body at the cross hole'],
  ["insert's thread", "the insert's thread"],
  ["bolt's thread", "the bolt's thread in it"],
  ['concrete', 'the concrete at its strength today'],
] as const satisfies readonly (readonly [TorqueLimitKind, string])[];

/** Limits that a torque ought to have and that are not among those found. */
function describeUnknown({ insert, preloadFraction }: BoltQuestion, answer: BoltAnswer): string[] {
  const { choice, goesIn, torqueLimits } = answer;
  if (preloadFraction === 0 || choice === null || !goesIn) return [];
  const found = new Set<TorqueLimitKind>(torqueLimits.map(({ kind }) => kind));
  const hasCrossHole = insert.body !== null && insert.body.crossHole !== null;
  const unknown = WANTED_LIMITS.filter(
    ([kind]) => !found.has(kind) && (kind !== 'body at the cross hole' || hasCrossHole),
  ).map(([, words]) => words);
  return [
    ...(unknown.length === 0 ? [] : [`not known, so not a limit here: ${unknown.join(', ')}`]),
    ...describeMakersMaximum(insert.maxTorque, answer),
  ];
}

/** A maximum that even the bolt does not stand tells nothing of the insert. */
function describeMakersMaximum(maximum: number | null, answer: BoltAnswer): string[] {
  const { loads, path, nutFactorRange, torqueLimits } = answer;
  const ofBolt = findTorque(nutFactorRange.greatest, path.thread.diameter, loads.proof);
  if (maximum === null || maximum <= ofBolt) return [];
  const isAlone = torqueLimits.every(({ kind }) => kind === 'bolt' || kind === "maker's maximum");
  const advice = isAlone ? '; nothing else is known of the insert: snug only is advised' : '';
  return [
    `the maker's maximum of ${showTorque(maximum)} is more than brings the bolt itself to its proof load (${showTorque(ofBolt)} at most): N m?${advice}`,
  ];
}

/** The nut factor behind the limits, and how it stands beside what books print. */
function describeFactor({ nutFactor, nutFactorRange, boltFinish }: BoltQuestion, answer: BoltAnswer): string[] {
  const { choice, goesIn, torqueLimits, nutFactorRange: range } = answer;
  if (choice === null || !goesIn || torqueLimits.every(({ kind }) => kind === "maker's maximum")) return [];
  const book = findPublishedNutFactors(boltFinish);
  const notes = [
    `torques by T = K d F with K ${nutFactor}, from ${showFactor(range.least)} to ${showFactor(range.greatest)}${nutFactorRange === null ? '; range of the nut factor not given: tension taken to scatter by 35 %, wider where books are' : ''}`,
  ];
  if (book !== null && (nutFactor < book.least || nutFactor > book.greatest))
    notes.push(
      `nut factor ${nutFactor}: books give ${book.least} to ${book.greatest} for a ${boltFinish} bolt (${book.source})`,
    );
  return notes;
}

function showFactor(K: number): string {
  return `${Number(K.toPrecision(3))}`;
}
