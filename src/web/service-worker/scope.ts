/** What a service worker has that a page has not: the parts that are used here, as the standard names them. */
export interface ServiceWorkerScope {
  readonly location: { readonly origin: string };
  readonly clients: {
    claim(): Promise<void>;
    /** Pages that this worker answers. */
    matchAll(options: { readonly type: 'window' }): Promise<readonly unknown[]>;
  };
  skipWaiting(): Promise<void>;
  addEventListener(type: 'install' | 'activate', listener: (event: LastingEvent) => void): void;
  addEventListener(type: 'message', listener: (event: SpokenEvent) => void): void;
  addEventListener(type: 'fetch', listener: (event: RequestEvent) => void): void;
}

/** An event that keeps the worker alive until a promise is settled. */
export interface LastingEvent extends Event {
  waitUntil(promise: Promise<unknown>): void;
}

/** What a page said. */
export interface SpokenEvent extends LastingEvent {
  readonly data: unknown;
}

export interface RequestEvent extends LastingEvent {
  readonly request: Request;
  respondWith(answer: Promise<Response>): void;
}
