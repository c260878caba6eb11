import type { DocumentFault } from '../fault.ts';
import { castInName, type Entry, type Path, type SiftedJob } from '../sift.ts';
import { faultAt, unknownName } from './fault-at.ts';

interface Named {
  /** The entry's place, and the key in it that holds the name. */
  readonly entry: Path;
  readonly key: string;
  readonly name: string;
  readonly value: string;
  /** How the thing is called in a message. */
  readonly words: string;
}

function findDoubles(named: readonly Named[]): Named[] {
  const first = new Set<string>();
  return named.filter(({ name }) => {
    const isDouble = first.has(name);
    first.add(name);
    return isDouble;
  });
}

function report({ entry, key, value, words }: Named): DocumentFault {
  return faultAt([...entry, key], value, 'a name used once', `${words} is used more than once; each needs its own`);
}

function byId(entries: readonly Entry<{ readonly id: string }>[], kind: string): Named[] {
  return entries.map(({ path, value: { id } }) => ({
    entry: path,
    key: 'id',
    name: id,
    value: id,
    words: `${kind} ${id}`,
  }));
}

function byKey(entries: readonly Entry<{ readonly key: string }>[]): Named[] {
  return entries.map(({ path, value: { key } }) => ({
    entry: path,
    key: 'key',
    name: key,
    value: key,
    words: `the key ${key}`,
  }));
}

function byMark(entries: readonly Entry<{ readonly mark: string }>[], kind: string): Named[] {
  return entries.map(({ path, value: { mark } }) => ({
    entry: path,
    key: 'mark',
    name: mark,
    value: mark,
    words: `${kind} ${mark}`,
  }));
}

/** Marks, ids and keys that are used more than once. A key is not reported beside the mark of the same entry. */
export function checkNames(job: SiftedJob): DocumentFault[] {
  const castIns = job.castIns.map(({ path, value: { panel, id } }) => ({
    entry: path,
    key: 'id',
    name: castInName(panel, id),
    value: id,
    words: `insert ${id} of panel ${panel}`,
  }));
  const pieces = job.pours.flatMap(({ path, value: { pieces } }) =>
    pieces.map(({ panel, serial }, i) => ({
      entry: [...path, 'pieces', i],
      key: 'serial',
      name: castInName(panel, serial),
      value: serial,
      words: `piece ${serial} of panel ${panel}`,
    })),
  );
  const marks = [
    ...findDoubles(byMark(job.panels, 'panel')),
    ...findDoubles(castIns),
    ...findDoubles(byMark(job.connections, 'connection')),
  ];
  const reported = new Set(marks.map(({ entry }) => entry));
  const keys = findDoubles([...byKey(job.panels), ...byKey(job.castIns), ...byKey(job.connections)]);
  return [
    ...marks,
    ...keys.filter(({ entry }) => !reported.has(entry)),
    ...findDoubles(byId(job.concretes, 'concrete')),
    ...findDoubles(byId(job.items, 'catalogue item')),
    ...findDoubles(byId(job.details, 'detail')),
    ...findDoubles(byId(job.parts, 'holding part')),
    ...findDoubles(byId(job.ways, 'way of holding')),
    ...findDoubles(byId(job.beds, 'bed')),
    ...findDoubles(byId(job.pours, 'pour')),
    ...findDoubles(pieces),
  ].map(report);
}

/** Names that nothing has: every reference of the job and of the details. */
export function checkReferences(job: SiftedJob): DocumentFault[] {
  const { names } = job;
  const look = (path: Path, kind: string, name: string | null, known: ReadonlySet<string>): DocumentFault[] =>
    name === null || known.has(name) ? [] : [unknownName(path, kind, name, known)];
  return [
    ...job.panels.flatMap(({ path, value }) => [
      ...look([...path, 'concrete'], 'concrete', value.concrete, names.concretes),
      ...look([...path, 'handedOf'], 'panel', value.handedOf, names.panels),
    ]),
    ...job.castIns.flatMap(({ path, value }) => [
      ...look([...path, 'panel'], 'panel', value.panel, names.panels),
      ...look([...path, 'item'], 'catalogue item', value.item, names.items),
      ...look([...path, 'holding'], 'way of holding', value.holding, names.ways),
    ]),
    ...job.ways.flatMap(({ path, value }) => [
      ...value.parts.flatMap(({ part }, i) => look([...path, 'parts', i, 'part'], 'holding part', part, names.parts)),
      ...value.chairs.flatMap((chair, i) => look([...path, 'chairs', i], 'holding part', chair, names.parts)),
    ]),
    ...job.pours.flatMap(({ path, value }) => [
      ...look([...path, 'bed'], 'bed', value.bed, names.beds),
      ...value.pieces.flatMap(({ panel }, i) => look([...path, 'pieces', i, 'panel'], 'panel', panel, names.panels)),
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
