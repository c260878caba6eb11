import type { InsertState, PiecePhase, PieceReport } from '../../../../assess/yard/piece-report.ts';
import { type ShownState, StateMark } from '../../../parts/state-mark.tsx';

/** Shape and colour of the states of inserts; the word always stands beside them. */
const INSERTS: Readonly<Record<InsertState, ShownState>> = {
  open: 'strength not checked',
  'open again': 'cannot be computed',
  good: 'passes',
  out: 'fails',
  accepted: 'not covered',
  conflict: 'fails',
};

const PHASES: Readonly<Record<PiecePhase, ShownState>> = {
  'not started': 'strength not checked',
  'in the form': 'computing',
  cleared: 'passes',
  held: 'fails',
  poured: 'passes',
  stripped: 'passes',
  'opened up': 'passes',
  surveyed: 'passes',
  'bolted up': 'passes',
  scrapped: 'not covered',
};

export function InsertMark({ state }: { readonly state: InsertState }) {
  return <StateMark state={INSERTS[state]} words={state} />;
}

/** Where a piece is in its life; what must not be overlooked takes the colour. */
export function PhaseMark({ report: { phase, flags } }: { readonly report: Pick<PieceReport, 'phase' | 'flags'> }) {
  if (flags.length > 0) return <StateMark state="fails" words={`${phase}, flagged`} />;
  return <StateMark state={PHASES[phase]} words={phase} />;
}
