import { useCallback } from 'preact/hooks';
import type { AsCastConnection } from '../../../../assess/as-cast/as-cast-report.ts';
import { useAsCast } from '../../../pieces/as-cast/use-as-cast.ts';
import { useRemedies } from '../../../pieces/as-cast/use-remedies.ts';
import { places } from '../../../pieces/places.ts';
import type { OpenPiece } from '../../../pieces/read-piece.ts';
import { Answer } from '../../parts/answer.tsx';
import { BigLink } from '../../parts/big-key.tsx';
import { WithPiece } from '../../shell/with-piece.tsx';
import { headOfPiece, YardFrame } from '../../shell/yard-frame.tsx';
import { FitList } from './fit-list.tsx';
import { FitOne } from './fit-one.tsx';

/** Whether brackets go on as their inserts came out: all of a piece, or one. */
export function FitScreen({ piece, connection }: { readonly piece: string; readonly connection: string | null }) {
  return <WithPiece id={piece}>{(open) => <Fit piece={open} connection={connection} />}</WithPiece>;
}

/** Somebody must still say what becomes of it. */
function isOpen({ state }: AsCastConnection): boolean {
  return state === 'fine as it is' || state === 'needs a remedy';
}

function Fit({ piece, connection }: { readonly piece: OpenPiece; readonly connection: string | null }) {
  const report = useAsCast(piece);
  const isWanted = useCallback(
    (found: AsCastConnection) => isOpen(found) && (connection === null || found.connection.key === connection),
    [connection],
  );
  const { done, of, isReady } = useRemedies(report, isWanted);
  const frame = {
    ...headOfPiece(piece),
    stage: 'does it go on?',
    back: connection === null ? places.piece(piece.id) : places.fit(piece.id),
  };
  if (report === null || !isReady)
    return (
      <YardFrame {...frame}>
        <p aria-busy="true">
          {of === 0 ? 'Computing as it came out …' : `Computing what may be done: ${done} of ${of} …`}
        </p>
      </YardFrame>
    );
  if (connection === null) return <FitList piece={piece} report={report} frame={frame} />;
  const found = report.connections.find((one) => one.connection.key === connection);
  if (found !== undefined) return <FitOne piece={piece} found={found} frame={frame} />;
  return (
    <YardFrame
      {...frame}
      keys={
        <BigLink kind="main" to={places.fit(piece.id)}>
          All connections
        </BigLink>
      }
    >
      <Answer kind="unsure" words="This panel has no such connection">
        <p>The revision in force may have another. Go to all connections of the piece.</p>
      </Answer>
    </YardFrame>
  );
}
