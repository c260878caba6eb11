import { computed, type ReadonlySignal, type Signal, signal } from '@preact/signals';
import { typeCell } from '../../../../files/csv/grid.ts';
import type { JobReading } from '../../../../files/job-reading.ts';
import { askJobWorker } from '../../../parts/worker-client.ts';
import { ImportStore, type WorkFile } from './import-store.ts';

/** Where files for no job yet are kept. */
const NEW_JOB = 'new';

/** Files given for a job, what reading them found, and what is typed to put them right. */
export class ImportWork {
  readonly #place: string;
  readonly #store = new ImportStore();
  readonly #files: Signal<readonly WorkFile[]> = signal([]);
  readonly #read: Signal<{ readonly reading: JobReading; readonly of: readonly WorkFile[] } | null> = signal(null);
  readonly #isBusy = signal(false);
  readonly #failure = signal<string | null>(null);
  readonly reading: ReadonlySignal<JobReading | null> = computed(() => this.#read.value?.reading ?? null);
  /** Something was typed since the files were read: what is shown of faults is of before. */
  readonly isStale: ReadonlySignal<boolean> = computed(
    () => this.#read.value !== null && this.#read.value.of !== this.#files.value,
  );

  /** @param job that the files are for; null: a new one */
  constructor(job: string | null) {
    this.#place = job ?? NEW_JOB;
  }

  get files(): ReadonlySignal<readonly WorkFile[]> {
    return this.#files;
  }

  get isBusy(): ReadonlySignal<boolean> {
    return this.#isBusy;
  }

  /** Why reading itself broke off; null: it did not. */
  get failure(): ReadonlySignal<string | null> {
    return this.#failure;
  }

  /** Takes up what an earlier page left on this device. */
  async resume(): Promise<void> {
    if (this.#files.peek().length > 0 || this.#isBusy.peek()) return;
    const kept = await this.#store.get(this.#place);
    if (kept.length === 0 || this.#files.peek().length > 0) return;
    this.#files.value = kept;
    await this.readAgain();
  }

  /** Takes files; one of the same name takes the place of the first. */
  async take(given: readonly File[]): Promise<void> {
    this.#isBusy.value = true;
    this.#failure.value = null;
    const texts = await Promise.all(given.map(readText));
    const names = new Set(texts.map(({ name }) => name));
    this.#set([...this.#files.peek().filter(({ name }) => !names.has(name)), ...texts]);
    await this.readAgain();
  }

  async readAgain(): Promise<void> {
    const before = this.#files.peek();
    this.#isBusy.value = true;
    this.#failure.value = null;
    try {
      const given = before.map(({ name, text, grid, isTyped }) => ({ name, text, typed: isTyped ? grid : null }));
      const { files, reading } = await askJobWorker((worker) => worker.readFiles(given));
      const read = files.map((file, k) => ({ ...file, isTyped: before[k]?.isTyped ?? false }));
      // What was typed meanwhile stays, and is to be read once more.
      const isSame = this.#files.peek() === before;
      if (isSame) this.#set(read);
      this.#read.value = { reading, of: isSame ? read : before };
    } catch (error) {
      this.#failure.value = error instanceof Error ? error.message : String(error);
    }
    this.#isBusy.value = false;
  }

  typeCell(name: string, row: number, column: number, text: string): void {
    this.#change(name, (file) =>
      file.grid === null ? file : { ...file, grid: typeCell(file.grid, row, column, text), isTyped: true },
    );
  }

  typeText(name: string, text: string): void {
    this.#change(name, (file) => ({ ...file, text, grid: null, isTyped: true }));
  }

  /** Puts one file away. */
  leave(name: string): void {
    this.#set(this.#files.peek().filter((file) => file.name !== name));
    if (this.#files.peek().length === 0) this.#read.value = null;
    else void this.readAgain();
  }

  /** All files are read into a job, or put away. */
  clear(): void {
    this.#set([]);
    this.#read.value = null;
    this.#failure.value = null;
  }

  #change(name: string, change: (file: WorkFile) => WorkFile): void {
    this.#set(this.#files.peek().map((file) => (file.name === name ? change(file) : file)));
  }

  #set(files: readonly WorkFile[]): void {
    this.#files.value = files;
    void this.#store.put(this.#place, files).catch((error: unknown) => {
      this.#failure.value = `What is typed here cannot be kept on this device (${String(error)}): it is lost when the page is closed`;
    });
  }
}

async function readText(file: File): Promise<WorkFile> {
  return { name: file.name, text: await file.text(), grid: null, isTyped: false };
}

const works = new Map<string, ImportWork>();

/** The files for a job, the same as long as the page is open; null: for a new one. */
export function importFor(job: string | null): ImportWork {
  const place = job ?? NEW_JOB;
  const work = works.get(place) ?? new ImportWork(job);
  works.set(place, work);
  return work;
}
