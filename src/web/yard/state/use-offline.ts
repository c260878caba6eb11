import { useEffect, useState } from 'preact/hooks';
import { useYard } from '../../pieces/yard.ts';
import { type OfflineWords, tellOffline } from './offline-words.ts';

/** Whether this page opens without the network; follows the service worker. */
export function useOffline(): OfflineWords {
  const { room } = useYard().device;
  const hasServiceWorker = 'serviceWorker' in navigator;
  const [isKeptReady, setReady] = useState(false);
  useEffect(() => {
    if (!hasServiceWorker) return;
    void navigator.serviceWorker.ready.then(({ active }) => setReady(active !== null));
  }, [hasServiceWorker]);
  return tellOffline({
    isSecure: globalThis.isSecureContext,
    hasServiceWorker,
    isKeptReady,
    isStoreKept: room.value.quota_bytes === null ? null : room.value.isKept,
  });
}
