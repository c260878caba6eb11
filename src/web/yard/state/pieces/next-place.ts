import type { PieceReport } from '../../../../assess/yard/piece-report.ts';

export type NextPlace = 'form' | 'stage 1' | 'stage 2' | 'clearance' | 'screed' | 'after' | 'survey' | 'fit' | null;

/** Where the work on a piece goes on: the first thing that is not done, in the order of the work. Null: nothing is left here. */
export function findNextPlace({ phase, form, counts, screed }: PieceReport): NextPlace {
  if (phase === 'scrapped' || phase === 'bolted up') return null;
  if (phase === 'opened up') return 'survey';
  // What does not go on, or waits for a decision, is seen before anything is bolted: from there the way goes on to the bolts.
  if (phase === 'surveyed') return 'fit';
  if (phase === 'stripped') return 'after';
  if (phase === 'poured') return screed.left > 0 ? 'screed' : 'after';
  if (phase === 'cleared') return 'clearance';
  if (form.state !== 'good' && form.state !== 'accepted') return 'form';
  if (counts[1].left > 0) return 'stage 1';
  return counts[2].left > 0 ? 'stage 2' : 'clearance';
}
