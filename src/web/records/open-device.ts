import { batch, computed, type ReadonlySignal, type Signal, signal } from '@preact/signals';
import { ENGINE_VERSION } from '../../engine/version.ts';
import { hashBytes } from '../../job/fingerprint.ts';
import type { PieceState } from '../../records/fold/piece-state.ts';
import type { Person } from '../../records/person.ts';
import type { FactRecord } from '../../records/record.ts';
import { NO_COUNTS, readCounts } from './count-kept.ts';
import { changeMeta, readMeta } from './device-meta.ts';
import { exportUnsent, takeIn } from './exchange.ts';
import { readKeptJob } from './kept-job.ts';
import { listPieces, readPieceRecords } from './kept-records.ts';
import { PageChannel, type PageNews } from './page-channel.ts';
import { PieceCache } from './piece-cache.ts';
import { askToKeep, readRoom } from './read-room.ts';
import { type DatabaseStep, type DeviceMeta, databaseSteps, RecordDb } from './record-db.ts';
import type { DeviceJob, DeviceRoom, PhotoDraft, RecordDevice, SyncState, WriteDraft } from './record-device.ts';
import { readUnread } from './sync/pull-texts.ts';
import { recordCalls } from './sync/record-calls.ts';
import { type RoundResult, runRound } from './sync/sync-round.ts';
import { SyncTimer } from './sync/sync-timer.ts';
import { tellProblem } from './sync/tell-problem.ts';
import { tellWriteFault } from './tell-write-fault.ts';
import { writeDrafts } from './write-drafts.ts';

const NOT_ASKED: RoundResult = { isServerThere: false, refused: null, withheld: null, fault: null, isPutBack: false };
const NO_ROOM: DeviceRoom = { used_bytes: null, quota_bytes: null, isKept: false, isNearlyFull: false };

/**
 * Opens the records on this device, with the job and person that were chosen last; sending begins by itself.
 * @param steps how the stores come to their shape
 * @throws Error where the browser keeps nothing: in words, for the person
 */
export async function openDevice(steps: readonly DatabaseStep[] = databaseSteps): Promise<RecordDevice> {
  const device = new YardDevice(steps);
  await device.start();
  return device;
}

class YardDevice implements RecordDevice {
  readonly id: ReadonlySignal<string>;
  readonly job: ReadonlySignal<DeviceJob | null>;
  readonly person: ReadonlySignal<Person | null>;
  readonly sync: ReadonlySignal<SyncState>;
  readonly room = signal(NO_ROOM);
  readonly knownPieces = signal<readonly string[]>([]);
  readonly #meta: Signal<DeviceMeta | null> = signal(null);
  readonly #job: Signal<DeviceJob | null> = signal(null);
  readonly #counts = signal(NO_COUNTS);
  readonly #work = signal<SyncState['state']>('idle');
  readonly #result = signal(NOT_ASKED);
  readonly #isOutdated = signal(false);
  readonly #db: RecordDb;
  readonly #pieces = new PieceCache(async (piece) => readPieceRecords(await this.#db.open(), piece));
  #counting: Promise<void> = Promise.resolve();
  #nextCount: Promise<void> | null = null;
  readonly #channel = new PageChannel((news) => void this.#hear(news));
  readonly #timer = new SyncTimer(() => this.#runRound());

