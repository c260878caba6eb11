import type { ConnectionState } from '../assess/connection-answer.ts';
import { shortenMarks } from './connection-words.ts';

/** A connection before and after a change that is not made yet. */
export interface ChangedState {
  readonly mark: string;
  readonly panel: string;
  readonly before: { readonly state: ConnectionState };
  readonly after: { readonly state: ConnectionState };
}

const plural = (count: number, what: string) => `${count} ${what}${count === 1 ? '' : 's'}`;

/** How many follow a change: `14 connections on 9 panels`. */
export function countFollowing(all: readonly ChangedState[]): string {
  const panels = new Set(all.map(({ panel }) => panel));
  return `${plural(all.length, 'connection')} on ${plural(panels.size, 'panel')}`;
}

/** What becomes of the answers, a sentence for each way in which some change; worst first; empty where every state stays. */
export function tellChangedStates(all: readonly ChangedState[]): readonly string[] {
  const groups = new Map<
    string,
    { readonly from: ConnectionState; readonly to: ConnectionState; readonly marks: string[] }
  >();
  for (const { mark, before, after } of all) {
    if (before.state === after.state) continue;
    const key = `${before.state} ${after.state}`;
    const group = groups.get(key) ?? { from: before.state, to: after.state, marks: [] };
    groups.set(key, group);
    group.marks.push(mark);
  }
  const order = ({ from, to }: { readonly from: ConnectionState; readonly to: ConnectionState }) =>
    from === 'passes' ? 0 : to === 'passes' ? 2 : 1;
  return [...groups.values()]
    .sort((a, b) => order(a) - order(b))
    .map(({ from, to, marks }) => `${marks.length} now “${from}” would be “${to}”: ${shortenMarks(marks)}`);
}
