import type { ComponentChildren } from 'preact';
import { places } from '../../pieces/places.ts';
import type { OpenPiece } from '../../pieces/read-piece.ts';
import { useYard } from '../../pieces/yard.ts';
import { Answer } from '../parts/answer.tsx';
import { BigLink } from '../parts/big-key.tsx';
import { ChoosePerson } from '../screens/start/choose-person.tsx';
import { usePiece } from '../state/use-piece.ts';
import { YardFrame } from './yard-frame.tsx';

export interface WithPieceProps {
  readonly id: string;
  /** Draws the screen once the piece is there. */
  readonly children: (piece: OpenPiece) => ComponentChildren;
}

/** A screen about a piece: waits for it, and says what to do where it cannot be shown. */
export function WithPiece({ id, children }: WithPieceProps) {
  const reading = usePiece(id);
  const { device } = useYard();
  if (reading.kind === 'open' && device.person.value === null)
    return (
      <YardFrame title="Who are you?" back={places.start()}>
        <ChoosePerson onChosen={() => {}} />
      </YardFrame>
    );
  if (reading.kind === 'open') return <>{children(reading.piece)}</>;
  if (reading.kind === 'reading')
    return (
      <YardFrame title="Piece" back={places.pours()}>
        <p aria-busy="true">Reading the piece from this device …</p>
      </YardFrame>
    );
  return (
    <YardFrame
      title="Piece"
      back={places.pours()}
      keys={
        <>
          <BigLink to={places.start()}>Choose the job</BigLink>
          <BigLink kind="main" to={places.pours()}>
            Pours
          </BigLink>
        </>
      }
    >
      <Answer kind="unsure" words="This piece cannot be shown">
        <p>{reading.why}</p>
      </Answer>
    </YardFrame>
  );
}
