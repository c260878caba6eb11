import { type Remote, wrap } from 'comlink';

/** Address that the build wrote into the page's head. */
function readAddress(name: string): string {
  const address = document.querySelector<HTMLMetaElement>(`meta[name="${name}"]`)?.content;
  if (address === undefined)
    throw new Error(`the page names no "${name}" in its head; expected the address of a script`);
  return address;
}

/** A worker with the promise that rejects when its script does not come or breaks off. */
function openWorker<T>(name: string): { readonly remote: Remote<T>; readonly failed: Promise<never> } {
  const worker = new Worker(readAddress(name), { type: 'module', name });
  const failed = new Promise<never>((_, reject) => {
    worker.addEventListener('error', ({ message }) => {
      worker.terminate();
      reject(new Error(`the part "${name}" of the page did not start or broke off${message ? `: ${message}` : ''}`));
    });
  });
  return { remote: wrap<T>(worker), failed };
}

/**
 * Gives a function that asks a worker: opened at the first question, the same one for the whole page, and anew after it failed.
 * A question rejects as the worker's method does, and when the worker itself fails, which would leave it without an answer for ever.
 *
 * @param name of the meta tag with the worker's address
 */
export function shareWorker<T>(name: string): <R>(ask: (worker: Remote<T>) => Promise<R>) => Promise<R> {
  let opened: ReturnType<typeof openWorker<T>> | null = null;
  const open = () => {
    const worker = openWorker<T>(name);
    worker.failed.catch(() => {
      opened = null;
    });
    return worker;
  };
  return (ask) => {
    opened ??= open();
    return Promise.race([ask(opened.remote), opened.failed]);
  };
}
