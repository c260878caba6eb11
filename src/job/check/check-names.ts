import type { DocumentFault } from '../fault.ts';
import { castInName, type Entry, type Path, type SiftedJob } from '../sift.ts';
import { faultAt, unknownName } from './fault-at.ts';

interface Named {
  readonly path: Path;
  readonly name: string;
  /** How the thing is called in a message. */
  readonly words: string;
}

function findDoubles(named: readonly Named[]): DocumentFault[] {
  const first = new Set<string>();
  return named.flatMap(({ path, name, words }) => {
    if (!first.has(name)) {
      first.add(name);
      return [];
    }
    return [faultAt(path, words, 'a name used once', `${words} is used more than once; each needs its own`)];
  });
}

function byId(entries: readonly Entry<{ readonly id: string }>[], kind: string): Named[] {
  return entries.map(({ path, value }) => ({ path: [...path, 'id'], name: value.id, words: `${kind} ${value.id}` }));
}

function byKey(entries: readonly Entry<{ readonly key: string }>[]): Named[] {
  return entries.map(({ path, value }) => ({ path: [...path, 'key'], name: value.key, words: `the key ${value.key}` }));
}

function byMark(entries: readonly Entry<{ readonly mark: string }>[], kind: string): Named[] {
  return entries.map(({ path, value }) => ({
    path: [...path, 'mark'],
    name: value.mark,
    words: `${kind} ${value.mark}`,
  }));
}

/** Marks, ids and keys that are used more than once. */
export function checkNames(job: SiftedJob): DocumentFault[] {
  const castIns = job.castIns.map(({ path, value }) => ({
    path: [...path, 'id'],
    name: castInName(value.panel, value.id),
    words: `insert ${value.id} of panel ${value.panel}`,
  }));
  return [
    ...findDoubles(byMark(job.panels, 'panel')),
    ...findDoubles(castIns),
    ...findDoubles(byMark(job.connections, 'connection')),
    ...findDoubles([...byKey(job.panels), ...byKey(job.castIns), ...byKey(job.connections)]),
    ...findDoubles(byId(job.concretes, 'concrete')),
    ...findDoubles(byId(job.items, 'catalogue item')),
    ...findDoubles(byId(job.details, 'detail')),
    ...findDoubles(byId(job.parts, 'holding part')),
  ];
}

/** Names that nothing has: every reference of the job and of the details. */
export function checkReferences(job: SiftedJob): DocumentFault[] {
  const { names } = job;
  const look = (path: Path, kind: string, name: string | null, known: ReadonlySet<string>): DocumentFault[] =>
    name === null || known.has(name) ? [] : [unknownName(path, kind, name, known)];
  return [
    ...job.panels.flatMap(({ path, value }) =>
      look([...path, 'concrete'], 'concrete', value.concrete, names.concretes),
    ),
    ...job.castIns.flatMap(({ path, value }) => [
      ...look([...path, 'panel'], 'panel', value.panel, names.panels),
      ...look([...path, 'item'], 'catalogue item', value.item, names.items),
      ...look([...path, 'holding'], 'holding part', value.holding, names.parts),
    ]),
    ...job.details.flatMap(({ path, value }) => look([...path, 'item'], 'catalogue item', value.item, names.items)),
    ...job.connections.flatMap(({ path, value }) => [
      ...look([...path, 'panel'], 'panel', value.panel, names.panels),
      ...look([...path, 'detail'], 'detail', value.detail, names.details),
      ...value.inserts.flatMap(({ insert }, i) => {
        if (!names.panels.has(value.panel) || names.castIns.has(castInName(value.panel, insert))) return [];
        const inPanel = job.castIns.filter((c) => c.value.panel === value.panel).map((c) => c.value.id);
        return [unknownName([...path, 'inserts', i, 'insert'], 'insert', insert, inPanel, ` in panel ${value.panel}`)];
      }),
    ]),
  ];
}
