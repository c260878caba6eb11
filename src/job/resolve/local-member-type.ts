import type { AnchorageGroup } from '../../engine/checks/anchorage-group.ts';

/** The concrete around a connection as the engine takes it, or why it cannot be given. */
export type LocalMember =
  | {
      readonly ok: true;
      readonly member: AnchorageGroup['member'];
      readonly assumptions: readonly string[];
      readonly notCovered: readonly string[];
    }
  | { readonly ok: false; readonly reasons: readonly string[] };

/** A length as it is written in sentences. */
export function showLength(length: number): string {
  return `${Math.round(length * 10) / 10} mm`;
}
