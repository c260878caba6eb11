import { type ReadonlySignal, signal } from '@preact/signals';
import { KEEP_REST, TAKE_OVER } from '../service-worker/messages.ts';

/** A page may stay open for days: how often it asks for a newer build [ms]. */
const ASKS_EVERY = 3_600_000;

const waiting = signal<ServiceWorker | null>(null);

/** A newer build is on this device and waits until a person takes it, or until the last page of this one is closed. */
export const newVersion: ReadonlySignal<ServiceWorker | null> = waiting;

/** Loads this page anew in the newer build; nothing without one. Never done by itself: somebody may be in the middle of a check. */
export function takeNewVersion(): void {
  const newer = waiting.peek();
  if (newer === null) return;
  navigator.serviceWorker.addEventListener('controllerchange', () => location.reload(), { once: true });
  newer.postMessage(TAKE_OVER);
}

/**
 * Has the service worker keep the screens, so that they open without a connection. Where a page is not served safely (not over HTTPS and not from
 * this machine) browsers have none, and the screens work with a connection only.
 *
 * @returns whether there is one
 */
export async function registerServiceWorker(): Promise<boolean> {
  if (!('serviceWorker' in navigator)) return false;
  await navigator.serviceWorker.register('/sw.js');
  const registration = await navigator.serviceWorker.ready;
  watch(registration);
  // The page is there: now what it may need later, without taking the line from it.
  registration.active?.postMessage(KEEP_REST);
  return true;
}

/** Follows whether a newer build has come. */
function watch(registration: ServiceWorkerRegistration): void {
  const look = () => {
    // The first one ever takes over by itself.
    waiting.value = navigator.serviceWorker.controller === null ? null : registration.waiting;
  };
  look();
  registration.addEventListener('updatefound', () => registration.installing?.addEventListener('statechange', look));
  // Without a server there is nothing newer to be had.
  const ask = () => void registration.update().catch(() => {});
  setInterval(ask, ASKS_EVERY);
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'visible') ask();
  });
}
