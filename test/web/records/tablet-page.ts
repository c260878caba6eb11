import { effect } from '@preact/signals';
import { writeCanonical } from '../../../src/job/canonical.ts';
import { namePiece } from '../../../src/records/name-piece.ts';
import { openDevice } from '../../../src/web/records/open-device.ts';
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

/** @param job null: the one that was taken last */
export async function startTablet(job: string | null, person: string | null): Promise<TabletPage> {
  const device = await openDevice();
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

export { namePiece };
