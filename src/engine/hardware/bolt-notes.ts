import { findStandardsWithLength, findThreadLength, listNominalLengths } from './bolt-dimensions.ts';
import {
  type BoltPath,
  findLengthLimits,
  type LengthChoice,
  leastClearance,
  type PackerRange,
  placeBolt,
} from './bolt-length.ts';
import type { BoltAnswer, BoltQuestion } from './choose-bolt.ts';
import { describeTightening } from './tightening-notes.ts';
import { listWashers } from './washers.ts';

/** A length [mm] with one decimal at most. */
function showLength(length: number): string {
  return `${Number(length.toFixed(1))} mm`;
}

/** Tells of an answer what a person must know: refusals, choices made here, what to watch; a sentence each, without a full stop. */
export function describeBolt(question: BoltQuestion, answer: BoltAnswer): readonly string[] {
  return [
    ...answer.pair.notes,
    ...describeClass(question, answer),
    ...(answer.goesIn
      ? [
          ...describeLength(question, answer),
          ...describePackers(question, answer),
          ...describeEngagement(question, answer),
        ]
      : ['lengths are those of a bolt of this thread that goes in: this one does not, take another finish or class']),
    ...describeRecess(question),
    ...describeTightening(question, answer),
  ];
}

function describeClass({ propertyClass, boltFinish }: BoltQuestion, { isClassOfFinish, loads }: BoltAnswer): string[] {
  const notes: string[] = [];
  if (!isClassOfFinish)
    notes.push(
      boltFinish === 'stainless'
        ? `a stainless bolt is ordered by steel group and class, A4-70 for one; ${propertyClass} is a class of carbon steel: no bolt is both`
        : `${propertyClass} is stainless steel and has no finish "${boltFinish}": no bolt is both`,
    );
  if (!loads.isProofLoad)
    notes.push(`ISO 3506-1 gives ${propertyClass} no proof load: the load at its 0.2 % stress stands for it`);
  if (propertyClass === '10.9' && (boltFinish === 'zinc' || boltFinish === 'galvanised'))
    notes.push(
      '10.9 with zinc may break late from hydrogen taken up in pickling or plating (ISO 4042, ISO 10684): ask the maker',
    );
  return notes;
}

function describeLength(question: BoltQuestion, answer: BoltAnswer): string[] {
  const notes: string[] = [];
  if (question.stock === null)
    notes.push('no stock given: nominal lengths of ISO 4017 and ISO 4014; not every length is made in every size');
  const isMissing = answer.choice === null && answer.packerRows.length === 0;
  if (isMissing) notes.push(explainMissing(question, answer, [0, 0]));
  const choices = [answer.choice, ...answer.packerRows.map((row) => row.choice)].filter((choice) => choice !== null);
  return [...notes, ...new Set(choices.flatMap((choice) => describeChoice(question, answer, choice)))];
}

function describeChoice(question: BoltQuestion, { path }: BoltAnswer, choice: LengthChoice): string[] {
  const notes: string[] = [];
  const bolt = `${path.thread.name} × ${choice.length}`;
  if (findStandardsWithLength(choice.length).length === 0)
    notes.push(`${bolt}: no nominal length of ISO 4014 or ISO 4017`);
  const threaded = findThreadLength(path.thread, choice.length);
  if (choice.engagement.greatest > threaded)
    notes.push(
      `${bolt}: take it threaded to the head (ISO 4017); with shank (ISO 4014) only ${threaded} mm are thread, less than the engagement`,
    );
  return [...notes, ...warnOfThickWashers(question, path, choice)];
}

/** Washers may be thicker than nominal; where that takes the engagement below the least, it is said. */
function warnOfThickWashers({ washer, thickestWasher }: BoltQuestion, path: BoltPath, choice: LengthChoice): string[] {
  if (thickestWasher !== null) return [];
  const same = listWashers(path.thread).find(({ thickness }) => thickness === washer);
  if (same === undefined) return [];
  const left = choice.engagement.least - (same.thicknessMax - same.thickness);
  return left < path.minEngagement - 1e-9
    ? [
        `${path.thread.name} × ${choice.length}: a washer ${same.standard} may be ${same.thicknessMax} mm thick: engagement is then ${showLength(left)}, below ${showLength(path.minEngagement)}`,
      ]
    : [];
}

