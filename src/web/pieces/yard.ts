import { computed, type ReadonlySignal, signal } from '@preact/signals';
import { createContext } from 'preact';
import { useContext } from 'preact/hooks';
import { listPlanned, type PieceHead } from '../../assess/yard/piece-head.ts';
import type { YardContext } from '../../assess/yard/piece-report.ts';
import { indexJob } from '../../job/job-index.ts';
import type { RecordDevice } from '../records/record-device.ts';
import { type PieceReading, readPiece } from './read-piece.ts';

/** The job that this device works on, as every screen reads it, and its pieces as they are asked for. */
export class Yard {
  readonly device: RecordDevice;
  /** Null: no job is taken, or no revision is in force. */
  readonly context: ReadonlySignal<YardContext | null>;
  /** Pieces that the pours plan, by id. */
  readonly planned: ReadonlySignal<ReadonlyMap<string, PieceHead>>;
  readonly #readings = new Map<string, ReadonlySignal<PieceReading>>();

  constructor(device: RecordDevice) {
    this.device = device;
    const index = computed(() => {
      const file = device.job.value?.inForce?.file;
      return file === undefined ? null : indexJob(file);
    });
    this.context = computed(() => {
      const job = device.job.value;
      if (job === null || job.inForce === null || index.value === null) return null;
      const { letter, fingerprint } = job.inForce;
      return { index: index.value, revision: { letter, fingerprint }, people: job.people };
    });
    this.planned = computed(() => {
      const id = device.job.value?.id;
      return id === undefined || index.value === null ? new Map() : listPlanned(id, index.value);
    });
  }

  /** What is known of a piece: it follows what is written and what arrives. Read from the device once. */
  piece(id: string): ReadonlySignal<PieceReading> {
    const had = this.#readings.get(id);
    if (had !== undefined) return had;
    const isRead = signal(false);
    const made = readPiece(this, id, isRead);
    this.#readings.set(id, made);
    void this.device.openPieces([id]).then(() => {
      isRead.value = true;
    });
    return made;
  }
}

export const YardPlace = createContext<Yard | null>(null);

/** The yard that the screen lies in. */
export function useYard(): Yard {
  const yard = useContext(YardPlace);
  if (yard === null) throw new Error('no yard around this part of the screen; expected it inside YardShell');
  return yard;
}
