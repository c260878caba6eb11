import type { Finding } from '../assess/set-out/list-findings.ts';
import { countOf } from './part-words.ts';

/** Whether a pour may go ahead, in a few words. */
export function nameReadiness(findings: readonly Finding[]): string {
  const stops = findings.filter(({ isStop }) => isStop).length;
  const others = findings.length - stops;
  if (stops > 0) return `not ready: ${countOf(stops, 'stop')}`;
  return others > 0 ? `ready, ${others} to look at` : 'ready';
}

/** Where a panel lies in words: `outside down`. */
export function nameFaceDown(face: 'outside' | 'inside'): string {
  return `${face} down`;
}
