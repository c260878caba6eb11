import { expect, it } from 'vitest';
import type { ConnectionState } from '../../src/assess/connection-answer.ts';
import { countFollowing, tellChangedStates } from '../../src/say/change-words.ts';

const change = (mark: string, panel: string, before: ConnectionState, after: ConnectionState) => ({
  mark,
  panel,
  before: { state: before },
  after: { state: after },
});

it('counts what follows, and tells the worst first', () => {
  const all = [
    change('C1', 'P1', 'fails', 'passes'),
    change('C2', 'P1', 'passes', 'fails'),
    change('C3', 'P2', 'passes', 'passes'),
    change('C4', 'P2', 'passes', 'fails'),
  ];
  expect(countFollowing(all)).toBe('4 connections on 2 panels');
  expect(tellChangedStates(all)).toEqual([
    '2 now “passes” would be “fails”: C2, C4',
    '1 now “fails” would be “passes”: C1',
  ]);
  expect(tellChangedStates(all.slice(2, 3))).toEqual([]);
  expect(countFollowing(all.slice(0, 1))).toBe('1 connection on 1 panel');
});
