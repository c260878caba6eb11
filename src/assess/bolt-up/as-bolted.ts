import type { Connection } from '../../job/documents/connection.ts';
import type { Fixture } from '../../job/documents/fixture.ts';
import type { JobIndex } from '../../job/job-index.ts';
import type { BodyOf } from '../../records/record.ts';
import type { AsCastConnection, AsCastInsert, AsCastReport } from '../as-cast/as-cast-report.ts';
import { type CastPanel, makeCastPanel, membersOf, overlayEmbedment } from '../as-cast/cast-panel.ts';
import { changeHoles } from '../as-cast/change-holes.ts';
import { overlayStrength } from '../as-cast/counted-strength.ts';
import type { PiecePlan } from '../yard/piece-plan.ts';

/** A connection as it is to be bolted up. */
export interface AsBolted {
  /** With the movement, the holes, the packers and the inserts of what was decided. */
  readonly connection: Connection;
  /** The plate with its holes as they are to be; null: none is given. */
  readonly plate: Fixture | null;
  /** Those that get a bolt, in the connection's order, each with its hole. */
  readonly used: readonly { readonly insert: AsCastInsert; readonly hole: string | null }[];
  readonly unused: readonly AsCastInsert[];
  /** What was decided; null: nothing that counts, so all is as designed. */
  readonly decided: BodyOf<'remedy-decided'> | null;
}

function changePlate(fixture: Fixture | null, decided: BodyOf<'remedy-decided'> | null): Fixture | null {
  if (fixture === null || decided === null || decided.change.holes.length === 0) return fixture;
  return { ...fixture, holes: changeHoles(fixture.holes, decided.change) };
}

/** A connection with what a person decided about it; without a decision that counts, as designed. The decision's own numbers count, not what would be computed today. */
export function findAsBolted(index: JobIndex, asCast: AsCastConnection): AsBolted {
  const decided = asCast.state === 'decided' ? (asCast.decision?.body ?? null) : null;
  const base = decided === null ? asCast.connection : (asCast.decided?.connection ?? asCast.connection);
  const plate = changePlate(index.fixtureOf(asCast.connection), decided);
  const isUnused = (insert: AsCastInsert) => decided?.change.unused.includes(insert.item.castIn.key) ?? false;
  const holeOf = (insert: AsCastInsert) =>
    asCast.connection.inserts.find((one) => one.insert === insert.item.castIn.id)?.hole ?? null;
  const used = asCast.members.filter((insert) => !isUnused(insert));
  const usedIds = new Set(used.map(({ item }) => item.castIn.id));
  return {
    connection: {
      ...base,
      fixture: plate,
      // Without a bolt there is nothing to compute; that such a decision does not work is said by what it comes to.
      inserts: asCast.connection.inserts.filter(({ insert }) => used.length === 0 || usedIds.has(insert)),
      packers_mm: decided?.change.packers_mm ?? base.packers_mm,
    },
    plate,
    used: used.map((insert) => ({ insert, hole: holeOf(insert) })),
    unused: asCast.members.filter(isUnused),
    decided,
  };
}

/** The panel with its inserts where they came out, and the concrete no stronger than counted: what the strength of bolted connections is computed with. */
export function readCastPanel(index: JobIndex, plan: PiecePlan, { inserts, strength }: AsCastReport): CastPanel {
  const concrete = index.concretes.get(plan.setOut.panel.concrete);
  const strong = concrete === undefined ? index : overlayStrength(index, concrete, strength);
  return makeCastPanel(index, strong, plan, inserts);
}

/** The job as a connection of that panel is computed: a foot as much nearer to the face as the proudest of its inserts stands out of it. */
export function indexAsCast(cast: CastPanel, connection: Connection): JobIndex {
  return overlayEmbedment(cast.moved, membersOf(cast, connection));
}
