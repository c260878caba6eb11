import type { PiecePhase } from '../../../assess/yard/piece-report.ts';
import styles from './phase-mark.module.css';

/** Shape and class of each phase on a field of 24: told apart without colour. */
const PHASES: Readonly<Record<PiecePhase, { readonly shape: string; readonly look: string }>> = {
  'not started': { shape: 'M4 4h16v16H4z', look: 'open' },
  'in the form': { shape: 'M4 4h16v16H4zM4 12h16', look: 'open' },
  cleared: { shape: 'M4 13l5 6L20 5', look: 'good' },
  held: { shape: 'M8 3h8l5 5v8l-5 5H8l-5-5V8z', look: 'bad' },
  poured: { shape: 'M4 4h16v16H4zM4 8h16M4 12h16M4 16h16', look: 'after' },
  stripped: { shape: 'M4 20h16M6 16V6h12v10z', look: 'after' },
  'opened up': { shape: 'M12 4a8 8 0 1 0 .01 0M12 9a3 3 0 1 0 .01 0', look: 'after' },
  surveyed: { shape: 'M12 3v18M3 12h18M12 7a5 5 0 1 0 .01 0', look: 'after' },
  'bolted up': { shape: 'M8 3h8l4 9-4 9H8l-4-9zM8 12l3 4 6-8', look: 'good' },
  scrapped: { shape: 'M4 4l16 16M20 4L4 20', look: 'bad' },
};

/** Where a piece is in its life: shape, colour and word. */
export function PhaseMark({ phase }: { readonly phase: PiecePhase }) {
  const { shape, look } = PHASES[phase];
  return (
    <span class={`${styles.phase} ${styles[look]}`}>
      <svg viewBox="0 0 24 24" aria-hidden="true">
        <path d={shape} />
      </svg>
      {phase}
    </span>
  );
}
