import { useLocation } from 'wouter-preact';
import { placesOf } from '../../../../say/number-runs.ts';
import { places } from '../../../pieces/places.ts';
import type { OpenPiece } from '../../../pieces/read-piece.ts';
import { useYard } from '../../../pieces/yard.ts';
import { TwoTaps } from '../../parts/two-taps.tsx';

/** The cage goes in: what is left of the stage before it cannot be measured afterwards, and is said first. */
export function CageKey({ piece }: { readonly piece: OpenPiece }) {
  const [, go] = useLocation();
  const { device } = useYard();
  const { report } = piece;
  const left = report.inserts.filter(({ item, state }) => item.stage === 1 && state !== 'good' && state !== 'accepted');
  const numbers = left.map(({ item }) => item.number);
  const isFormOpen = report.form.state !== 'good' && report.form.state !== 'accepted';
  const isLeft = numbers.length > 0 || isFormOpen;
  const leave = [
    ...(isFormOpen ? ['the check of the form'] : []),
    ...(numbers.length > 0 ? [placesOf(numbers)] : []),
  ].join(', ');
  const goIn = async () => {
    const text = isLeft
      ? `The cage goes in. Left from before: ${leave}.`
      : 'The cage goes in. Nothing is left from before.';
    await device.write({
      kind: 'comment',
      body: { text },
      piece: piece.id,
      item: null,
      checkKey: null,
      measuredAt: null,
      measuredBy: null,
    });
    go(places.walk(piece.id, 2));
  };
  return (
    <TwoTaps
      kind={isLeft ? 'plain' : 'main'}
      more={isLeft ? `${numbers.length + Number(isFormOpen)} left from before` : 'nothing left from before'}
      question="Does the cage go in now?"
      yes="The cage goes in"
      yesKind={isLeft ? 'stop' : 'main'}
      onYes={() => void goIn()}
      says={
        isLeft ? (
          <>
            <p>
              <strong>Left: {leave}.</strong>
            </p>
            <p>
              Under the cage it can no longer be taped. What is not checked before then stays open and may hold the
              pour.
            </p>
          </>
        ) : (
          <p>Everything before the cage is checked.</p>
        )
      }
    >
      The cage goes in now
    </TwoTaps>
  );
}
