import { answerRequest } from './answer-request.ts';
import { TAKE_OVER } from './messages.ts';
import { forgetOthers, keepFirst, keepLater, type Precache } from './precache.ts';
import type { ServiceWorkerScope } from './scope.ts';

/** The build puts the list here. */
declare const PRECACHE: Precache;

// Safe: this script runs as a service worker only, and the types of pages leave that scope out.
const scope = globalThis as unknown as ServiceWorkerScope;

scope.addEventListener('install', (event) => event.waitUntil(keepFirst(PRECACHE)));
scope.addEventListener('activate', (event) => event.waitUntil(takeOver()));
scope.addEventListener('message', (event) =>
  event.waitUntil(event.data === TAKE_OVER ? scope.skipWaiting() : keepLater(PRECACHE)),
);
scope.addEventListener('fetch', (event) => {
  const answer = answerRequest(PRECACHE, scope.location.origin, event.request);
  if (answer !== null) event.respondWith(answer);
});

/** Where several pages are open, those of the older build may still ask for what it kept: it stays until one comes to be alone. */
async function takeOver(): Promise<void> {
  const open = await scope.clients.matchAll({ type: 'window' });
  if (open.length < 2) await forgetOthers(PRECACHE);
  await scope.clients.claim();
}
