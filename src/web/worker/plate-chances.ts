import {
  type ConnectionChance,
  findConnectionChance,
  type KnownChances,
} from '../../assess/learn/connection-chance.ts';
import type { Learned } from '../../assess/learn/learn-scatter.ts';
import { findUsualBed } from '../../assess/set-out/find-usual-bed.ts';
import { setOutPanel } from '../../assess/set-out/set-out-panel.ts';
import type { HeldJob } from './held-job.ts';
import { takeTurns } from './take-turns.ts';

/** Of what the yard has learned only how inserts scatter by the way of holding: no points. */
export type TakenGroups = Pick<Learned, 'groups'>;

/** Chances of the connections of one more panel, and how many of how many connections are done. */
export type TellChances = (found: readonly ConnectionChance[], done: number, of: number) => void | Promise<void>;

/**
 * The chance of every connection's plate in the state of the job that is held, panel by panel; messages are taken between them.
 * @returns false where `isReplaced` said that a newer question took over
 */
export async function findPlateChances(
  { index }: HeldJob,
  learned: TakenGroups,
  onFound: TellChances,
  isReplaced: () => boolean,
): Promise<boolean> {
  const known: KnownChances = new Map();
  const { panels, connections } = index.file.job;
  const told: (void | Promise<void>)[] = [];
  let done = 0;
  for (const { mark } of panels) {
    const own = index.connectionsOf(mark);
    if (own.length === 0) continue;
    await takeTurns();
    if (isReplaced()) return false;
    const setOut = setOutPanel(index, mark, findUsualBed(index.file, mark));
    const found = own.map((connection) => findConnectionChance(index, setOut, connection, learned, known));
    done += own.length;
    told.push(onFound(found, done, connections.length));
  }
  await Promise.all(told);
  return true;
}
