import type { PiecePlan } from '../../../src/assess/yard/piece-plan.ts';
import { planPiece } from '../../../src/assess/yard/plan-piece.ts';
import type { JobFile } from '../../../src/job/documents/job-file.ts';
import { indexJob } from '../../../src/job/job-index.ts';
import { findSeen } from '../../../src/records/fold/find-seen.ts';
import { foldPiece } from '../../../src/records/fold/fold-piece.ts';
import { type ChainLink, linkOf, makeRecord } from '../../../src/records/make-record.ts';
import { namePiece } from '../../../src/records/name-piece.ts';
import type { FactRecord, KindAndBody } from '../../../src/records/record.ts';
import { writeRecord } from '../../../src/records/record-text.ts';
import { makeUuidV7 } from '../../../src/records/uuid-v7.ts';
import type { YardJob } from '../../../src/wire/records.ts';

/** A piece of the job as the server hands it to yards. */
export interface YardPiece {
  readonly job: string;
  readonly id: string;
  readonly plan: PiecePlan;
  readonly revision: { readonly letter: string; readonly fingerprint: string };
}

/** Opens a piece of the first job of a server. */
export async function findYardPiece(address: string, mark: string, serial: string): Promise<YardPiece> {
  const { jobs } = (await (await fetch(`${address}/api/jobs`)).json()) as {
    readonly jobs: readonly { readonly id: string }[];
  };
  const job = jobs[0]!.id;
  const { inForce } = (await (await fetch(`${address}/api/jobs/${job}/yard`)).json()) as YardJob;
  if (inForce === null || inForce.file === null) throw new Error('no revision of the job is in force');
  const index = indexJob(inForce.file as JobFile);
  const panel = index.panels.get(mark);
  if (panel === undefined) throw new Error(`the job has no panel ${mark}`);
  const { letter, fingerprint } = inForce;
  const pour = index.file.job.pours.find(({ pieces }) =>
    pieces.some((piece) => piece.panel === mark && piece.serial === serial),
  );
  const bed = index.file.library.yard.beds.find(({ id }) => id === pour?.bed) ?? null;
  const id = namePiece(job, panel.key, serial);
  return { job, id, plan: planPiece(index, { id, mark, bed }), revision: { letter, fingerprint } };
}

/** A tablet without a screen: writes records of a piece as one would, and sends them. */
export class PaperTablet {
  readonly #known: FactRecord[] = [];
  readonly #device: string;
  readonly #piece: YardPiece;
  #link: ChainLink | null = null;
  #unsent: string[] = [];
  #last = 0;

  /** @param device its id: 16 small letters and digits */
  constructor(piece: YardPiece, device: string) {
    this.#piece = piece;
    this.#device = device;
  }

  /** Writes a record by what this tablet knows. @param number of the insert on the sheet; null: of the piece */
  write(person: string, said: KindAndBody, number: number | null = null): FactRecord {
    const { job, id, plan, revision } = this.#piece;
    const item = number === null ? null : plan.setOut.items.find((one) => one.number === number)!.castIn.key;
    const checkKey = item !== null ? plan.keys.get(item)! : said.kind === 'form-checked' ? plan.formKey : null;
    const draft = { ...said, job, piece: id, item, revision, checkKey, measuredAt: null, measuredBy: null };
    const record = makeRecord(draft, {
      id: makeUuidV7(this.#tick(), (bytes) => crypto.getRandomValues(bytes)),
      seen: findSeen(foldPiece(id, this.#known), draft),
      now: new Date().toISOString(),
      clock_s: 0,
      person,
      device: this.#device,
      app: 'test',
      previous: this.#link,
    });
    const stored = writeRecord(record);
    this.#link = linkOf(stored);
    this.#known.push(record);
    this.#unsent.push(stored.text);
    return record;
  }

  /** The clock, a millisecond later each time: a person is not faster. */
  #tick(): number {
    this.#last = Math.max(Date.now(), this.#last + 1);
    return this.#last;
  }

  /** This one knows what the other knows. */
  learn(other: PaperTablet): void {
    this.#known.push(...other.#known.filter((record) => !this.#known.includes(record)));
  }

  /** Sends what is unsent. */
  async send(address: string): Promise<void> {
    const texts = this.#unsent;
    this.#unsent = [];
    const response = await fetch(`${address}/api/jobs/${this.#piece.job}/records`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ texts }),
    });
    if (!response.ok) throw new Error(`records were not taken: ${await response.text()}`);
  }
}
