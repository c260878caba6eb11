import type { ConnectionState } from '../assess/connection-answer.ts';

const PLURALS: Readonly<Partial<Record<ConnectionState, string>>> = { passes: 'pass', fails: 'fail' };

/** How many connections are in a state, in small letters: `1 passes`, `6 fail`, `2 not covered`. */
export function nameCount(state: ConnectionState, count: number): string {
  return `${count} ${count === 1 ? state : (PLURALS[state] ?? state)}`;
}
