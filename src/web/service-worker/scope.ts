/** What a service worker has that a page has not: the parts that are used here, as the standard names them. */
export interface ServiceWorkerScope {
  readonly location: { readonly origin: string };
  readonly clients: { claim(): Promise<void> };
  addEventListener(type: 'install' | 'activate' | 'message', listener: (event: LastingEvent) => void): void;
  addEventListener(type: 'fetch', listener: (event: RequestEvent) => void): void;
}

/** An event that keeps the worker alive until a promise is settled. */
export interface LastingEvent extends Event {
  waitUntil(promise: Promise<unknown>): void;
}

export interface RequestEvent extends LastingEvent {
  readonly request: Request;
  respondWith(answer: Promise<Response>): void;
}