  constructor(steps: readonly DatabaseStep[]) {
    this.#db = new RecordDb(() => {
      this.#isOutdated.value = true;
    }, steps);
    this.id = computed(() => this.#meta.value?.id ?? '');
    this.job = this.#job;
    this.person = computed(() => {
      const id = this.#meta.value?.person;
      // A person whose name was erased writes nothing any more.
      return this.#job.value?.people.find((one) => one.id === id && one.name !== null) ?? null;
    });
    this.sync = computed(() => this.#tellSync());
  }

  async start(): Promise<void> {
    try {
      const db = await this.#db.open();
      this.#meta.value = await readMeta(db);
      const { job } = this.#meta.value;
      if (job !== null) await this.#showJob(job);
      await Promise.all([this.#count(), readUnread(db)]);
    } catch (error) {
      if (error instanceof DOMException && error.name === 'VersionError') throw tellWriteFault(error);
      throw new Error(`This browser keeps nothing on this device, so that no record can be written: ${error}`);
    }
    void this.#readRoom();
    void this.#timer.now();
  }

  async takeJob(job: string): Promise<boolean> {
    const db = await this.#db.open();
    const isHere = (await readKeptJob(db, job, this.#job.peek())) !== null;
    await this.#changeMeta((meta) => ({ ...meta, job }));
    if (isHere) {
      await this.#showJob(job);
      void this.#timer.now();
      return true;
    }
    const before = this.#job.peek()?.id ?? null;
    await this.#timer.now();
    const isTaken = await this.#showJob(job);
    if (!isTaken) await this.#changeMeta((meta) => ({ ...meta, job: before }));
    return isTaken;
  }

  async listJobs(): Promise<readonly { readonly id: string; readonly name: string }[]> {
    const jobs = await (await this.#db.open()).getAll('jobs');
    return jobs.map(({ id, name }) => ({ id, name }));
  }

  choosePerson(id: string | null): Promise<void> {
    return this.#changeMeta((meta) => ({ ...meta, person: id }));
  }

  piece(id: string): ReadonlySignal<PieceState> {
    return this.#pieces.piece(id);
  }

  openPieces(ids: readonly string[]): Promise<void> {
    return this.#pieces.open(ids);
  }

  async write(draft: WriteDraft): Promise<FactRecord> {
    const [record] = await this.writeAll([draft]);
    return record!;
  }

  async writeAll(drafts: readonly WriteDraft[]): Promise<readonly FactRecord[]> {
    const job = this.#job.peek();
    const person = this.person.peek();
    if (job === null) throw new Error('No job is on this device: take one first.');
    if (person === null) throw new Error('Nobody is named: say first who writes.');
    if (drafts.length === 0) return [];
    const { inForce } = job;
    const revision = inForce === null ? null : { letter: inForce.letter, fingerprint: inForce.fingerprint };
    const whole = drafts.map((draft) => ({ ...draft, job: job.id, revision: draft.revision ?? revision }));
    const db = await this.#db.open().catch((error: unknown) => {
      throw tellWriteFault(error);
    });
    const records = await writeDrafts(db, whole, { person: person.id, app: ENGINE_VERSION });
    batch(() => {
      this.#pieces.add(records);
      const { unsent, held, ...rest } = this.#counts.peek();
      this.#counts.value = { ...rest, unsent: unsent + records.length, held: held + records.length };
      this.#addPieces(job.id, new Set(records.map(({ piece }) => piece)));
    });
    this.#channel.tell({ kind: 'pieces', job: job.id, pieces: records.map(({ piece }) => piece) });
    this.#timer.soon();
    return records;
  }

  async keepPhoto({ blob }: PhotoDraft): Promise<string> {
    const bytes = await blob.arrayBuffer();
    const hash = hashBytes(new Uint8Array(bytes));
    try {
      const db = await this.#db.open();
      const transaction = db.transaction('photos', 'readwrite', { durability: 'strict' });
      const isKept = (await transaction.store.getKey(hash)) !== undefined;
      const photo = { hash, type: blob.type, bytes, unsent: 1 } as const;
      await Promise.all([isKept ? null : transaction.store.add(photo), transaction.done]);
    } catch (error) {
      throw tellWriteFault(error);
    }
    await this.#count();
    void this.#readRoom();
    this.#channel.tell({ kind: 'device' });
    this.#timer.soon();
    return hash;
  }

  async openPhoto(hash: string): Promise<Blob | null> {
    const kept = await (await this.#db.open()).get('photos', hash);
    return kept === undefined ? recordCalls.fetchPhoto(hash) : new Blob([kept.bytes], { type: kept.type });
  }

  syncNow(): Promise<void> {
    return this.#timer.now();
  }

  async askToKeep(): Promise<boolean> {
    const isKept = await askToKeep();
    await this.#readRoom();
    return isKept;
  }

  async heedProblem(): Promise<void> {
    const transaction = (await this.#db.open()).transaction('asides', 'readwrite');
    for (let at = await transaction.store.openCursor(); at !== null; at = await at.continue())
      if (!at.value.isHeeded) await at.update({ ...at.value, isHeeded: true });
    await transaction.done;
    this.#result.value = { ...this.#result.peek(), isPutBack: false };
    await this.#changeMeta((meta) => ({ ...meta, isForkUnheeded: false }));
    await this.#count();
  }

  async exportUnsent(): ReturnType<RecordDevice['exportUnsent']> {
    return exportUnsent(await this.#db.open(), this.id.peek());
  }

  async takeIn(text: string): ReturnType<RecordDevice['takeIn']> {
    const { job, pieces, ...counts } = await takeIn(await this.#db.open(), text);
    await this.#meetPieces(job, pieces);
    await this.#count();
    this.#timer.soon();
    return counts;
  }

  /** Everything that a round does and tells; what this device itself cannot do is told as a problem, never thrown away. */
  async #runRound(): Promise<boolean> {
    let result: RoundResult;
    try {
      const db = await this.#db.open();
      const { job } = await this.#readMeta();
      result = await runRound(db, job, {
        onState: (state) => {
          this.#work.value = state;
        },
        onHeard: async () => {
          this.#countSoon();
          await this.#readMeta();
        },
        onJob: async () => {
          if (job !== null) await this.#showJob(job);
        },
        onPieces: (of, pieces) => this.#meetPieces(of, pieces),
      });
      await this.#count();
    } catch (error) {
      result = { ...this.#result.peek(), isPutBack: false, fault: tellWriteFault(error).message };
    }
    const isPutBack = result.isPutBack || this.#result.peek().isPutBack;
    batch(() => {
      this.#result.value = { ...result, isPutBack };
      this.#work.value = 'idle';
    });
    this.#channel.tell({ kind: 'round', result: this.#result.peek() });
    // What it has lost it gets at once.
    if (result.isPutBack) this.#timer.soon();
    void this.#readRoom();
    return result.isServerThere && result.refused === null && result.withheld === null && result.fault === null;
  }

  async #meetPieces(job: string, pieces: ReadonlySet<string>): Promise<void> {
    if (pieces.size === 0) return;
    this.#addPieces(job, pieces);
    this.#countSoon();
    await this.#pieces.readAgain(pieces);
    this.#channel.tell({ kind: 'pieces', job, pieces: [...pieces] });
  }

  /** What another page of this browser did. */
  async #hear(news: PageNews): Promise<void> {
    if (news.kind === 'pieces') {
      this.#addPieces(news.job, new Set(news.pieces));
      await this.#pieces.readAgain(new Set(news.pieces));
    } else if (news.kind === 'round') this.#result.value = news.result;
    const { job } = await this.#readMeta();
    await this.#count();
    if (job !== null) await this.#showJob(job);
  }

  /** False: it is not on this device. */
  async #showJob(id: string): Promise<boolean> {
    const db = await this.#db.open();
    const before = this.#job.peek();
    const job = await readKeptJob(db, id, before);
    if (job === null) return false;
    if (before?.id !== id) this.knownPieces.value = await listPieces(db, id);
    // What is computed of a job is computed again only when something of it is another.
    if (before === null || tellApart(before) !== tellApart(job)) this.#job.value = job;
    return true;
  }

  #addPieces(job: string, pieces: ReadonlySet<string>): void {
    if (this.#job.peek()?.id !== job) return;
    const known = new Set(this.knownPieces.peek());
    const added = [...pieces].filter((piece) => !known.has(piece));
    if (added.length > 0) this.knownPieces.value = [...known, ...added].sort();
  }

  async #readMeta(): Promise<DeviceMeta> {
    const meta = await readMeta(await this.#db.open());
    this.#meta.value = meta;
    return meta;
  }

  async #changeMeta(change: (meta: DeviceMeta) => DeviceMeta): Promise<void> {
    this.#meta.value = await changeMeta(await this.#db.open(), change);
    this.#channel.tell({ kind: 'device' });
  }

  /** Counts anew; those who ask while it is counted share the next counting. */
  async #count(): Promise<void> {
    this.#nextCount ??= this.#counting.then(async () => {
      this.#nextCount = null;
      this.#counting = readCounts(await this.#db.open()).then((counts) => {
        this.#counts.value = counts;
      });
      await this.#counting;
    });
    await this.#nextCount;
  }

  /** While a round runs nobody waits for it: where it cannot be counted the round itself cannot go on, and tells. */
  #countSoon(): void {
    this.#count().catch(() => {});
  }

  async #readRoom(): Promise<void> {
    this.room.value = await readRoom();
  }

  #tellSync(): SyncState {
    const { unsent, sent, held, unsentPhotos, asides, unread } = this.#counts.value;
    const meta = this.#meta.value;
    const { isServerThere, refused, withheld, fault, isPutBack } = this.#result.value;
    const clock_s = meta?.clock_s ?? null;
    return {
      unsent,
      sent,
      held,
      unsentPhotos,
      state: this.#work.value,
      isServerThere,
      lastSyncAt: meta?.lastSyncAt ?? null,
      head: meta?.head ?? null,
      clock_s,
      problem: tellProblem({
        clock_s,
        asides,
        isForked: meta?.isForkUnheeded ?? false,
        unread,
        refused,
        withheld,
        fault,
        isPutBack,
        isOutdated: this.#isOutdated.value,
      }),
    };
  }
}

/** What differs between two states of a job on the device, but for when it was fetched; the file is told by its fingerprint. */
function tellApart({ fetchedAt: _, head: __, inForce, ...rest }: DeviceJob): string {
  return JSON.stringify([rest, inForce?.letter, inForce?.fingerprint, inForce?.file.version]);
}
