import { findThread } from '../../engine/hardware/threads.ts';
import type { Connection } from '../../job/documents/connection.ts';
import { showLength } from '../../job/resolve/local-member-type.ts';
import type { RemedyQuestion } from './attempt.ts';
import { type CastMember, membersOf } from './cast-panel.ts';

/** What the depths of a connection's inserts ask for. Lengths mm. */
export interface DepthNeeds {
  /** Packers that let the plate lie flat over the proudest insert, on top of none; null: those of the design do. */
  readonly packers: number | null;
  /** Inserts that lie deeper than aimed at: their bolts must be longer. */
  readonly sunk: readonly CastMember[];
  readonly proud: readonly CastMember[];
}

/** An insert that gets no bolt still stands under its plate. @param connection with the inserts that get one, and the packers it has */
export function findDepthNeeds({ cast, connection: drawn }: RemedyQuestion, connection: Connection): DepthNeeds {
  const proud = membersOf(cast, drawn).filter((member) => member.proud > connection.packers_mm);
  const most = Math.max(0, ...proud.map((member) => member.proud));
  return {
    packers: proud.length === 0 ? null : Math.ceil(most),
    sunk: membersOf(cast, connection).filter(({ sunk }) => sunk > 0),
    proud,
  };
}

function nameMembers(members: readonly CastMember[]): string {
  return `no. ${members.map(({ insert }) => insert.item.number).join(', ')}`;
}

/** What goes with every remedy but "as is", in words. */
export function tellDepthNeeds({ packers, sunk, proud }: DepthNeeds): readonly string[] {
  const lines: string[] = [];
  if (packers !== null)
    lines.push(
      `packers of ${packers} mm under the plate: ${nameMembers(proud)} stands out of the face; bolts as much longer`,
    );
  for (const member of sunk) lines.push(`bolt of ${nameMembers([member])} longer by ${showLength(member.sunk)}`);
  return lines;
}

/** A connection with the packers that its depths ask for. */
export function packUp(connection: Connection, { packers }: DepthNeeds): Connection {
  return packers === null ? connection : { ...connection, packers_mm: packers };
}

/** The connection with bolts of the length that the design has: they engage less by what an insert lies too deep. */
export function keepBolts(
  question: RemedyQuestion,
  { sunk }: DepthNeeds,
): { readonly connection: Connection; readonly faults: readonly string[] } {
  const { connection, cast } = question;
  const [first] = sunk;
  const item = first?.insert.item.item ?? null;
  if (first === undefined || item === null) return { connection, faults: [] };
  const { engagement_d } = cast.index.file.library.rules.defaults;
  const { diameter } = findThread(connection.boltThread ?? item.thread);
  const needed = Math.min(engagement_d * diameter, item.threadDepth_mm);
  const designed = connection.engagement_mm ?? needed;
  const most = Math.max(...sunk.map((member) => member.sunk));
  const left = designed - most;
  if (left >= needed) return { connection: { ...connection, engagement_mm: left }, faults: [] };
  const deepest = sunk.filter((member) => member.sunk === most);
  return {
    connection: { ...connection, engagement_mm: Math.max(left, 1) },
    faults: [
      `bolts of the designed length engage ${showLength(Math.max(0, left))} in ${nameMembers(deepest)}, at least ${showLength(needed)} is needed`,
    ],
  };
}
