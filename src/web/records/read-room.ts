import type { DeviceRoom } from './record-device.ts';

/** From here on a person is warned. */
const NEARLY_FULL = 0.8;

const UNKNOWN: DeviceRoom = { used_bytes: null, quota_bytes: null, isKept: false, isNearlyFull: false };

/** How much room there is; a browser that does not say gives nulls. */
export async function readRoom(): Promise<DeviceRoom> {
  // Pages that are not served safely have none.
  const { storage } = navigator as { storage?: StorageManager };
  if (storage === undefined) return UNKNOWN;
  const said = await Promise.all([storage.estimate(), storage.persisted()]).catch(() => null);
  if (said === null) return UNKNOWN;
  const [{ usage, quota }, isKept] = said;
  const isNearlyFull = usage !== undefined && quota !== undefined && usage > NEARLY_FULL * quota;
  return { used_bytes: usage ?? null, quota_bytes: quota ?? null, isKept, isNearlyFull };
}

/** Asks the browser not to clear the data away when room is short. */
export async function askToKeep(): Promise<boolean> {
  const { storage } = navigator as { storage?: StorageManager };
  return storage === undefined ? false : await storage.persist();
}
