import { describe, expect, it } from 'vitest';
import { tellSync } from '../../../src/web/pieces/sync-words.ts';
import type { SyncState } from '../../../src/web/records/record-device.ts';
import { tellOffline } from '../../../src/web/yard/state/offline-words.ts';

const READY = { isSecure: true, hasServiceWorker: true, isKeptReady: true, isStoreKept: true };

describe('whether it works without the network', () => {
  it('is good only where everything is', () => {
    expect(tellOffline(READY).kind).toBe('good');
    expect(tellOffline({ ...READY, isStoreKept: false }).kind).toBe('unsure');
    expect(tellOffline({ ...READY, isKeptReady: false }).kind).toBe('unsure');
    expect(tellOffline({ ...READY, hasServiceWorker: false }).kind).toBe('wrong');
    expect(tellOffline({ ...READY, isSecure: false }).kind).toBe('wrong');
  });

  it('says plainly that it does not, and what then', () => {
    const { words, more } = tellOffline({ ...READY, isSecure: false });
    expect(words).toContain('NOT');
    expect(more).toContain('https');
    expect(more).toContain('paper');
  });
});

const SYNC: SyncState = {
  unsent: 0,
  sent: 0,
  held: 412,
  unsentPhotos: 0,
  state: 'idle',
  isServerThere: true,
  lastSyncAt: null,
  head: null,
  clock_s: null,
  problem: null,
};

describe('where the records are', () => {
  it('says first what only this device has', () => {
    expect(tellSync({ ...SYNC, unsent: 3, isServerThere: false })).toEqual({
      first: '3 on this device only',
      second: 'no server · server holds 409',
      kind: 'here only',
    });
    expect(tellSync({ ...SYNC, unsentPhotos: 1 }).first).toBe('1 photo not sent');
  });

  it('does not call it sent while a photo is here only, nor hides a problem', () => {
    expect(tellSync(SYNC)).toMatchObject({ first: 'all sent', second: 'server holds 412', kind: 'all sent' });
    expect(tellSync({ ...SYNC, isServerThere: false }).first).toContain('no server');
    expect(tellSync({ ...SYNC, problem: 'the clock is wrong' }).kind).toBe('problem');
  });
});
