import type { WireError } from '../../wire/errors.ts';

/** What a call to the server came to. `away`: nothing answered, so nothing is known of what became of it. */
export type Called<T> =
  | { readonly kind: 'answered'; readonly value: T }
  | { readonly kind: 'refused'; readonly status: number; readonly error: WireError }
  | { readonly kind: 'away' };

/** Longer than this no answer is waited for [ms]. */
const PATIENCE = 20_000;

/**
 * Calls the server that the page came from.
 *
 * @param path with its parameters in it, each through `encodeURIComponent`
 * @param body sent as JSON; undefined: none
 */
export async function call<T>(method: 'GET' | 'POST' | 'DELETE', path: string, body?: unknown): Promise<Called<T>> {
  let response: Response;
  let answer: unknown;
  try {
    response = await fetch(path, {
      method,
      ...(body === undefined ? {} : { body: JSON.stringify(body), headers: { 'content-type': 'application/json' } }),
      signal: AbortSignal.timeout(PATIENCE),
    });
    answer = await response.json();
  } catch {
    return { kind: 'away' };
  }
  // The server's answers keep to the schemas of wire/: its own tests see to that.
  if (response.ok) return { kind: 'answered', value: answer as T };
  return { kind: 'refused', status: response.status, error: answer as WireError };
}

/** Why a call came to nothing, for the person who asked; null where it came to something. */
export function tellCall<T>(called: Called<T>): string | null {
  if (called.kind === 'answered') return null;
  return called.kind === 'away' ? 'The server does not answer. Nothing is lost; try again.' : called.error.message;
}
