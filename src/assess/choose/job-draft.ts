import type { CastIn } from '../../job/documents/cast-in.ts';
import type { CatalogueItem } from '../../job/documents/catalogue.ts';
import type { Connection } from '../../job/documents/connection.ts';
import type { JobFile } from '../../job/documents/job-file.ts';
import { indexJob, type JobIndex } from '../../job/job-index.ts';

/** How often each kind of insert occurs. */
type Counts = Map<string, number>;

function add(counts: Counts, kind: string | null, by: number): void {
  if (kind === null) return;
  const count = (counts.get(kind) ?? 0) + by;
  if (count === 0) counts.delete(kind);
  else counts.set(kind, count);
}

/** What a panel and the job have besides the inserts of one connection. */
export interface OtherInserts {
  readonly countInPanel: (kind: string) => number;
  readonly countInJob: (kind: string) => number;
  /** Kinds in the panel with the same thread and another length. */
  readonly findLookAlikes: (item: CatalogueItem) => readonly string[];
}

/**
 * A job with the choices made so far: each choice is taken as made when the next connection is looked at. Counts of inserts are
 * kept, so that a choice costs no walk through the job.
 */
export class JobDraft {
  /** The job as it would now be, by name. */
  readonly index: JobIndex;
  readonly #file: JobFile;
  readonly #inJob: Counts = new Map();
  readonly #inPanel = new Map<string, Counts>();
  readonly #ofPanel = new Map<string, Map<string, CastIn>>();
  readonly #fixings = new Set<string>();
  readonly #connections = new Map<string, Connection>();

  constructor(file: JobFile) {
    this.#file = file;
    const index = indexJob(file);
    for (const castIn of file.job.castIns) {
      const ofPanel = this.#ofPanel.get(castIn.panel) ?? new Map<string, CastIn>();
      this.#ofPanel.set(castIn.panel, ofPanel.set(castIn.id, castIn));
      this.#count(castIn, 1);
      if (castIn.role === 'fixing' && castIn.item !== null) this.#fixings.add(castIn.item);
    }
    this.index = { ...index, castIn: (panel, id) => this.#ofPanel.get(panel)?.get(id) };
  }

  #count({ panel, item }: CastIn, by: number): void {
    add(this.#inJob, item, by);
    const counts: Counts = this.#inPanel.get(panel) ?? new Map();
    add(counts, item, by);
    this.#inPanel.set(panel, counts);
  }

  /** Everything cast into a panel. */
  castInsOf(panel: string): readonly CastIn[] {
    return [...(this.#ofPanel.get(panel)?.values() ?? [])];
  }

  /** Whether the job as read has an insert of this kind in the role of a fixing. */
  hasFixing(item: string): boolean {
    return this.#fixings.has(item);
  }

  /** The inserts of a panel and of the job besides some of that panel, by kind. */
  countOthers(panel: string, own: readonly CastIn[]): OtherInserts {
    const ownKinds: Counts = new Map();
    for (const { item } of own) add(ownKinds, item, 1);
    const count = (counts: Counts | undefined, kind: string) => (counts?.get(kind) ?? 0) - (ownKinds.get(kind) ?? 0);
    const ofPanel = this.#inPanel.get(panel);
    const kinds = [...(ofPanel?.keys() ?? [])]
      .filter((kind) => count(ofPanel, kind) > 0)
      .flatMap((kind) => this.index.items.get(kind) ?? [])
      .sort((a, b) => (a.id < b.id ? -1 : 1));
    return {
      countInPanel: (kind) => count(ofPanel, kind),
      countInJob: (kind) => count(this.#inJob, kind),
      findLookAlikes: ({ thread, length_mm }) =>
        kinds.filter((kind) => kind.thread === thread && kind.length_mm !== length_mm).map(({ id }) => id),
    };
  }

  /** Takes a connection and its inserts, changed, in place of the present ones. */
  take(connection: Connection, castIns: readonly CastIn[]): void {
    this.#connections.set(connection.mark, connection);
    for (const castIn of castIns) {
      const ofPanel = this.#ofPanel.get(castIn.panel)!;
      this.#count(ofPanel.get(castIn.id)!, -1);
      ofPanel.set(castIn.id, castIn);
      this.#count(castIn, 1);
    }
  }

  /** The job with all choices made. */
  toFile(): JobFile {
    const { job } = this.#file;
    return {
      ...this.#file,
      job: {
        ...job,
        castIns: job.castIns.map((castIn) => this.#ofPanel.get(castIn.panel)?.get(castIn.id) ?? castIn),
        connections: job.connections.map((connection) => this.#connections.get(connection.mark) ?? connection),
      },
    };
  }
}
