import type { Connection } from '../documents/connection.ts';
import type { Panel } from '../documents/panel.ts';
import type { DocumentFault } from '../fault.ts';
import { castInName, type Entry, type SiftedJob } from '../sift.ts';
import { checkFixture, checkHolePlaces } from './check-fixture.ts';
import type { ConnectionParts } from './connection-parts.ts';
import { faultAt } from './fault-at.ts';

function checkFace({ path, value: connection }: Entry<Connection>, parts: ConnectionParts): DocumentFault[] {
  const { panel } = parts;
  const last = panel === undefined ? Number.POSITIVE_INFINITY : panel.outline_mm.length - 1;
  if (connection.face === 'edge' && (connection.edge === null || connection.edge > last)) {
    const text = `a connection on an edge needs the number of the edge, 0 to ${last}`;
    return [faultAt([...path, 'edge'], connection.edge, `0 to ${last}`, text)];
  }
  if (connection.face !== 'edge' && connection.edge !== null) {
    return [
      faultAt([...path, 'edge'], connection.edge, 'no edge', `a connection on the ${connection.face} face has no edge`),
    ];
  }
  return parts.inserts.flatMap(({ path: insertPath, castIn }) => {
    if (castIn.face === connection.face && castIn.edge === connection.edge) return [];
    const name = (of: { face: string; edge: number | null }) =>
      of.face === 'edge' ? (of.edge === null ? 'edge without a number' : `edge ${of.edge}`) : `${of.face} face`;
    const text = `insert ${castIn.id} is on the ${name(castIn)}, connection ${connection.mark} on the ${name(connection)}; expected one face`;
    return [faultAt([...insertPath, 'insert'], castIn.id, `an insert on the ${name(connection)}`, text)];
  });
}

/** Bolts that go into their inserts: thread, finish, and no more engagement than there is thread. */
export function checkBolts({ path, value: connection }: Entry<Connection>, parts: ConnectionParts): DocumentFault[] {
  return parts.inserts.flatMap(({ path: insertPath, castIn, item }) => {
    if (item === undefined) {
      if (castIn.item !== null) return [];
      const text = `${castIn.role} ${castIn.id} has no thread to bolt to; expected an insert of the catalogue`;
      return [faultAt([...insertPath, 'insert'], castIn.id, 'an insert of the catalogue', text)];
    }
    const faults: DocumentFault[] = [];
    if (connection.boltThread !== null && connection.boltThread !== item.thread) {
      const text = `a bolt ${connection.boltThread} does not fit ${item.id}, thread ${item.thread}`;
      faults.push(faultAt([...path, 'boltThread'], connection.boltThread, item.thread, text));
    }
    if (connection.boltFinish !== null && !item.boltFinishes.includes(connection.boltFinish)) {
      const taken = item.boltFinishes.join(', ');
      const text = `a ${connection.boltFinish} bolt does not go into ${item.id} (thread class ${item.threadClass}), which takes: ${taken}`;
      faults.push(faultAt([...path, 'boltFinish'], connection.boltFinish, taken, text));
    }
    const available = item.threadDepth_mm;
    if (connection.engagement_mm !== null && connection.engagement_mm > available) {
      const text = `an engagement of ${connection.engagement_mm} mm is more than the thread of ${item.id}, ${available} mm deep`;
      faults.push(faultAt([...path, 'engagement_mm'], connection.engagement_mm, `at most ${available} mm`, text));
    }
    return faults;
  });
}

