import type { DeviceMeta, RecordDatabase } from './record-db.ts';

/** Key of the only entry of its store. */
export const META_KEY = 'device';
const LETTERS = 'abcdefghijklmnopqrstuvwxyz0123456789';
const ID_LENGTH = 16;

/** The id of an installation, drawn by chance. 252 is the greatest multiple of 36 in a byte: above it the draw would favour some. */
function drawDeviceId(): string {
  let id = '';
  while (id.length < ID_LENGTH) {
    for (const byte of crypto.getRandomValues(new Uint8Array(ID_LENGTH)))
      if (byte < 252 && id.length < ID_LENGTH) id += LETTERS[byte % LETTERS.length];
  }
  return id;
}

function makeMeta(): DeviceMeta {
  return {
    id: drawDeviceId(),
    chain: null,
    person: null,
    job: null,
    clock_s: null,
    head: null,
    lastSyncAt: null,
    isForkUnheeded: false,
  };
}

/** What this device is; made when it is asked for first, the same for every page. */
export function readMeta(db: RecordDatabase): Promise<DeviceMeta> {
  return changeMeta(db, (meta) => meta);
}

/** Changes what this device is, with nobody in between. */
export async function changeMeta(
  db: RecordDatabase,
  change: (meta: DeviceMeta) => DeviceMeta,
  durability: IDBTransactionDurability = 'strict',
): Promise<DeviceMeta> {
  const transaction = db.transaction('meta', 'readwrite', { durability });
  const kept = await transaction.store.get(META_KEY);
  const meta = kept ?? makeMeta();
  const changed = change(meta);
  if (changed !== kept) await transaction.store.put(changed, META_KEY);
  await transaction.done;
  return changed;
}

/** The device goes on under a new id, its chain starts anew: another one was found to write under the old. */
export function startAnew(meta: DeviceMeta): DeviceMeta {
  return { ...meta, id: drawDeviceId(), chain: null, isForkUnheeded: true };
}
