/**
 * Has the service worker keep the screens, so that they open without a connection. Where a page is not served safely (not over HTTPS and not from
 * this machine) browsers have none, and the screens work with a connection only.
 *
 * @returns whether there is one
 */
export async function registerServiceWorker(): Promise<boolean> {
  if (!('serviceWorker' in navigator)) return false;
  await navigator.serviceWorker.register('/sw.js');
  const { active } = await navigator.serviceWorker.ready;
  // The page is there: now what it may need later, without taking the line from it.
  active?.postMessage('keep the rest');
  return true;
}
