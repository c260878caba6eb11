import type { ConnectionState } from '../assess/connection-answer.ts';
import type { Finding } from '../assess/set-out/list-findings.ts';
import type { IssueWarning } from './issue-words.ts';
import { countOf } from './part-words.ts';

/** How a pour stands: a state with its words. */
export interface Readiness {
  readonly state: ConnectionState | 'computing';
  readonly words: string;
}

/**
 * Whether a pour may go ahead, in a few words. What cannot be poured as it stands comes first; a pour with connections that do not pass is never
 * called ready, whatever was issued.
 *
 * @param warnings of the connections in its panels, the worst state first
 * @param computing connections without an answer yet
 */
export function tellReadiness(
  findings: readonly Finding[],
  warnings: readonly IssueWarning[],
  computing: number,
): Readiness {
  const stops = findings.filter(({ isStop }) => isStop).length;
  const others = findings.length - stops;
  if (stops > 0) return { state: 'fails', words: `not ready: ${countOf(stops, 'stop')}` };
  const [worst] = warnings;
  if (worst !== undefined) return { state: worst.state, words: `not ready, ${worst.text}` };
  if (computing > 0) return { state: 'computing', words: 'strength is being computed …' };
  return { state: 'passes', words: others > 0 ? `ready, ${others} to look at` : 'ready' };
}

/** Where a panel lies in words: `outside down`. */
export function nameFaceDown(face: 'outside' | 'inside'): string {
  return `${face} down`;
}
