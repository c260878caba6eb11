import type { CastIn } from '../../job/documents/cast-in.ts';
import type { Connection } from '../../job/documents/connection.ts';
import type { Fixture } from '../../job/documents/fixture.ts';
import type { JobIndex } from '../../job/job-index.ts';
import type { BodyOf } from '../../records/record.ts';
import type { AsCastConnection, AsCastInsert, AsCastReport, Remedy } from '../as-cast/as-cast-report.ts';
import { overlayPlaces } from '../live/live-connection.ts';

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

/** The remedy that a counting decision chose, as it is computed now; null: none, or no longer among those computed. */
export function findDecidedRemedy({ decision, remedies }: AsCastConnection): Remedy | null {
  if (decision === null) return null;
  return remedies.find(({ kind }) => kind === decision.body.remedy) ?? null;
}

function changePlate(fixture: Fixture | null, decided: BodyOf<'remedy-decided'> | null): Fixture | null {
  if (fixture === null || decided === null || decided.change.holes.length === 0) return fixture;
  const changed = new Map(decided.change.holes.map((hole) => [hole.id, hole]));
  return {
    ...fixture,
    holes: fixture.holes.map((hole) => {
      const to = changed.get(hole.id);
      if (to === undefined) return hole;
      return {
        id: hole.id,
        at_mm: [to.x_mm, to.y_mm],
        diameter_mm: to.diameter_mm,
        slot_mm: to.slot_mm,
        slotAngle_deg: to.angle_deg,
        takesShear: to.takesShear,
      };
    }),
  };
}

/** A connection with what a person decided about it; without a decision that counts, as designed. The decision's own numbers count, not what would be computed today. */
export function findAsBolted(index: JobIndex, asCast: AsCastConnection): AsBolted {
  const decided = asCast.state === 'decided' ? (asCast.decision?.body ?? null) : null;
  const base = decided === null ? asCast.connection : (findDecidedRemedy(asCast)?.connection ?? asCast.connection);
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
      inserts: asCast.connection.inserts.filter(({ insert }) => usedIds.has(insert)),
      packers_mm: decided?.change.packers_mm ?? base.packers_mm,
    },
    plate,
    used: used.map((insert) => ({ insert, hole: holeOf(insert) })),
    unused: asCast.members.filter(isUnused),
    decided,
  };
}

/** A surveyed insert as the job would give it. A top above the face counts as flush for its strength. */
function placeAsCast({ item: { castIn }, place }: AsCastInsert, levelTolerance: number): CastIn {
  if (place === null) return castIn;
  const isLevelOff = place.depthOff !== null && Math.abs(place.depthOff) > levelTolerance;
  return {
    ...castIn,
    x_mm: place.x,
    y_mm: place.y,
    recess_mm: isLevelOff ? Math.max(0, castIn.recess_mm + place.depthOff) : castIn.recess_mm,
  };
}

/** The job with the inserts where they came out, and the concrete as it was measured: what the strength of a bolted connection is computed with. */
export function indexAsCast(index: JobIndex, panel: string, { inserts, strength }: AsCastReport): JobIndex {
  const { level_mm } = index.file.library.rules.tolerances;
  const moved = overlayPlaces(
    index,
    inserts.map((insert) => placeAsCast(insert, level_mm)),
  );
  const mix = index.panels.get(panel)?.concrete;
  const concrete = mix === undefined ? undefined : index.concretes.get(mix);
  if (strength.from === 'design' || concrete === undefined) return moved;
  const measured = { ...concrete, strength28_MPa: strength.cylinder_MPa, ages: [] };
  return { ...moved, concretes: new Map(index.concretes).set(concrete.id, measured) };
}
