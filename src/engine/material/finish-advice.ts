import {
  type CoatingLife,
  type CorrosionCategory,
  coatingLife,
  describeLife,
  findSteelLoss,
  judgeLife,
  type LifeVerdict,
} from './corrosion.ts';
import { bringsSalt, type ExposureClass } from './cover.ts';
import type { Finish } from './finish.ts';
import {
  chooseStainless,
  isAtLeast,
  type StainlessChoice,
  type StainlessGrade,
  type StainlessSite,
} from './stainless-grade.ts';
import { leastGalvanising, PLATINGS, thickestPlating } from './zinc-coatings.ts';

/** A part with a thread, and where it stands. */
export interface FinishQuestion {
  readonly finish: Finish;
  /** Thickness of the zinc [µm]; 0 without. */
  readonly coating: number;
  /** Thread diameter [mm]. */
  readonly thread: number;
  readonly category: CorrosionCategory;
  readonly exposure: ExposureClass;
  /** Wanted life [years]. */
  readonly wanted: number;
  /** For stainless steel: the steel and the site, where they are known. */
  readonly grade: StainlessGrade | null;
  readonly site: StainlessSite | null;
}

/** Whether a finish will do, with the numbers, in sentences without a full stop. */
export interface FinishAdvice {
  readonly verdict: LifeVerdict | 'not known';
  /** Of the zinc; null for plain and stainless steel. */
  readonly life: CoatingLife | null;
  /** Of the stainless steel; null where the site is not known or the steel is another. */
  readonly stainless: StainlessChoice | null;
  /** First whether it lasts, then what else to look at. */
  readonly sentences: readonly string[];
}

/** What follows from a life beside the wanted one. */
const WANTS: Readonly<Record<LifeVerdict, string>> = {
  lasts: '',
  'may fall short': ' and may not be reached: see how harsh it is there, or take stainless steel',
  'falls short': ': take stainless steel, or keep air and water off',
};

const HARSH: ReadonlySet<CorrosionCategory> = new Set(['C4', 'C5', 'CX']);

/** What a coating's thickness says about how it was put on; nothing where it fits. */
function doubtCoating({ finish, coating, thread }: FinishQuestion): string[] {
  const most = thickestPlating();
  if (finish === 'zinc' && coating > most)
    return [`${coating} µm is more zinc than electroplating puts on (up to ${most} µm, ISO 4042): is it galvanised?`];
  const least = leastGalvanising('thread', thread).local;
  if (finish === 'galvanised' && coating < least)
    return [`${coating} µm is less zinc than ISO 1461 asks of a galvanised thread (${least} µm at any place)`];
  return [];
}

function describeCoating({ finish, coating }: FinishQuestion): string {
  if (finish === 'galvanised') return `hot-dip galvanising of ${coating} µm`;
  const plating = PLATINGS.find(({ nominal }) => nominal === coating);
  const batch = plating === undefined ? '' : ` (a batch averages ${plating.meanMin} to ${plating.meanMax} µm)`;
  return `zinc plating of ${coating} µm${batch}`;
}

function adviseZinc(question: FinishQuestion): FinishAdvice {
  const { coating, category, wanted } = question;
  const life = coatingLife(coating, category);
  const verdict = judgeLife(life, wanted);
  const wants = WANTS[verdict];
  return {
    verdict,
    life,
    stainless: null,
    sentences: [
      `${describeCoating(question)} lasts ${describeLife(life)} in ${category} where air reaches it (ISO 9223); ${wanted} years are wanted${wants}`,
      ...doubtCoating(question),
    ],
  };
}

function advisePlain({ category }: FinishQuestion): FinishAdvice {
  const { low, high } = findSteelLoss(category);
  const isMild = category === 'C1';
  return {
    verdict: isMild ? 'lasts' : 'falls short',
    life: null,
    stainless: null,
    sentences: [
      `plain steel loses ${low} to ${high} µm a year in ${category} where air reaches it (ISO 9223)${isMild ? '' : ': it rusts and stains the face; take zinc or stainless steel, or seal it'}`,
    ],
  };
}

function adviseStainless({ category, exposure, grade, site }: FinishQuestion): FinishAdvice {
  if (site === null) {
    const isHarsh = HARSH.has(category) || bringsSalt(exposure);
    const where = bringsSalt(exposure) ? `${category} with salt (${exposure})` : category;
    const sentence = isHarsh
      ? `stainless steel in ${where}: the grade decides, by distance to the sea and to salted roads, sulphur dioxide and washing (EN 1993-1-4, Annex A)`
      : `stainless steel in ${category}: no zinc to be used up`;
    return { verdict: isHarsh ? 'not known' : 'lasts', life: null, stainless: null, sentences: [sentence] };
  }
  const stainless = chooseStainless(site);
  const { factor, resistanceClass, grade: least } = stainless;
  const asked = `corrosion resistance factor ${factor}, class ${resistanceClass}: at least ${least} (EN 1993-1-4, Annex A)`;
  if (grade === null)
    return { verdict: 'not known', life: null, stainless, sentences: [`${asked}; the steel's grade is not given`] };
  const isEnough = isAtLeast(grade, least);
  return {
    verdict: isEnough ? 'lasts' : 'falls short',
    life: null,
    stainless,
    sentences: [`${asked}; ${grade} is ${isEnough ? 'enough' : 'not enough'}`],
  };
}

/**
 * Tells whether a finish will do for a life in an environment, in words with the numbers. Zinc: life by ISO 9223. Stainless steel:
 * grade by Annex A of EN 1993-1-4 where the site is known; where it is not, "not known" in C4 and harsher and in salt. Plain steel lasts
 * in C1 only.
 *
 * Example: galvanised 55 µm, C5, 50 years → falls short, 6.5 to 13 years.
 */
export function adviseFinish(question: FinishQuestion): FinishAdvice {
  switch (question.finish) {
    case 'plain':
      return advisePlain(question);
    case 'stainless':
      return adviseStainless(question);
    case 'zinc':
    case 'galvanised':
      return adviseZinc(question);
  }
}
