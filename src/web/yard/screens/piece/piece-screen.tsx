import { useSignal } from '@preact/signals';
import { places } from '../../../pieces/places.ts';
import type { OpenPiece } from '../../../pieces/read-piece.ts';
import { FormPlan } from '../../parts/form-plan.tsx';
import { WithPiece } from '../../shell/with-piece.tsx';
import { headOfPiece, YardFrame } from '../../shell/yard-frame.tsx';
import { lookOfReport } from '../../state/look-of.ts';
import { NO_POUR } from '../pours/pours-screen.tsx';
import { PieceMore } from './piece-more.tsx';
import { PieceNotes } from './piece-notes.tsx';
import styles from './piece-screen.module.css';
import { PieceStages } from './piece-stages.tsx';

/** One casting: its form from above, what was done and what is left, stage by stage. */
export function PieceScreen({ piece }: { readonly piece: string }) {
  return <WithPiece id={piece}>{(open) => <Piece piece={open} />}</WithPiece>;
}

function Piece({ piece }: { readonly piece: OpenPiece }) {
  const isMore = useSignal(false);
  const { plan, report, head } = piece;
  if (isMore.value) return <PieceMore piece={piece} onBack={() => (isMore.value = false)} />;
  return (
    <YardFrame
      {...headOfPiece(piece)}
      stage={`${report.phase} · ${plan.setOut.bed?.name ?? 'no bed'}${head.pour === null ? '' : ` · pour ${head.pour}`}`}
      back={places.pour(head.pour ?? NO_POUR)}
      isFixed
      keys={<PieceStages piece={piece} onMore={() => (isMore.value = true)} />}
    >
      <div class={styles.piece}>
        <FormPlan setOut={plan.setOut} lookOf={lookOfReport(report)} />
        <PieceNotes piece={piece} />
      </div>
    </YardFrame>
  );
}
