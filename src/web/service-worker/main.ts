import { answerRequest } from './answer-request.ts';
import { forgetOthers, keepFirst, keepLater, type Precache } from './precache.ts';
import type { ServiceWorkerScope } from './scope.ts';

/** The build puts the list here. */
declare const PRECACHE: Precache;

// Safe: this script runs as a service worker only, and the types of pages leave that scope out.
const scope = globalThis as unknown as ServiceWorkerScope;

scope.addEventListener('install', (event) => event.waitUntil(keepFirst(PRECACHE)));
scope.addEventListener('activate', (event) =>
  event.waitUntil(forgetOthers(PRECACHE).then(() => scope.clients.claim())),
);
scope.addEventListener('message', (event) => event.waitUntil(keepLater(PRECACHE)));
scope.addEventListener('fetch', (event) => {
  const answer = answerRequest(PRECACHE, scope.location.origin, event.request);
  if (answer !== null) event.respondWith(answer);
});
