import type { WireError } from '../../wire/errors.ts';

/** What a call to the server came to. `away`: nothing answered, so nothing is known of what became of it. */
export type Called<T> =
  | { readonly kind: 'answered'; readonly value: T }
  | { readonly kind: 'refused'; readonly status: number; readonly error: WireError }
  | { readonly kind: 'away' };

/** When the server has been silent for so long, nothing more is waited for [ms]. A long answer on a weak line takes longer than that, and comes. */
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
  const control = new AbortController();
  const giveUp = () => control.abort();
  let silence = setTimeout(giveUp, PATIENCE);
  const hear = () => {
    clearTimeout(silence);
    silence = setTimeout(giveUp, PATIENCE);
  };
  try {
    response = await fetch(path, {
      method,
      ...(body === undefined ? {} : { body: JSON.stringify(body), headers: { 'content-type': 'application/json' } }),
      signal: control.signal,
    });
    answer = JSON.parse(await readText(response, hear));
  } catch {
    return { kind: 'away' };
  } finally {
    clearTimeout(silence);
  }
  // The server's answers keep to the schemas of wire/: its own tests see to that.
  if (response.ok) return { kind: 'answered', value: answer as T };
  return { kind: 'refused', status: response.status, error: answer as WireError };
}

/** @param onPart after each part of the text that has come */
async function readText({ body }: Response, onPart: () => void): Promise<string> {
  if (body === null) return '';
  const [reader, decoder] = [body.getReader(), new TextDecoder()];
  let text = '';
  for (let part = await reader.read(); !part.done; part = await reader.read()) {
    onPart();
    text += decoder.decode(part.value, { stream: true });
  }
  return text + decoder.decode();
}

/** Why a call came to nothing, for the person who asked; null where it came to something. */
export function tellCall<T>(called: Called<T>): string | null {
  if (called.kind === 'answered') return null;
  return called.kind === 'away' ? 'The server does not answer. Nothing is lost; try again.' : called.error.message;
}
