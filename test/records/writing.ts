import { findSeen } from '../../src/records/fold/find-seen.ts';
import { foldPiece } from '../../src/records/fold/fold-piece.ts';
import { type ChainLink, linkOf, makeRecord } from '../../src/records/make-record.ts';
import type { BodyOf, FactRecord, KindAndBody } from '../../src/records/record.ts';
import { type StoredRecord, writeRecord } from '../../src/records/record-text.ts';
import { makeUuidV7 } from '../../src/records/uuid-v7.ts';

export const JOB = 'jobjobjobjob';
export const PIECE = '1'.repeat(24);
export const PERSON = 'personperson';

/** A moment to count from. */
const START = Date.UTC(2026, 4, 4, 6);

/** An id whose clock part is `START` plus so many seconds, and whose chance part is a number. */
export function idOf(seconds: number, chance: number): string {
  return makeUuidV7(START + seconds * 1000, (bytes) => {
    for (let i = 0; i < 4; i += 1) bytes[bytes.length - 1 - i] = Math.floor(chance / 256 ** i) % 256;
  });
}

const HASH = 'a'.repeat(64);

export const FROZEN: BodyOf<'cleared'>['frozen'] = {
  revision: { letter: 'B', fingerprint: HASH },
  engine: '1',
  inputs: HASH,
  open: [],
  head: null,
};

export const cleared: KindAndBody = { kind: 'cleared', body: { role: 'qa', condition: null, frozen: FROZEN } };
export const clearedIf: KindAndBody = {
  kind: 'cleared',
  body: { role: 'qa', condition: 'cap of 7 before the pour', frozen: FROZEN },
};
export const held: KindAndBody = { kind: 'held', body: { reason: 'insert 3 is loose' } };
export const override: KindAndBody = {
  kind: 'override',
  body: { role: 'foreman', reason: 'the truck is here', frozen: FROZEN },
};
export const poured: KindAndBody = { kind: 'poured', body: { reason: null } };

export function measured(x_mm: number): KindAndBody {
  return { kind: 'measured', body: { stage: 2, x_mm, y_mm: 100, level_mm: null, basis: 'tape' } };
}

export function placed(firm: boolean): KindAndBody {
  return { kind: 'placed', body: { stage: 2, type: true, face: true, firm, note: null } };
}

export function correctionOf(of: string): KindAndBody {
  return { kind: 'correction', body: { of, reason: 'mistyped' } };
}

/** What a draft is of, where it is not of the piece itself. */
interface About {
  readonly piece?: string;
  readonly item?: string | null;
}

/** A tablet: it writes by what it knows, and learns what others know. Its clock may be wrong. */
export class Tablet {
  readonly known = new Map<string, FactRecord>();
  readonly written: StoredRecord[] = [];
  /** By record that it wrote: the ids that it knew of that piece then. */
  readonly knewThen = new Map<string, ReadonlySet<string>>();
  #link: ChainLink | null = null;
  readonly #number: number;
  readonly #clock_s: number;
  readonly #job: string;

  constructor(number: number, clock_s = 0, job = JOB) {
    this.#number = number;
    this.#clock_s = clock_s;
    this.#job = job;
  }

  get id(): string {
    return String(this.#number).padStart(16, 'd');
  }

  /** @param second when it is, by a clock that is right */
  write(draft: KindAndBody, second: number, { piece = PIECE, item = null }: About = {}): FactRecord {
    const of = {
      ...draft,
      job: this.#job,
      piece,
      item,
      revision: null,
      checkKey: null,
      measuredAt: null,
      measuredBy: null,
    };
    const seconds = second + this.#clock_s;
    const record = makeRecord(of, {
      id: idOf(seconds, this.#number * 100_000 + this.written.length),
      seen: findSeen(foldPiece(piece, this.known.values()), of),
      now: new Date(START + seconds * 1000).toISOString(),
      clock_s: null,
      person: PERSON,
      device: this.id,
      app: '1',
      previous: this.#link,
    });
    const stored = writeRecord(record);
    const knew = [...this.known.values()].filter((other) => other.piece === piece);
    this.knewThen.set(record.id, new Set(knew.map(({ id }) => id)));
    this.#link = linkOf(stored);
    this.written.push(stored);
    this.known.set(record.id, record);
    return record;
  }

  learn(records: Iterable<FactRecord>): void {
    for (const record of records) this.known.set(record.id, record);
  }
}

/** Both know afterwards what either knew. */
export function meet(one: Tablet, other: Tablet): void {
  one.learn(other.known.values());
  other.learn(one.known.values());
}
