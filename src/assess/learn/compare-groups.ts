import { compareMeans, compareVariances } from '../../engine/statistics/tests.ts';
import type { Deviation } from './deviations.ts';

/** What sets a group apart from all others of its grouping, beyond chance. */
export interface GroupDifference {
  /** Its scatter differs; the other way round its probability by chance, corrected for how often was asked. */
  readonly scatter: { readonly probability: number; readonly ratio: number };
  /** The larger of the differences of the two means [mm], with its sign and axis. */
  readonly bias: { readonly probability: number; readonly axis: 'x' | 'y'; readonly by: number };
}

/** Rarer than that by chance, after correction: it is told. */
export const RARE = 0.05;

/**
 * Holds each group against all the others: variances by the F test, means by Welch's t test, both axes; the probabilities of a whole grouping are corrected
 * for their number by Holm's way, so that among twenty men one is not told by chance.
 * @param least smaller groups, and groups that leave fewer others, are not compared
 */
export function compareWithRest(
  groups: readonly (readonly Deviation[])[],
  least: number,
): readonly (GroupDifference | null)[] {
  const raw = groups.map((own) => {
    const rest = groups.filter((other) => other !== own).flat();
    return own.length < least || rest.length < least ? null : compare(own, rest);
  });
  const asked = raw.flatMap((one) => (one === null ? [] : [one.scatter.probability, one.bias.probability]));
  const corrected = correctByHolm(asked);
  let at = 0;
  return raw.map((one) => {
    if (one === null) return null;
    const [scatter, bias] = [corrected[at]!, corrected[at + 1]!];
    at += 2;
    return { scatter: { ...one.scatter, probability: scatter }, bias: { ...one.bias, probability: bias } };
  });
}

function compare(own: readonly Deviation[], rest: readonly Deviation[]): GroupDifference {
  const values = (of: readonly Deviation[], axis: 'x' | 'y') => of.map((one) => one[axis]);
  const variances = (['x', 'y'] as const).map((axis) => compareVariances(values(own, axis), values(rest, axis)));
  const means = (['x', 'y'] as const).map((axis) => ({ axis, ...compareMeans(values(own, axis), values(rest, axis)) }));
  const variance = variances[0]!.probability <= variances[1]!.probability ? variances[0]! : variances[1]!;
  const mean = means[0]!.probability <= means[1]!.probability ? means[0]! : means[1]!;
  // Of two axes the rarer is taken: asked twice.
  const twice = (probability: number) => Math.min(1, 2 * probability);
  return {
    scatter: { probability: twice(variance.probability), ratio: Math.sqrt(variance.ratio) },
    bias: { probability: twice(mean.probability), axis: mean.axis, by: mean.difference },
  };
}

/** Probabilities corrected for their number. Source: S. Holm (1979): the k-th smallest of m times m − k + 1, never below the one before. */
export function correctByHolm(probabilities: readonly number[]): readonly number[] {
  const order = probabilities.map((_, i) => i).sort((a, b) => probabilities[a]! - probabilities[b]!);
  const corrected = new Array<number>(probabilities.length).fill(1);
  let before = 0;
  order.forEach((index, rank) => {
    before = Math.max(before, Math.min(1, probabilities[index]! * (probabilities.length - rank)));
    corrected[index] = before;
  });
  return corrected;
}
