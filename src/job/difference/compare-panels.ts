import type { CastIn } from '../documents/cast-in.ts';
import type { Connection } from '../documents/connection.ts';
import type { JobFile } from '../documents/job-file.ts';
import type { Panel } from '../documents/panel.ts';
import { castInAspects, compareAspects, connectionAspects, panelAspects } from './aspects.ts';
import type { CastInDifference, ConnectionDifference, Move, PanelDifference } from './job-difference.ts';

/** One state of a job, with what each panel holds found once. */
interface State {
  readonly panels: ReadonlyMap<string, Panel>;
  readonly castIns: ReadonlyMap<string, ReadonlyMap<string, CastIn>>;
  readonly connections: ReadonlyMap<string, ReadonlyMap<string, Connection>>;
}

/** Things by their permanent keys, grouped by the panel that holds them. */
function groupByPanel<T extends { readonly key: string; readonly panel: string }>(
  list: readonly T[],
): Map<string, Map<string, T>> {
  const groups = new Map<string, Map<string, T>>();
  for (const thing of list) {
    const group = groups.get(thing.panel) ?? new Map<string, T>();
    groups.set(thing.panel, group.set(thing.key, thing));
  }
  return groups;
}

/** A connection with the plate of its detail in place of the name, so that a changed detail is a changed plate. */
function withPlate(connection: Connection, details: ReadonlyMap<string, Connection['fixture']>): Connection {
  const { detail } = connection;
  return detail === null ? connection : { ...connection, fixture: details.get(detail) ?? null };
}

function readState({ job, library }: JobFile): State {
  const details = new Map(library.details.details.map(({ id, fixture }) => [id, fixture]));
  return {
    panels: new Map(job.panels.map((panel) => [panel.key, panel])),
    castIns: groupByPanel(job.castIns),
    connections: groupByPanel(job.connections.map((connection) => withPlate(connection, details))),
  };
}

interface Pairs<T> {
  readonly both: readonly (readonly [before: T, after: T])[];
  readonly added: readonly T[];
  readonly removed: readonly T[];
}

function pairUp<T>(before: ReadonlyMap<string, T> = new Map(), after: ReadonlyMap<string, T> = new Map()): Pairs<T> {
  const both: (readonly [T, T])[] = [];
  const added: T[] = [];
  for (const [key, thing] of after) {
    const earlier = before.get(key);
    if (earlier === undefined) added.push(thing);
    else both.push([earlier, thing]);
  }
  return { both, added, removed: [...before].flatMap(([key, thing]) => (after.has(key) ? [] : [thing])) };
}

function findMove(before: CastIn, after: CastIn): Move | null {
  if (before.face !== after.face || before.edge !== after.edge) return null;
  const distance = Math.hypot(after.x_mm - before.x_mm, after.y_mm - before.y_mm);
  return { from: [before.x_mm, before.y_mm], to: [after.x_mm, after.y_mm], distance };
}

function compareCastIns({ both, added, removed }: Pairs<CastIn>): CastInDifference[] {
  return [
    ...both.flatMap(([before, after]): CastInDifference[] => {
      const aspects = compareAspects(before, after, castInAspects);
      if (aspects.length === 0) return [];
      const isElsewhere = aspects.some(({ what }) => what === 'place');
      return [{ kind: 'changed', before, after, aspects, move: isElsewhere ? findMove(before, after) : null }];
    }),
    ...added.map((castIn) => ({ kind: 'added' as const, castIn })),
    ...removed.map((castIn) => ({ kind: 'removed' as const, castIn })),
  ];
}

function compareConnections({ both, added, removed }: Pairs<Connection>): ConnectionDifference[] {
  return [
    ...both.flatMap(([before, after]): ConnectionDifference[] => {
      const aspects = compareAspects(before, after, connectionAspects);
      return aspects.length === 0 ? [] : [{ kind: 'changed', before, after, aspects }];
    }),
    ...added.map((connection) => ({ kind: 'added' as const, connection })),
    ...removed.map((connection) => ({ kind: 'removed' as const, connection })),
  ];
}

/** Panels by their permanent keys, each with what it holds. */
export function comparePanels(before: JobFile, after: JobFile): PanelDifference[] {
  const [earlier, later] = [readState(before), readState(after)];
  const { both, added, removed } = pairUp(earlier.panels, later.panels);
  const whole = (kind: 'added' | 'removed', panel: Panel, state: State): PanelDifference => {
    const inserts = [...(state.castIns.get(panel.mark)?.values() ?? [])].filter(({ item }) => item !== null);
    return { kind, panel, inserts: inserts.length };
  };
  const changed = new Map(
    both.flatMap(([old, now]): [string, PanelDifference][] => {
      const aspects = compareAspects({ ...old, ...old.inForm }, { ...now, ...now.inForm }, panelAspects);
      const castIns = compareCastIns(pairUp(earlier.castIns.get(old.mark), later.castIns.get(now.mark)));
      const connections = compareConnections(
        pairUp(earlier.connections.get(old.mark), later.connections.get(now.mark)),
      );
      if (aspects.length + castIns.length + connections.length === 0) return [];
      return [[now.key, { kind: 'changed', before: old, after: now, aspects, castIns, connections }]];
    }),
  );
  const news = new Set(added.map(({ key }) => key));
  return [
    ...after.job.panels.flatMap((panel) => {
      if (news.has(panel.key)) return [whole('added', panel, later)];
      const difference = changed.get(panel.key);
      return difference === undefined ? [] : [difference];
    }),
    ...removed.map((panel) => whole('removed', panel, earlier)),
  ];
}
