import type { ComponentChildren } from 'preact';
import { Link } from 'wouter-preact';
import { Empty } from '../../../parts/notice.tsx';
import type { OpenPiece } from '../../../pieces/read-piece.ts';
import type { Yard } from '../../../pieces/yard.ts';
import { addresses } from '../../state/addresses.ts';
import { useOffice } from '../../state/office.ts';
import { DeskFrame } from './desk-frame.tsx';

/** What a screen about one piece is drawn with. */
export interface DeskPieceProps {
  /** Id of the job. */
  readonly job: string;
  readonly yard: Yard;
  readonly piece: OpenPiece;
}

/** A screen of the office about one piece: waits for it, and says where it cannot be shown. */
export function DeskPiece({
  id,
  children,
}: {
  readonly id: string;
  readonly children: (open: DeskPieceProps) => ComponentChildren;
}) {
  const { session } = useOffice();
  return (
    <DeskFrame job={session.id}>
      {(yard) => {
        const reading = yard.piece(id).value;
        if (reading.kind === 'reading') return <p aria-busy="true">Reading the piece …</p>;
        if (reading.kind === 'open') return <>{children({ job: session.id, yard, piece: reading.piece })}</>;
        return (
          <Empty title="This piece cannot be shown">
            <p>{reading.why}</p>
            <Link href={addresses.yard(session.id)}>All pieces</Link>
          </Empty>
        );
      }}
    </DeskFrame>
  );
}
