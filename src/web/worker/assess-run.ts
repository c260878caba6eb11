import { assessConnection } from '../../assess/assess-connection.ts';
import type { ConnectionAnswer } from '../../assess/connection-answer.ts';
import { resolveConnection } from '../../job/resolve/resolve-connection.ts';
import type { HeldJob } from './held-job.ts';
import { takeTurns } from './take-turns.ts';

/** The answer of a connection, by the key that it keeps for ever. */
export interface KeyedAnswer {
  readonly key: string;
  readonly answer: ConnectionAnswer;
}

export type TellAnswers = (answers: readonly KeyedAnswer[]) => void | Promise<void>;

/** How many of how many connections are done. */
export type TellProgress = (done: number, total: number) => void | Promise<void>;

/** Done: every connection that was asked for has its answer. Replaced: a newer question took over, with what was left. */
export type AssessOutcome = { readonly kind: 'done'; readonly computed: number } | { readonly kind: 'replaced' };

/** How long to compute before messages are looked at [ms]: an edit or a newer question waits no longer. */
const LOT_MS = 12;

/**
 * Assesses what has no answer yet, in lots, with time for messages between them. Edits that come meanwhile are taken in: what they touch is computed
 * as it is then.
 *
 * @param isReplaced asked between lots
 * Rejects when a connection names what the job has not (reading refuses such a job).
 */
export async function assessStale(
  held: HeldJob,
  marks: readonly string[] | null,
  onAnswers: TellAnswers,
  onProgress: TellProgress,
  isReplaced: () => boolean,
): Promise<AssessOutcome> {
  const told: (void | Promise<void>)[] = [];
  let computed = 0;
  for (;;) {
    if (isReplaced()) return { kind: 'replaced' };
    const left = held.listStale(marks);
    const lot = assessLot(held, left);
    computed += lot.length;
    if (lot.length > 0) told.push(onAnswers(lot));
    told.push(onProgress(computed, computed + left.length - lot.length));
    if (lot.length === left.length) break;
    await takeTurns();
  }
  // The page has taken every lot when it hears that all is done.
  await Promise.all(told);
  return { kind: 'done', computed };
}

function assessLot(held: HeldJob, left: HeldJob['file']['job']['connections']): KeyedAnswer[] {
  const until = performance.now() + LOT_MS;
  const lot: KeyedAnswer[] = [];
  for (const connection of left) {
    lot.push({ key: connection.key, answer: assessConnection(resolveConnection(held.index, connection)) });
    held.settle(connection.key);
    if (performance.now() > until) break;
  }
  return lot;
}
