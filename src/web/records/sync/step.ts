import type { Called } from '../../parts/call.ts';

/** Why a step of a round came to no end: nothing answered, or the server said no. */
export type Halt = { readonly kind: 'away' } | { readonly kind: 'refused'; readonly why: string };

/** A step of a round: done, or halted; what was done up to then stays done. */
export type Step<T> = { readonly kind: 'done'; readonly value: T } | Halt;

/** What halted a call that was not answered with what was asked for. */
export function haltOf<T>(called: Exclude<Called<T>, { readonly kind: 'answered' }>): Halt {
  return called.kind === 'away' ? { kind: 'away' } : { kind: 'refused', why: called.error.message };
}
