import type { SyncState } from '../records/record-device.ts';

/** Where the records are, in a few words. */
export interface SyncWords {
  readonly first: string;
  readonly second: string;
  /** `here only`: somebody could lose them with this tablet. */
  readonly kind: 'all sent' | 'here only' | 'problem';
}

/** What the chip in the head says: what only this device has comes first. */
export function tellSync(sync: SyncState): SyncWords {
  const { unsent, unsentPhotos, held, isServerThere, state, problem } = sync;
  const server = `server holds ${Math.max(0, held - unsent)}`;
  if (problem !== null) return { first: 'look at this device', second: problem, kind: 'problem' };
  if (unsent > 0 || unsentPhotos > 0) {
    const parts = [
      ...(unsent > 0 ? [`${unsent} on this device only`] : []),
      ...(unsentPhotos > 0 ? [`${unsentPhotos} ${unsentPhotos === 1 ? 'photo' : 'photos'} not sent`] : []),
    ];
    const how = state === 'idle' ? (isServerThere ? 'waiting' : 'no server') : 'sending';
    return { first: parts.join(', '), second: `${how} · ${server}`, kind: 'here only' };
  }
  return { first: isServerThere ? 'all sent' : 'all sent · no server', second: server, kind: 'all sent' };
}
