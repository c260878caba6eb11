import { placesOf } from '../../../../say/number-runs.ts';
import type { OpenPiece } from '../../../pieces/read-piece.ts';
import { Answer } from '../../parts/answer.tsx';
import { findNextStop } from '../../state/walk/stop-state.ts';
import type { WalkSession } from '../../state/walk/walk-session.ts';
import styles from './walk-screen.module.css';

/** Nothing is left to look at in this stage: what came of it. */
export function WalkEnd({ walk, piece }: { readonly walk: WalkSession; readonly piece: OpenPiece }) {
  const { report } = piece;
  const { done, left, out } = report.counts[walk.stage];
  const stops = walk.stops();
  const bad = report.inserts
    .filter(({ item, state }) => item.stage === walk.stage && (state === 'out' || state === 'conflict'))
    .map(({ item }) => item.number);
  if (stops.length === 0)
    return <Answer kind="plain" words={`Nothing is set ${walk.stage === 1 ? 'before the cage' : 'with the cage'}`} />;
  return (
    <>
      {bad.length > 0 ? (
        <Answer kind="wrong" words={`All looked at. Out: ${placesOf(bad)}`}>
          <p>Put them right and measure again, or let somebody decide who may.</p>
        </Answer>
      ) : findNextStop(stops, 0) === null ? (
        <Answer kind="good" words={walk.stage === 1 ? 'All good before the cage' : 'All good before the pour'} />
      ) : (
        <Answer kind="move" words="Not everything is looked at" />
      )}
      <p class={styles.counts}>
        <span>
          <strong>{done}</strong> done
        </span>
        <span>
          <strong>{left}</strong> left
        </span>
        <span>
          <strong>{out}</strong> out
        </span>
      </p>
    </>
  );
}
