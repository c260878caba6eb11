import type { DeviceRoom, SyncState } from '../../../records/record-device.ts';

/** One of the counts that say where the records are. */
export interface RecordCount {
  readonly count: number;
  readonly words: string;
  /** Could be lost with this tablet. */
  readonly isAtRisk: boolean;
}

/** Where the records are, what could be lost first. */
export function countRecords({ unsent, unsentPhotos, sent, held }: SyncState): readonly RecordCount[] {
  return [
    { count: unsent, words: 'on this device only', isAtRisk: unsent > 0 },
    ...(unsentPhotos > 0
      ? [
          {
            count: unsentPhotos,
            words: unsentPhotos === 1 ? 'photo on this device only' : 'photos on this device only',
            isAtRisk: true,
          },
        ]
      : []),
    { count: sent, words: 'sent from here', isAtRisk: false },
    { count: Math.max(0, held - unsent), words: 'the server holds, as far as this device has heard', isAtRisk: false },
  ];
}

/** How long ago, in the largest whole unit. */
export function tellAge(moment: string, now: number): string {
  const minutes = Math.floor((now - Date.parse(moment)) / 60_000);
  if (minutes < 1) return 'just now';
  if (minutes < 60) return `${minutes} min ago`;
  const hours = Math.floor(minutes / 60);
  if (hours < 48) return `${hours} h ago`;
  return `${Math.floor(hours / 24)} days ago`;
}

/** When the server was last heard, and whether it is there. */
export function tellServer({ lastSyncAt, isServerThere, state }: SyncState, now: number): string {
  const last =
    lastSyncAt === null ? 'The server was never heard on this device' : `Last heard ${tellAge(lastSyncAt, now)}`;
  if (state !== 'idle') return `${state === 'sending' ? 'Sending' : 'Fetching'} now. ${last}.`;
  return isServerThere
    ? `The server is there. ${last}.`
    : `The server does not answer. ${last}; it is tried again by itself.`;
}

const showMegabytes = (bytes: number) => {
  const mega = bytes / 1_000_000;
  return mega >= 1000 ? `${(mega / 1000).toFixed(1)} GB` : `${Math.max(mega, 0.1).toFixed(mega < 10 ? 1 : 0)} MB`;
};

/** Room on this device, and whether the browser may clear it away. */
export function tellRoom({ used_bytes, quota_bytes, isKept, isNearlyFull }: DeviceRoom): {
  readonly used: string;
  readonly kept: string;
  readonly warning: string | null;
} {
  return {
    used:
      used_bytes === null || quota_bytes === null
        ? 'This browser does not say how much room is left.'
        : `${showMegabytes(used_bytes)} used of ${showMegabytes(quota_bytes)} that the browser allows.`,
    kept: isKept
      ? 'The browser has promised to keep the records until somebody removes them.'
      : 'The browser may clear the records away when the device runs short of room. Send them soon, and ask it to keep them.',
    warning: isNearlyFull
      ? 'Nearly full: send now, then free some room on this device. When it is full no more records can be written.'
      : null,
  };
}
