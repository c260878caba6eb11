import { useEffect, useState } from 'preact/hooks';
import { type Deviation, listDeviations } from '../../../assess/learn/deviations.ts';
import { type Learned, learnScatter } from '../../../assess/learn/learn-scatter.ts';
import { judgeExactHits, listReadings, type TapedReading } from '../../../assess/yard/exact-hits.ts';
import type { PieceState } from '../../../records/fold/piece-state.ts';
import type { OpenPiece } from '../read-piece.ts';

/** As long as this the page does nothing else [ms]. */
const SLICE = 40;

/** What one piece teaches, in the state that its records have. */
interface Taught extends Pick<OpenPiece, 'plan' | 'context'> {
  readonly deviations: readonly Deviation[];
  readonly readings: readonly TapedReading[];
}

/** It goes when the state goes. */
const known = new WeakMap<PieceState, Taught>();

function readTaught({ context, plan, state, head }: OpenPiece): Taught {
  const had = known.get(state);
  if (had !== undefined && had.plan === plan && had.context === context) return had;
  const taught = {
    ...{ plan, context, deviations: listDeviations(context, plan, state, head.bed) },
    readings: listReadings(
      state.history.filter(({ id }) => !state.withdrawn.has(id)),
      plan,
    ),
  };
  known.set(state, taught);
  return taught;
}

function learn(taught: readonly Taught[]): Learned {
  const hits = judgeExactHits(taught.flatMap(({ readings }) => readings));
  const copied = hits.filter(({ verdict }) => verdict === 'far more than by taping').map(({ person }) => person);
  return learnScatter(
    taught.flatMap(({ deviations }) => deviations),
    new Set(copied),
  );
}

/**
 * What the records of pieces teach, worked out piece by piece so that the page breathes between.
 * @param pieces null: not all are there yet
 * @returns null: still to come; what was known before stays meanwhile
 */
export function useLearned(pieces: readonly OpenPiece[] | null): Learned | null {
  const [learned, setLearned] = useState<Learned | null>(null);
  useEffect(() => {
    if (pieces === null) return;
    const state = { isGone: false };
    const workOut = async () => {
      const taught: Taught[] = [];
      let slice = performance.now();
      for (const piece of pieces) {
        taught.push(readTaught(piece));
        if (performance.now() - slice < SLICE) continue;
        await new Promise((resolve) => setTimeout(resolve));
        if (state.isGone) return;
        slice = performance.now();
      }
      setLearned(learn(taught));
    };
    // The screen is drawn first.
    const timer = setTimeout(() => void workOut());
    return () => {
      state.isGone = true;
      clearTimeout(timer);
    };
  }, [pieces?.length, ...(pieces ?? [])]);
  return learned;
}
