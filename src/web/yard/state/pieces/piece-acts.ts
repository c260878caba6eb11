import { namePiece } from '../../../../records/name-piece.ts';
import type { BodyOf, KindAndBody } from '../../../../records/record.ts';
import type { OpenPiece } from '../../../pieces/read-piece.ts';
import type { RecordDevice } from '../../../records/record-device.ts';
import { draftStart } from './start-drafts.ts';

/** What is done about a piece as a whole. Each throws Error in words where nothing could be written down. */
export class PieceActs {
  readonly #device: Pick<RecordDevice, 'write' | 'job'>;
  readonly #piece: OpenPiece;

  constructor(device: Pick<RecordDevice, 'write' | 'job'>, piece: OpenPiece) {
    this.#device = device;
    this.#piece = piece;
  }

  comment(text: string) {
    return this.#write({ kind: 'comment', body: { text } });
  }

  photo(body: BodyOf<'photo'>) {
    return this.#write({ kind: 'photo', body });
  }

  scrap(reason: string) {
    return this.#write({ kind: 'scrapped', body: { reason } });
  }

  reMark(body: BodyOf<'re-marked'>) {
    return this.#write({ kind: 're-marked', body });
  }

  /** Begins another casting of the same mark; gives its id. */
  async castAgain(serial: string, isInPlace: boolean): Promise<string> {
    const job = this.#device.job.value;
    if (job === null) throw new Error('No job is on this device; choose one first.');
    const { head, id } = this.#piece;
    const piece = namePiece(job.id, head.panelKey, serial);
    await this.#device.write(draftStart({ ...head, piece, serial, recastOf: isInPlace ? id : null }));
    return piece;
  }

  #write(said: KindAndBody) {
    return this.#device.write({
      ...said,
      piece: this.#piece.id,
      item: null,
      checkKey: null,
      measuredAt: null,
      measuredBy: null,
    });
  }
}
