import { hashText } from '../../job/fingerprint.ts';
import { nameText } from '../name-text.ts';
import type { Finding, RecordPlace } from './finding.ts';

/** A text that was kept aside, as it lies in the store. Nothing chains it: one that was taken away leaves no trace. */
export interface AsideLine {
  readonly hash: string;
  readonly id: string | null;
  readonly piece: string | null;
  readonly why: string;
  /** The text, as a string of JSON; the hash is of this. */
  readonly body: string;
  readonly at: string;
}

function readBody(body: string): string | null {
  try {
    const text: unknown = JSON.parse(body);
    return typeof text === 'string' ? text : null;
  } catch {
    return null;
  }
}

/** What is stored beside a text and is not what the text says. */
function findColumns({ id, piece, body }: AsideLine, at: RecordPlace): Finding[] {
  const said = nameText(readBody(body) ?? '');
  const pairs = [['id', id, said.id] as const, ['piece', piece, said.piece] as const];
  return pairs.flatMap(([column, stored, says]) =>
    stored === says
      ? []
      : [{ kind: 'column changed' as const, at, column, stored: stored ?? 'none', said: says ?? 'none' }],
  );
}

/** Each text that was kept aside is a finding; one that is not the text that came is a second. */
export function checkAsides(asides: readonly AsideLine[]): readonly Finding[] {
  return asides.flatMap((aside): Finding[] => {
    const { id, piece, why, body, hash } = aside;
    const at: RecordPlace = { line: null, id, device: null, number: null, piece, typedAt: null };
    const kept: Finding = { kind: 'aside', at, why: `${why} (came ${aside.at.slice(0, 10)})` };
    return hashText(body) === hash ? [kept, ...findColumns(aside, at)] : [kept, { kind: 'aside changed', at }];
  });
}
