import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { call } from '../../src/web/parts/call.ts';

/** A server that sends parts of an answer, each after some time [ms]. */
function serve(parts: readonly string[], wait: number): void {
  vi.stubGlobal('fetch', async (_path: string, { signal }: { readonly signal: AbortSignal }) => {
    const bytes = parts.map((part) => new TextEncoder().encode(part));
    const body = new ReadableStream<Uint8Array>({
      start: (control) => {
        signal.addEventListener('abort', () => control.error(signal.reason));
      },
      pull: async (control) => {
        await new Promise((resolve) => setTimeout(resolve, wait));
        const next = bytes.shift();
        if (signal.aborted) return;
        if (next === undefined) control.close();
        else control.enqueue(next);
      },
    });
    return new Response(body);
  });
}

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

it('waits for a long answer that keeps coming on a weak line', async () => {
  const text = JSON.stringify({ name: 'Ø 12 '.repeat(8) });
  serve([...text], 2_000);
  const called = call('GET', '/api/jobs');
  await vi.advanceTimersByTimeAsync(2_000 * (text.length + 2));
  expect(await called).toEqual({ kind: 'answered', value: JSON.parse(text) });
});

it('gives up when nothing more comes, and when nothing comes at all', async () => {
  for (const parts of [['{"a":', '1}'], []]) {
    serve(parts, 21_000);
    const called = call('GET', '/api/jobs');
    await vi.advanceTimersByTimeAsync(20_500);
    expect(await called).toEqual({ kind: 'away' });
  }
});

it('puts signs together whose bytes come apart, and takes what is no JSON for no answer', async () => {
  vi.stubGlobal('fetch', async () => {
    const bytes = new TextEncoder().encode('"Ø𝄞"');
    return new Response(
      new ReadableStream({
        start: (control) => {
          for (const byte of bytes) control.enqueue(Uint8Array.of(byte));
          control.close();
        },
      }),
    );
  });
  expect(await call('GET', '/')).toEqual({ kind: 'answered', value: 'Ø𝄞' });
  vi.stubGlobal('fetch', async () => new Response('<html>', { status: 502 }));
  expect(await call('GET', '/')).toEqual({ kind: 'away' });
});
