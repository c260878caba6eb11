import { effect } from '@preact/signals';
import { writeCanonical } from '../../../src/job/canonical.ts';
import { openDevice } from '../../../src/web/records/open-device.ts';
import { databaseSteps, type RecordDatabase, RecordDb } from '../../../src/web/records/record-db.ts';
import type { RecordDevice, SyncState, WriteDraft } from '../../../src/web/records/record-device.ts';
import { tellState } from './tell-state.ts';

/** What a test asks of a tablet: the records on the device behind a page without screens. */
export interface TabletPage {
  readonly device: RecordDevice;
  /** Sync states as they came. */
  readonly heard: SyncState[];
  sync(): SyncState;
  /** Canonical text of what is known of these pieces. */
  states(pieces: readonly string[]): Promise<string>;
  /** Checks an insert by sight, or writes that it is wrong. */
  look(piece: string, item: string, isRight: boolean): Promise<string>;
  /** So many measurements, one record each, in one transaction. */
  measureMany(piece: string, count: number): Promise<readonly string[]>;
}

/**
 * @param job null: the one that was taken last
 * @param isNewer as a later version of the program, whose stores have another shape
 */
export async function startTablet(job: string | null, person: string | null, isNewer: boolean): Promise<TabletPage> {
  const device = await openDevice(isNewer ? [...databaseSteps, addStore] : databaseSteps);
  const heard: SyncState[] = [];
  effect(() => {
    heard.push(device.sync.value);
  });
  if (job !== null && !(await device.takeJob(job))) throw new Error('the job was not taken');
  if (person !== null) await device.choosePerson(person);
  const draft = { checkKey: null, measuredAt: null, measuredBy: null } as const;
  return {
    device,
    heard,
    sync: () => device.sync.value,
    states: async (pieces) => {
      await device.openPieces(pieces);
      return writeCanonical(pieces.map((piece) => tellState(device.piece(piece).value)));
    },
    look: async (piece, item, isRight) => {
      const body = { stage: 1, type: isRight, face: true, firm: true, note: null } as const;
      return (await device.write({ ...draft, piece, item, kind: 'placed', body })).id;
    },
    measureMany: async (piece, count) => {
      const drafts = Array.from(
        { length: count },
        (_, k): WriteDraft => ({
          ...draft,
          piece,
          item: `item${k % 20}`,
          kind: 'measured',
          body: { stage: 1, x_mm: k, y_mm: 2 * k, level_mm: null, basis: 'tape' },
        }),
      );
      return (await device.writeAll(drafts)).map(({ id }) => id);
    },
  };
}

function addStore(db: RecordDatabase): void {
  // A store that only a later version knows.
  (db as unknown as IDBDatabase).createObjectStore('later');
}

/** Every store with keys and values. */
export type Contents = Record<string, (readonly [IDBValidKey, unknown])[]>;

/** Everything on this device, as a copy of its disk has it. */
export async function copyOut(): Promise<Contents> {
  const db = await new RecordDb(() => {}, databaseSteps).open();
  const contents: Contents = {};
  for (const name of db.objectStoreNames) {
    const [keys, values] = await Promise.all([db.getAllKeys(name), db.getAll(name)]);
    contents[name] = keys.map((key, place) => [key, values[place]]);
  }
  db.close();
  return contents;
}

/** Puts contents in place of what is there; before `startTablet`, or by hand of somebody. */
export async function copyIn(contents: Contents): Promise<void> {
  const db = await new RecordDb(() => {}, databaseSteps).open();
  const transaction = db.transaction(db.objectStoreNames, 'readwrite');
  for (const name of db.objectStoreNames) {
    // Typed by store; here every store is meant.
    const store = transaction.objectStore(name) as unknown as IDBObjectStore;
    store.clear();
    for (const [key, value] of contents[name] ?? []) {
      if (store.keyPath === null) store.put(value, key);
      else store.put(value);
    }
  }
  await transaction.done;
  db.close();
}
