import type { SetOutItem } from '../../../assess/set-out/set-out.ts';
import type { PieceReport } from '../../../assess/yard/piece-report.ts';
import type { SpotLook } from '../parts/form-plan.tsx';

const LOOKS = {
  open: 'open',
  'open again': 'again',
  good: 'good',
  out: 'out',
  accepted: 'accepted',
  conflict: 'conflict',
} as const satisfies Record<PieceReport['inserts'][number]['state'], SpotLook>;

/** How each insert of a piece looks on its plan. @param stage those of the other one stand back; null: all alike */
export function lookOfReport(report: PieceReport, stage: 1 | 2 | null = null): (item: SetOutItem) => SpotLook {
  const looks = new Map(report.inserts.map(({ item, state }) => [item.castIn.key, LOOKS[state]]));
  return (item) => {
    const look = looks.get(item.castIn.key) ?? 'open';
    return stage !== null && item.stage !== stage && look === 'open' ? 'other' : look;
  };
}
