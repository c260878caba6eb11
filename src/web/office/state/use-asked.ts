import { useEffect, useState } from 'preact/hooks';

/** What a question came to; while it is asked anew the last answer stays in sight. */
export interface Asked<T> {
  readonly value: T | null;
  readonly isBusy: boolean;
  /** Why there is no answer. */
  readonly why: string | null;
}

/** Why something failed, as words. */
export function tellError(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}

/**
 * Asks a worker or the server, and anew when one of `on` is another.
 * @param ask null: nothing to ask now
 */
export function useAsked<T>(ask: (() => Promise<T>) | null, on: readonly unknown[]): Asked<T> {
  const [asked, setAsked] = useState<Asked<T>>({ value: null, isBusy: ask !== null, why: null });
  useEffect(() => {
    if (ask === null) {
      setAsked({ value: null, isBusy: false, why: null });
      return;
    }
    const state = { isGone: false };
    setAsked((before) => ({ ...before, isBusy: true, why: null }));
    ask().then(
      (value) => {
        if (!state.isGone) setAsked({ value, isBusy: false, why: null });
      },
      (error: unknown) => {
        if (!state.isGone) setAsked((before) => ({ ...before, isBusy: false, why: tellError(error) }));
      },
    );
    return () => {
      state.isGone = true;
    };
  }, on);
  return asked;
}