/** Why no stock length serves a range of packers, and what would. */
export function explainMissing(
  { stock }: Pick<BoltQuestion, 'stock'>,
  { path }: Pick<BoltAnswer, 'path'>,
  packers: PackerRange,
): string {
  const { thread, minEngagement, threadDepth } = path;
  const where = packers[1] === 0 ? '' : ` for packers of ${showLength(packers[0])} to ${showLength(packers[1])}`;
  const room = leastClearance(thread);
  const needed = minEngagement + room;
  if (threadDepth < needed - 1e-9)
    return `no length fits${where}: ${showLength(minEngagement)} of engagement and one pitch (${room} mm) free at the bottom need ${showLength(needed)} of thread, the insert has ${showLength(threadDepth)}; take an insert with a deeper thread`;
  const [shortest, longest] = findLengthLimits(path, packers);
  if (shortest > longest + 1e-9)
    return packers[1] > packers[0]
      ? `no one length fits${where}: the thread leaves room for ${showLength(threadDepth - needed)} of difference; split the range`
      : `no length fits${where} with every washer: it must be from ${showLength(shortest)}, with the thickest, to ${showLength(longest)}; measure the washer, never cut a bolt to suit`;
  const lengths = stock ?? [];
  const below = Math.max(...lengths.filter((length) => length < shortest));
  const above = Math.min(...lengths.filter((length) => length > longest));
  const parts = [`no stock length fits${where}: it must be from ${showLength(shortest)} to ${showLength(longest)}`];
  if (Number.isFinite(below))
    parts.push(
      `${showLength(below)} leaves ${showLength(Math.max(0, placeBolt(path, below, packers).engagement.least))} of ${showLength(minEngagement)} engagement`,
    );
  const remedies: string[] = [];
  const nominal = listNominalLengths('ISO 4017').find((length) => length >= shortest && length <= longest);
  if (nominal !== undefined) remedies.push(`order ${showLength(nominal)}`);
  if (Number.isFinite(above)) {
    parts.push(`${showLength(above)} stands on the bottom or too near it`);
    remedies.push(
      `put ${showLength(above - longest)} to ${showLength(above - shortest)} more washers under the head of ${showLength(above)}`,
    );
  }
  parts.push(remedies.length === 0 ? 'order a length between these' : remedies.join(', or '));
  return `${parts.join('; ')}; never cut a bolt to suit`;
}

function describePackers(question: BoltQuestion, answer: BoltAnswer): string[] {
  return answer.packerRows.flatMap((row) =>
    row.choice === null ? [explainMissing(question, answer, row.packers)] : [],
  );
}

function describeEngagement(question: BoltQuestion, answer: BoltAnswer): string[] {
  const { insert } = question;
  const { path, fullStrengthEngagement: full, choice } = answer;
  const notes = describeRule(answer);
  if (insert.steel === null)
    notes.push("steel of the insert's thread not known: engagement for full strength not computed");
  else if (full === null)
    notes.push(
      `a body of ${showLength(insert.body?.diameter ?? 0)} around ${path.thread.name} is below 1.4 d, where no rule for stripping holds: a tested thread resistance is needed`,
    );
  else if (choice !== null && choice.engagement.least < full)
    notes.push(
      `at ${showLength(choice.engagement.least)} the thread strips before the bolt breaks: full strength needs ${showLength(full)}`,
    );
  if (choice !== null) {
    const turns = (length: number) => Number((length / path.thread.pitch).toFixed(1));
    notes.push(
      `turns in by hand ${turns(choice.engagement.least)} times; below ${turns(path.minEngagement)} turns (${showLength(path.minEngagement)}): stop, clean the thread, measure`,
    );
  }
  return notes;
}

function describeRule({ engagementRule, path, fullStrengthEngagement }: BoltAnswer): string[] {
  const least = showLength(path.minEngagement);
  const full = showLength(fullStrengthEngagement ?? 0);
  switch (engagementRule) {
    case 'given':
      return path.minEngagement < path.thread.diameter
        ? [
            `least engagement ${least} is below one diameter, ${showLength(path.thread.diameter)} (common practice): only where a test or the full strength allows it`,
          ]
        : [];
    case 'one diameter':
      return [`least engagement not given: one diameter, ${least} (common practice)`];
    case 'full strength':
      return [`least engagement not given: ${least}, at which the bolt breaks before the thread strips`];
    case 'one diameter, depth too small for full strength':
      return [
        `least engagement not given: one diameter, ${least} (common practice), since a thread ${showLength(path.threadDepth)} deep cannot hold the ${full} for full strength`,
      ];
  }
}

function describeRecess({ insert }: BoltQuestion): string[] {
  return insert.threadStart === 0
    ? []
    : [
        `the thread begins ${showLength(insert.threadStart)} below the face: the bolt is longer by that, and so is the lever arm of a shear unless the hollow is filled`,
      ];
}
