import type { JobFile } from '../job/documents/job-file.ts';
import { indexJob } from '../job/job-index.ts';
import { resolveConnection } from '../job/resolve/resolve-connection.ts';
import { assessConnection } from './assess-connection.ts';
import { CONNECTION_STATES, type ConnectionAnswer, type ConnectionState } from './connection-answer.ts';

/** The answer for a whole job. */
export interface JobAnswer {
  readonly connections: readonly ConnectionAnswer[];
  /** How many connections are in each state. */
  readonly counts: Readonly<Record<ConnectionState, number>>;
  /** Fixing inserts that no connection holds: set out, never checked. */
  readonly loose: readonly { readonly panel: string; readonly insert: string }[];
  /** Cast-in items of other roles, by role: set out, never computed. */
  readonly otherRoles: Readonly<Record<string, number>>;
}

/** Keeps lists of sentences once: thousands of connections rest on the same assumptions and carry the same warnings. */
class SentencePool {
  readonly #lists = new Map<string, readonly string[]>();

  share(answer: ConnectionAnswer): ConnectionAnswer {
    const { reasons, assumptions, warnings } = answer;
    return {
      ...answer,
      reasons: this.#keep(reasons),
      assumptions: this.#keep(assumptions),
      warnings: this.#keep(warnings),
    };
  }

  #keep(list: readonly string[]): readonly string[] {
    const key = list.join('\n');
    const known = this.#lists.get(key);
    if (known !== undefined) return known;
    this.#lists.set(key, list);
    return list;
  }
}

/**
 * Assesses every connection of a job, in order.
 * @param onProgress told after each connection how many of how many are done
 */
export function assessJob(file: JobFile, onProgress: (done: number, total: number) => void = () => {}): JobAnswer {
  const { connections, castIns } = file.job;
  const counts = Object.fromEntries(CONNECTION_STATES.map((state) => [state, 0])) as Record<ConnectionState, number>;
  const index = indexJob(file);
  const answers: ConnectionAnswer[] = [];
  const pool = new SentencePool();
  for (const connection of connections) {
    const answer = pool.share(assessConnection(resolveConnection(index, connection)));
    answers.push(answer);
    counts[answer.state] += 1;
    onProgress(answers.length, connections.length);
  }
  const held = new Set(connections.flatMap(({ panel, inserts }) => inserts.map(({ insert }) => `${panel}\n${insert}`)));
  const loose = castIns
    .filter(({ role, panel, id }) => role === 'fixing' && !held.has(`${panel}\n${id}`))
    .map(({ panel, id }) => ({ panel, insert: id }));
  const otherRoles: Record<string, number> = {};
  for (const { role } of castIns) if (role !== 'fixing') otherRoles[role] = (otherRoles[role] ?? 0) + 1;
  return { connections: answers, counts, loose, otherRoles };
}
