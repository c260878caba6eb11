import { listNominalLengths } from '../../engine/hardware/bolt-dimensions.ts';
import {
  type BoltPath,
  chooseLength,
  findLengthLimits,
  type PackerRange,
  placeBolt,
} from '../../engine/hardware/bolt-length.ts';
import { explainMissing } from '../../engine/hardware/bolt-notes.ts';
import type { CardLength } from './bolt-up-report.ts';
import { liftRange } from './packer-ranges.ts';

/** Standard lengths of hexagon bolts (ISO 4017, ISO 4014), the shorter first [mm]. */
export const STANDARD_LENGTHS: readonly number[] = [
  ...new Set([...listNominalLengths('ISO 4017'), ...listNominalLengths('ISO 4014')]),
].sort((a, b) => a - b);

/** Lengths that differ by less than this are taken for one another from a bucket [mm] (common practice). */
const ALIKE = 15;

/** The shortest standard length that serves every one of these bolts, so that nothing can be swapped; null: none does. */
function findCommon(paths: readonly BoltPath[], range: PackerRange): number | null {
  const limits = paths.map((path) => findLengthLimits(path, range));
  const shortest = Math.max(...limits.map(([least]) => least));
  const longest = Math.min(...limits.map(([, most]) => most));
  return STANDARD_LENGTHS.find((length) => length >= shortest - 1e-9 && length <= longest + 1e-9) ?? null;
}

/**
 * Lengths for the bolts of one connection over a range of packers, in the order of its bolts: one length for all where one serves, else each its own.
 * @param lift how far the foremost insert stands out of the face [mm]
 */
export function findCardLengths(paths: readonly BoltPath[], packers: PackerRange, lift: number): readonly CardLength[] {
  const range = liftRange(packers, lift);
  const common = findCommon(paths, range);
  return paths.map((path): CardLength => {
    const choice = common === null ? chooseLength(path, STANDARD_LENGTHS, range) : placeBolt(path, common, range);
    if (choice !== null) return { packers, choice, why: null };
    const why = explainMissing({ stock: STANDARD_LENGTHS }, { path }, range);
    return { packers, choice: null, why: `${why}; the design engineer decides` };
  });
}

/** Warns of lengths of one thread that are easily taken for one another: runs of neighbours, each in one sentence. @param lengths mm, in any order */
export function warnOfAlikeLengths(thread: string, lengths: readonly number[]): readonly string[] {
  const runs: number[][] = [];
  for (const length of [...new Set(lengths)].sort((a, b) => a - b)) {
    const run = runs.at(-1);
    if (run !== undefined && length - run.at(-1)! < ALIKE) run.push(length);
    else runs.push([length]);
  }
  return runs
    .filter((run) => run.length > 1)
    .map((run) => `${thread} × ${run.join(', ')} look alike: measure each under the head before it goes in`);
}
