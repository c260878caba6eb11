import { findValueChanges } from '../difference/value-changes.ts';
import type { CastIn } from '../documents/cast-in.ts';
import type { Connection } from '../documents/connection.ts';
import type { Fixture } from '../documents/fixture.ts';
import type { Panel } from '../documents/panel.ts';
import { type DocumentFault, showPath, showValue } from '../fault.ts';
import { handedMark, mirrorConnection } from '../handed/mirror-connection.ts';
import { mirrorCastIn, mirrorPanel } from '../handed/mirror-panel.ts';
import type { Entry, Path, SiftedJob } from '../sift.ts';
import { faultAt } from './fault-at.ts';

/** Two places nearer than this are one [mm]. */
const SAME = 1e-6;

/** What is a thing's own, or the yard's: names, keys, how it lies in the form. */
const OWN = ['key', 'mark', 'panel', 'handedOf', 'inForm'];

/** One thing of the partner that is not the mirror image of the source's: the first value in which it differs. */
function compare(path: Path, what: string, expected: object, found: object, source: string): DocumentFault[] {
  const [first] = findValueChanges(expected, found, { within: SAME, passedOver: OWN });
  if (first === undefined) return [];
  const wanted = showValue(first.before);
  const text = `${what} is not the mirror image of that of ${source}: ${showPath(first.path)} is ${showValue(first.after)}; expected ${wanted}, or no link (handedOf)`;
  return [faultAt([...path, ...first.path], first.after, wanted, text)];
}

/** Compares the things of two panels one by one, found by their names. */
function compareAll<T extends object>(
  pair: { readonly source: string; readonly partner: Entry<Panel> },
  expected: ReadonlyMap<string, T>,
  found: ReadonlyMap<string, Entry<T>>,
  word: string,
): DocumentFault[] {
  const { source, partner } = pair;
  const { mark } = partner.value;
  const missing = [...expected.keys()].filter((name) => !found.has(name));
  const ofMissing = missing.map((name) => {
    const text = `panel ${mark} has no ${word} ${name}, as its source ${source} wants; expected one, or no link (handedOf)`;
    return faultAt([...partner.path, 'handedOf'], source, `${word} ${name}`, text);
  });
  const ofFound = [...found].flatMap(([name, { path, value }]) => {
    const wanted = expected.get(name);
    if (wanted !== undefined) return compare(path, `${word} ${name} of panel ${mark}`, wanted, value, source);
    const text = `${word} ${name} of panel ${mark} has none to be mirrored from in ${source}; expected it there too, or no link (handedOf)`;
    return [faultAt(path, name, `none, or one in ${source}`, text)];
  });
  return [...ofMissing, ...ofFound];
}

function byName<T>(entries: readonly Entry<T>[], name: (value: T) => string): Map<string, Entry<T>> {
  return new Map([...entries].reverse().map((entry) => [name(entry.value), entry]));
}

/** What the panels of a job hold, by the mark of the panel, found once for all partners. */
interface Holdings {
  readonly castIns: ReadonlyMap<string, readonly Entry<CastIn>[]>;
  readonly connections: ReadonlyMap<string, readonly Entry<Connection>[]>;
  readonly plates: ReadonlyMap<string, Fixture | null>;
}

function byPanel<T extends { readonly panel: string }>(entries: readonly Entry<T>[]): Map<string, Entry<T>[]> {
  const lists = new Map<string, Entry<T>[]>();
  for (const entry of entries) {
    const list = lists.get(entry.value.panel);
    if (list === undefined) lists.set(entry.value.panel, [entry]);
    else list.push(entry);
  }
  return lists;
}

function comparePartner(holdings: Holdings, source: Panel, partner: Entry<Panel>): DocumentFault[] {
  const { path, value: panel } = partner;
  const { mark } = panel;
  const ofPanel = compare(path, `panel ${mark}`, mirrorPanel(source, mark), panel, source.mark);
  // A wrong outline makes every place in it wrong.
  if (ofPanel.length > 0) return ofPanel;
  const castInsOf = (owner: string) => holdings.castIns.get(owner) ?? [];
  const connectionsOf = (owner: string) => holdings.connections.get(owner) ?? [];
  const plateOf = (fixture: Fixture | null, detail: string | null) =>
    fixture ?? (detail === null ? null : (holdings.plates.get(detail) ?? null));
  const castIns = castInsOf(source.mark)
    .filter(({ value }) => value.edge === null || value.edge < source.outline_mm.length)
    .map(({ value }) => [value.id, mirrorCastIn(source, value, mark)] as const);
  const connections = connectionsOf(source.mark)
    .filter(({ value }) => value.edge === null || value.edge < source.outline_mm.length)
    .map(({ value }) => {
      const plate = plateOf(value.fixture, value.detail);
      return [handedMark(value.mark), mirrorConnection(source, value, plate, mark)] as const;
    });
  const pair = { source: source.mark, partner };
  return [
    ...compareAll(
      pair,
      new Map(castIns),
      byName(castInsOf(mark), (castIn) => castIn.id),
      'insert',
    ),
    ...compareAll(
      pair,
      new Map(connections),
      byName(connectionsOf(mark), (connection) => connection.mark),
      'connection',
    ),
  ];
}

/** Handed partners: linked to a panel that is no partner itself, and its mirror image in everything. */
export function checkHandedPartners(job: SiftedJob): DocumentFault[] {
  const panels = byName(job.panels, (panel) => panel.mark);
  const holdings: Holdings = {
    castIns: byPanel(job.castIns),
    connections: byPanel(job.connections),
    plates: new Map(job.details.map(({ value }) => [value.id, value.fixture])),
  };
  return job.panels.flatMap((partner) => {
    const { path, value: panel } = partner;
    if (panel.handedOf === null) return [];
    const refuse = (text: string) => [faultAt([...path, 'handedOf'], panel.handedOf, 'a panel of its own', text)];
    if (panel.handedOf === panel.mark)
      return refuse(`panel ${panel.mark} is given as its own handed partner; expected another panel`);
    const source = panels.get(panel.handedOf)?.value;
    if (source === undefined) return [];
    if (source.handedOf !== null)
      return refuse(
        `panel ${panel.mark} is linked to ${source.mark}, which is itself the handed partner of ${source.handedOf}; expected ${source.handedOf}, or no link`,
      );
    return comparePartner(holdings, source, partner);
  });
}