/** A group of inserts shares loads through a plate; a single insert may take them straight. */
function checkPlate(entry: Entry<Connection>, parts: ConnectionParts): DocumentFault[] {
  const { path, value: connection } = entry;
  if (connection.detail !== null && connection.fixture !== null) {
    const text = `both a standard detail (${connection.detail}) and a plate of its own; expected one of them`;
    return [faultAt([...path, 'fixture'], connection.detail, 'a detail or a fixture', text)];
  }
  if (connection.detail === null && connection.fixture === null) {
    if (connection.actions.kind !== 'loads' || connection.inserts.length === 1) return [];
    const text =
      'loads are given but no plate that carries them to the inserts; expected a fixture or a standard detail';
    return [faultAt([...path, 'fixture'], null, 'a fixture or a detail', text)];
  }
  const own = connection.fixture === null ? [] : checkFixture([...path, 'fixture'], connection.fixture);
  return [...own, ...checkHolePlaces(entry, parts)];
}

function checkUse(job: SiftedJob): DocumentFault[] {
  const users = new Map<string, string>();
  return job.connections.flatMap(({ path, value: connection }) =>
    connection.inserts.flatMap(({ insert }, i) => {
      const name = castInName(connection.panel, insert);
      const user = users.get(name);
      users.set(name, connection.mark);
      if (user === undefined) return [];
      const text = `insert ${insert} of panel ${connection.panel} is already used by connection ${user}; expected an insert of its own`;
      return [faultAt([...path, 'inserts', i, 'insert'], insert, 'an insert used once', text)];
    }),
  );
}

function checkRest(
  { path, value: connection }: Entry<Connection>,
  job: SiftedJob,
  panel: Panel | undefined,
): DocumentFault[] {
  const faults: DocumentFault[] = [];
  if (connection.actions.kind === 'loads') {
    const names = connection.actions.combinations.map((c) => c.name);
    names.forEach((name, i) => {
      if (names.indexOf(name) === i) return;
      const text = `load combination ${name} of connection ${connection.mark} is given twice`;
      faults.push(faultAt([...path, 'actions', 'combinations', i, 'name'], name, 'each combination once', text));
    });
  }
  const mix = job.concretes.find(({ value }) => value.id === panel?.concrete)?.value;
  const { age_days } = connection;
  if (mix !== undefined && age_days !== null && age_days !== 28 && !mix.ages.some((a) => a.age_days === age_days)) {
    const known = [...mix.ages.map((a) => a.age_days), 28].join(', ');
    const text = `no strength of concrete ${mix.id} is given for ${age_days} days; expected one of ${known} days`;
    faults.push(faultAt([...path, 'age_days'], age_days, `one of ${known}`, text));
  }
  return faults;
}

/** Connections: one face, inserts used once, bolts that go in, a plate whose holes meet the inserts, ages that are known. */
export function checkConnections(job: SiftedJob): DocumentFault[] {
  // Of two with one name, which is a fault by itself, the first counts.
  const panels = new Map([...job.panels].reverse().map(({ value }) => [value.mark, value]));
  const items = new Map(job.items.map(({ value }) => [value.id, value]));
  const castIns = new Map([...job.castIns].reverse().map(({ value }) => [castInName(value.panel, value.id), value]));
  const details = new Map(job.details.map(({ value }) => [value.id, value.fixture]));
  const ofConnections = job.connections.flatMap((entry) => {
    const { path, value: connection } = entry;
    const inserts = connection.inserts.flatMap(({ insert, hole }, i) => {
      const castIn = castIns.get(castInName(connection.panel, insert));
      if (castIn === undefined) return [];
      const item = castIn.item === null ? undefined : items.get(castIn.item);
      return [{ path: [...path, 'inserts', i], hole, castIn, item }];
    });
    const fixture =
      connection.fixture ?? (connection.detail === null ? null : (details.get(connection.detail) ?? null));
    const parts = { panel: panels.get(connection.panel), fixture, inserts };
    return [
      ...checkFace(entry, parts),
      ...checkBolts(entry, parts),
      ...checkPlate(entry, parts),
      ...checkRest(entry, job, parts.panel),
    ];
  });
  const ofDetails = job.details.flatMap(({ path, value }) => checkFixture([...path, 'fixture'], value.fixture));
  return [...ofConnections, ...ofDetails, ...checkUse(job)];
}
