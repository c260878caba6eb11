import { computed, type ReadonlySignal } from '@preact/signals';
import { findHead, type PieceHead } from '../../assess/yard/piece-head.ts';
import type { PiecePlan } from '../../assess/yard/piece-plan.ts';
import type { PieceReport, YardContext } from '../../assess/yard/piece-report.ts';
import { planPiece } from '../../assess/yard/plan-piece.ts';
import { reportPiece } from '../../assess/yard/report-piece.ts';
import type { PieceState } from '../../records/fold/piece-state.ts';
import type { RecordDevice } from '../records/record-device.ts';

/** What a piece is read from: the yard that it lies in. */
interface PieceGround {
  readonly device: Pick<RecordDevice, 'piece'>;
  readonly context: ReadonlySignal<YardContext | null>;
  readonly planned: ReadonlySignal<ReadonlyMap<string, PieceHead>>;
}

/** Everything that a screen says about one piece. */
export interface OpenPiece {
  readonly id: string;
  /** What it is marked as now, and where it lies. */
  readonly head: PieceHead;
  readonly plan: PiecePlan;
  readonly report: PieceReport;
  readonly context: YardContext;
  readonly state: PieceState;
}

/** `reading`: not from the device yet. `absent`: it cannot be shown; why, and what to do. */
export type PieceReading =
  | { readonly kind: 'reading' }
  | { readonly kind: 'absent'; readonly why: string }
  | { readonly kind: 'open'; readonly piece: OpenPiece };

/** The same piece is planned again only when what it is, or the revision, changed: a record changes its report alone. */
export function readPiece(
  yard: PieceGround,
  id: string,
  isRead: ReadonlySignal<boolean>,
): ReadonlySignal<PieceReading> {
  const state = yard.device.piece(id);
  const head = computed(() => findHead(state.value, yard.planned.value.get(id) ?? null));
  const mark = computed(() => head.value?.mark ?? null);
  const bed = computed(() => head.value?.bed ?? null);
  const plan = computed(() => {
    const context = yard.context.value;
    if (context === null || mark.value === null || !context.index.panels.has(mark.value)) return null;
    const beds = context.index.file.library.yard.beds;
    return planPiece(context.index, {
      id,
      mark: mark.value,
      bed: beds.find((one) => one.id === bed.value) ?? null,
    });
  });
  return computed((): PieceReading => {
    const context = yard.context.value;
    if (context === null)
      return { kind: 'absent', why: 'No job is on this device, or none of its revisions is for construction.' };
    if (!isRead.value) return { kind: 'reading' };
    if (head.value === null)
      return {
        kind: 'absent',
        why: 'No pour plans this piece and no record names it. Go back and find it by its mark.',
      };
    if (plan.value === null)
      return {
        kind: 'absent',
        why: `Revision ${context.revision.letter} has no panel ${head.value.mark}. The records of this piece are kept; ask the office.`,
      };
    const { mark: name, serial } = head.value;
    const report = reportPiece(context, plan.value, state.value, { mark: name, serial });
    return {
      kind: 'open',
      piece: { id, head: head.value, plan: plan.value, report, context, state: state.value },
    };
  });
}
