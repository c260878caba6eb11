import type { CastIn } from '../job/documents/cast-in.ts';
import type { Connection } from '../job/documents/connection.ts';
import type { JobFile } from '../job/documents/job-file.ts';
import type { Panel } from '../job/documents/panel.ts';
import { CONNECTION_STATES, type ConnectionAnswer, type ConnectionState } from './connection-answer.ts';

/** From what must be looked at first to what may wait. */
export const STATES_BY_NEED = [
  'fails',
  'cannot be computed',
  'not covered',
  'strength not checked',
  'passes',
] as const satisfies readonly ConnectionState[];

/** What a panel holds and where it is cast, whatever the answers are. */
export interface PanelContents {
  readonly panel: Panel;
  readonly castIns: readonly CastIn[];
  readonly connections: readonly Connection[];
  /** Fixing inserts that belong to no connection: nobody computes them. */
  readonly loose: number;
  /** Inserts whose way of holding is not decided. */
  readonly unheld: number;
  /** Ids of the pours that cast it. */
  readonly pours: readonly string[];
}

/** One panel as a list of panels shows it. */
export interface PanelStatus extends PanelContents {
  /** Connections by state; those without an answer yet are in `computing`. */
  readonly counts: Readonly<Record<ConnectionState, number>>;
  readonly computing: number;
  /** What must be looked at first; null: it has no answer. */
  readonly worst: ConnectionAnswer | null;
  /** The largest ratio of load to resistance; null: none was computed. */
  readonly highest: ConnectionAnswer | null;
}

function groupByPanel<T extends { readonly panel: string }>(entries: readonly T[]): ReadonlyMap<string, readonly T[]> {
  const groups = new Map<string, T[]>();
  for (const entry of entries) {
    const group = groups.get(entry.panel);
    if (group === undefined) groups.set(entry.panel, [entry]);
    else group.push(entry);
  }
  return groups;
}

function groupPours({ job }: JobFile): ReadonlyMap<string, readonly string[]> {
  const groups = new Map<string, string[]>();
  for (const { id, pieces } of job.pours)
    for (const { panel } of pieces) {
      const group = groups.get(panel) ?? [];
      if (!group.includes(id)) group.push(id);
      groups.set(panel, group);
    }
  return groups;
}

/** How urgent an answer is: first its state, then its ratio. */
function isWorse(one: ConnectionAnswer, than: ConnectionAnswer | null): boolean {
  if (than === null) return true;
  const need = STATES_BY_NEED.indexOf(one.state) - STATES_BY_NEED.indexOf(than.state);
  return need < 0 || (need === 0 && (one.ratio ?? 0) > (than.ratio ?? 0));
}

/** What every panel of a job holds, in the order of the job. */
export function listContents(file: JobFile): readonly PanelContents[] {
  const castIns = groupByPanel(file.job.castIns);
  const connections = groupByPanel(file.job.connections);
  const pours = groupPours(file);
  return file.job.panels.map((panel) => {
    const own = connections.get(panel.mark) ?? [];
    const items = castIns.get(panel.mark) ?? [];
    const connected = new Set(own.flatMap(({ inserts }) => inserts.map(({ insert }) => insert)));
    return {
      panel,
      castIns: items,
      connections: own,
      loose: items.filter(({ role, id }) => role === 'fixing' && !connected.has(id)).length,
      unheld: items.filter(({ item, holding }) => item !== null && holding === null).length,
      pours: pours.get(panel.mark) ?? [],
    };
  });
}

/**
 * Every panel with what is known of it by now.
 * @param answers by the permanent key of the connection; what is missing is being computed
 */
export function listPanelStatus(
  contents: readonly PanelContents[],
  answers: ReadonlyMap<string, ConnectionAnswer>,
): readonly PanelStatus[] {
  return contents.map((content) => {
    const counts = Object.fromEntries(CONNECTION_STATES.map((state) => [state, 0])) as Record<ConnectionState, number>;
    const status = { computing: 0, worst: null as ConnectionAnswer | null, highest: null as ConnectionAnswer | null };
    for (const { key } of content.connections) {
      const answer = answers.get(key);
      if (answer === undefined) {
        status.computing += 1;
        continue;
      }
      counts[answer.state] += 1;
      if (isWorse(answer, status.worst)) status.worst = answer;
      if (answer.ratio !== null && answer.ratio > (status.highest?.ratio ?? -1)) status.highest = answer;
    }
    return { ...content, counts, ...status };
  });
}

/** Whether a panel is looked for under a state: one connection is enough for any but the good one, in which all of them must be. */
export function isInState({ counts, connections }: PanelStatus, state: ConnectionState): boolean {
  return counts[state] > 0 && (state !== 'passes' || counts.passes === connections.length);
}
