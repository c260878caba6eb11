import type { Called } from '../../parts/call.ts';

/** Why a step of a round came to no end: nothing answered, or the server said no. */
export type Halt = { readonly kind: 'away' } | { readonly kind: 'refused'; readonly why: string };

/** A step of a round: done, or halted; what was done up to then stays done. */
export type Step<T> = { readonly kind: 'done'; readonly value: T } | Halt;

/** What halted a call that was not answered with what was asked for. */
export function haltOf<T>(called: Exclude<Called<T>, { readonly kind: 'answered' }>): Halt {
  if (called.kind === 'away') return { kind: 'away' };
  // What the server says to a program is not for the yard.
  if (called.status === 404)
    return { kind: 'refused', why: 'the job is not in its list any more; the office can put a removed one back' };
  return { kind: 'refused', why: called.error.message };
}
