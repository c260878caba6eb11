import { type ReadonlySignal, useSignal } from '@preact/signals';
import { type Draft, produce } from 'immer';
import type { Detail } from '../../../../job/documents/details.ts';
import type { Edit } from '../../../../job/edit/edit.ts';
import { putDetail } from '../../../../job/edit/plate/change-detail.ts';
import type { JobSession } from '../../state/session.ts';
import { takeEdit } from '../../state/take-edit.ts';

/** A detail as it would be, with the edit that makes it so everywhere. */
export interface PendingDetail {
  readonly detail: Detail;
  readonly changes: Edit['changes'];
  /** The job that it was made on: when that is another, it is made anew. */
  readonly label: string;
}

export interface Pending {
  readonly value: ReadonlySignal<PendingDetail | null>;
  /** Changes the detail that is being prepared. @returns why it may not be so; null: prepared */
  readonly change: (label: string, change: (detail: Draft<Detail>) => void) => string | null;
  readonly drop: () => void;
  /** Makes the prepared change. @returns why it may not stand */
  readonly take: () => string | null;
}

/** Changes of a standard detail gather here, until what follows them was seen and taken. */
export function usePending(session: JobSession, detail: Detail): Pending {
  const pending = useSignal<PendingDetail | null>(null);
  const prepare = (next: Detail, label: string): string | null => {
    const taken = takeEdit(session.file, label, putDetail(detail.id, next), session.issued.peek());
    if (taken.kind === 'refused') return taken.text;
    pending.value = taken.kind === 'same' ? null : { detail: next, changes: taken.edit.changes, label };
    return null;
  };
  return {
    value: pending,
    change: (label, change) =>
      prepare(produce(pending.peek()?.detail ?? detail, change), `Detail ${detail.id}: ${label}`),
    drop: () => {
      pending.value = null;
    },
    take: () => {
      const { value } = pending;
      if (value === null) return null;
      const why = session.commit(value.label.slice(0, 400), putDetail(detail.id, value.detail));
      if (why === null) pending.value = null;
      return why;
    },
  };
}
