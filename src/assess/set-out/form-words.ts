import type { Panel } from '../../job/documents/panel.ts';
import type { Bed } from '../../job/documents/yard.ts';
import type { FormWords } from './set-out.ts';

/** What is said where no bed is named. */
const WITHOUT_BED: FormWords = { start: 'end 1', finish: 'end 2', railA: 'rail 1', railB: 'rail 2' };

/** The yard's own names of the four sides of the form. */
export function findFormWords(bed: Bed | null): FormWords {
  return bed === null ? WITHOUT_BED : bed.names;
}

/** The end and the rail that meet at the datum corner: x counts from the end, y from the rail. */
export function findDatumSides(
  words: FormWords,
  datum: Panel['inForm']['datum'],
): { readonly end: string; readonly otherEnd: string; readonly rail: string; readonly otherRail: string } {
  const isStart = datum.endsWith('left');
  const isRailA = datum.startsWith('bottom');
  return {
    end: isStart ? words.start : words.finish,
    otherEnd: isStart ? words.finish : words.start,
    rail: isRailA ? words.railA : words.railB,
    otherRail: isRailA ? words.railB : words.railA,
  };
}

/** The datum corner in words: where the end and the rail meet. */
export function nameDatum(words: FormWords, datum: Panel['inForm']['datum']): string {
  const { end, rail } = findDatumSides(words, datum);
  return `${end} / ${rail}`;
}
