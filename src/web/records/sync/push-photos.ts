import type { RecordDatabase } from '../record-db.ts';
import { recordCalls } from './record-calls.ts';
import { haltOf, type Step } from './step.ts';

/** Names of photos that are asked about in one call. */
const PHOTOS_A_CALL = 200;

/**
 * Sends photos that the server does not have, one after another; `refused`: why it would not take one. They stay on the device.
 * @param onSent after each that the server has
 */
export async function pushPhotos(
  db: RecordDatabase,
  onSent: () => Promise<void>,
): Promise<Step<{ readonly refused: string | null }>> {
  const unsent = await db.getAllKeysFromIndex('photos', 'unsent');
  let refused: string | null = null;
  for (let from = 0; from < unsent.length; from += PHOTOS_A_CALL) {
    const asked = unsent.slice(from, from + PHOTOS_A_CALL);
    const called = await recordCalls.heldPhotos(asked);
    if (called.kind !== 'answered') return haltOf(called);
    const held = new Set(called.value.held);
    for (const hash of asked) {
      const photo = await db.get('photos', hash);
      if (photo === undefined) continue;
      if (!held.has(hash)) {
        const sent = await recordCalls.sendPhoto(hash, photo.type, photo.bytes);
        if (sent.kind === 'away') return { kind: 'away' };
        if (sent.kind === 'refused') {
          refused = sent.why;
          continue;
        }
      }
      const { unsent: _, ...kept } = photo;
      await db.put('photos', kept);
      await onSent();
    }
  }
  return { kind: 'done', value: { refused } };
}
