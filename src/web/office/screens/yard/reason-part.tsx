import { type Signal, useSignal } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import { TextField } from '../../../parts/field.tsx';
import { Notice } from '../../../parts/notice.tsx';

/** As long as a record can hold. */
const LONGEST = 2000;

export interface Reasoning {
  readonly reason: Signal<string>;
  /** Why nothing was written; null: nothing failed. */
  readonly failed: Signal<string | null>;
}

export function useReasoning(): Reasoning {
  return { reason: useSignal(''), failed: useSignal<string | null>(null) };
}

/**
 * The end of a dialog that writes a decision: its reason, what stands against it or who makes it, and what failed. That stays until the next try: were it
 * to go as the field is left, the key would move away from under the press that leaves it.
 */
export function ReasonPart({
  of: { reason, failed },
  placeholder,
  stop,
  children,
}: {
  readonly of: Reasoning;
  readonly placeholder: string;
  /** Why it is not possible so; null: it is. */
  readonly stop: string | null;
  /** By whom it is decided. */
  readonly children: ComponentChildren;
}) {
  return (
    <>
      <TextField
        label="Reason"
        value={reason.value}
        placeholder={placeholder}
        onChange={(text) => {
          if (text.length > LONGEST) return `expected at most ${LONGEST} signs`;
          reason.value = text;
          return null;
        }}
      />
      {stop !== null ? (
        <Notice kind="note" title="Not possible so">
          {stop}
        </Notice>
      ) : (
        children
      )}
      {failed.value !== null && (
        <Notice kind="fault" title="Not written">
          {failed.value}
        </Notice>
      )}
    </>
  );
}
