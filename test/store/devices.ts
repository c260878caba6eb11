import { createHash } from 'node:crypto';
import type { FactRecord, RecordOf } from '../../src/records/record.ts';
import { writeRecord } from '../../src/records/record-text.ts';

/** What differs from a plain comment. */
type Difference =
  | Partial<RecordOf<'comment'>>
  | (Omit<Partial<RecordOf<'measured'>>, 'kind'> & { readonly kind: 'measured' });

/** The first digits of a hash: ids that a test can foresee. */
const digits = (text: string, count: number) => createHash('sha256').update(text).digest('hex').slice(0, count);

/** The id of a piece, by any name. */
export const pieceOf = (name: string) => digits(`piece ${name}`, 24);

/** A UUID of version 7, by any name. */
export function idOf(name: string): string {
  const hex = digits(`record ${name}`, 32);
  return `${hex.slice(0, 8)}-${hex.slice(8, 12)}-7${hex.slice(13, 16)}-a${hex.slice(17, 20)}-${hex.slice(20)}`;
}

export const hashOf = (text: string | Uint8Array) => createHash('sha256').update(text).digest('hex');

/** A tablet that writes comments if nothing else, each chained to the one before. */
export interface TestDevice {
  readonly id: string;
  /** The next text. */
  readonly write: (job: string, more?: Difference) => string;
  /** The same tablet once more: what it writes from here on, it writes under the same numbers. */
  readonly copy: (name: string) => TestDevice;
}

export function makeDevice(name: string): TestDevice {
  const start = (id: string, label: string, from: FactRecord['chain']): TestDevice => {
    let chain = from;
    return {
      id,
      write: (job, more = {}) => {
        const comment: RecordOf<'comment'> = {
          v: 1,
          id: idOf(`${label} ${chain.number}`),
          kind: 'comment',
          job,
          piece: pieceOf('one'),
          item: null,
          seen: [],
          revision: null,
          checkKey: null,
          measuredAt: '2026-11-30T08:00:00.000Z',
          typedAt: '2026-11-30T08:00:00.000Z',
          clock_s: null,
          person: 'demosetter01',
          measuredBy: null,
          device: id,
          app: '0.1.0',
          chain,
          body: { text: `${label} writes ${chain.number}: Ø 12 „ä“ 𝄞` },
        };
        // A difference brings the body that belongs to its kind.
        const { text, hash } = writeRecord({ ...comment, ...more } as FactRecord);
        chain = { number: chain.number + 1, previous: hash };
        return text;
      },
      copy: (other) => start(id, other, chain),
    };
  };
  return start(digits(`device ${name}`, 16), name, { number: 1, previous: null });
}

/** So many texts of a device. */
export function writeMany(device: TestDevice, job: string, count: number, more: Difference = {}): string[] {
  return Array.from({ length: count }, () => device.write(job, more));
}
