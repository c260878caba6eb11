import { prepareRegion, type Region } from '../../engine/geometry/region.ts';
import type { CastIn } from '../../job/documents/cast-in.ts';
import type { CatalogueItem } from '../../job/documents/catalogue.ts';
import type { Connection } from '../../job/documents/connection.ts';
import type { Panel } from '../../job/documents/panel.ts';
import type { JobIndex } from '../../job/job-index.ts';
import { overlayPlaces } from '../live/live-connection.ts';
import type { PiecePlan } from '../yard/piece-plan.ts';
import { findOutOfPlace, findPlacedFindings } from '../yard/placed-findings.ts';
import type { AsCastInsert, SurveyedPlace } from './as-cast-report.ts';

/** An insert of the hard panel, with what speaks against it wherever its plate lies. */
export interface CastMember {
  readonly insert: AsCastInsert;
  /** Where it is, as the job would give it. */
  readonly castIn: CastIn;
  /** Found to be off: by its own tolerance, or by surveys that differ. */
  readonly isOff: boolean;
  /** How far its top stands out of the face [mm]; 0: it does not, or nobody looked. */
  readonly proud: number;
  /** How much deeper than its assembly aims at, where that is beyond the tolerance of its level [mm]; else 0. */
  readonly sunk: number;
}

/** A panel as it was cast, for all its connections. */
export interface CastPanel {
  /** The job as designed. */
  readonly index: JobIndex;
  /** The same with every insert where it is, and concrete no stronger than counted. */
  readonly moved: JobIndex;
  readonly plan: PiecePlan;
  readonly panel: Panel;
  readonly region: Region;
  /** By the id of the insert. */
  readonly members: ReadonlyMap<string, CastMember>;
  /** What was found of members before: it does not depend on what is done to a plate. */
  readonly findings: Map<string, readonly string[]>;
}

/** A top that stands out by less [mm] is in the unevenness of the face: a plate lies on both. Common practice. */
const FLUSH_WITHIN = 0.5;

/** An insert as cast, as the job would give it. A level within its tolerance is that of the design; a top above the face counts as flush here. */
function castInOf({ item: { castIn }, place }: AsCastInsert, levelTolerance: number): CastIn {
  if (place === null) return castIn;
  const off = place.depthOff ?? 0;
  const recess_mm = Math.abs(off) <= levelTolerance ? castIn.recess_mm : Math.max(0, castIn.recess_mm + off);
  return { ...castIn, x_mm: place.x, y_mm: place.y, recess_mm };
}

/** How far a top stands out of its face [mm]; 0: no farther than a plate lies over, or than the survey is sure of. */
export function findProud({ depth, depthSigma }: Pick<SurveyedPlace, 'depth' | 'depthSigma'>): number {
  const proud = Math.max(0, -(depth ?? 0));
  return proud > Math.max(FLUSH_WITHIN, depthSigma ?? 0) ? proud : 0;
}

/** An insert with what follows from its depth. */
function toMember(index: JobIndex, insert: AsCastInsert): CastMember {
  const { place, state } = insert;
  const { level_mm } = index.file.library.rules.tolerances;
  const off = place?.depthOff ?? 0;
  const sunk = off > level_mm ? off : 0;
  const proud = place === null ? 0 : findProud(place);
  return {
    insert,
    castIn: castInOf(insert, level_mm),
    isOff: state === 'off' || state === 'conflict',
    proud,
    sunk,
  };
}

/** @param strong the job with the concrete that counts */
export function makeCastPanel(
  index: JobIndex,
  strong: JobIndex,
  plan: PiecePlan,
  inserts: readonly AsCastInsert[],
): CastPanel {
  const { panel } = plan.setOut;
  const members = inserts.map((insert) => toMember(index, insert));
  return {
    index,
    moved: overlayPlaces(
      strong,
      members.map(({ castIn }) => castIn),
    ),
    plan,
    panel,
    region: prepareRegion(panel.outline_mm, panel.openings_mm),
    members: new Map(members.map((member) => [member.castIn.id, member])),
    findings: new Map(),
  };
}

/** Members of a connection, in its order. */
export function membersOf({ members }: CastPanel, { inserts }: Connection): readonly CastMember[] {
  return inserts.flatMap(({ insert }) => members.get(insert) ?? []);
}

/** Why an insert of a connection cannot be computed where it is: it lies outside its concrete; null: it can. */
export function findOutside({ moved, panel, region }: CastPanel, members: readonly CastMember[]): string | null {
  const why = members.map(({ castIn, insert }) => {
    const out = findOutOfPlace(moved, panel, region, castIn);
    return out === null ? null : `no. ${insert.item.number}: ${out}`;
  });
  return why.find((one) => one !== null) ?? null;
}

/** What is wrong with an insert where it is and was not as designed, whichever plate it gets: too little cover, what it meets. In words. */
export function listFindings(cast: CastPanel, { castIn, insert, isOff }: CastMember): readonly string[] {
  if (!isOff) return [];
  const had = cast.findings.get(castIn.id);
  if (had !== undefined) return had;
  const { index, moved, plan, region } = cast;
  const { setOut } = plan;
  const depth = insert.place?.depth ?? null;
  const level = depth === null ? null : Math.max(0, depth);
  const placed = { index, moved, bed: setOut.bed, setOut, region, item: insert.item, castIn, level };
  const found = findPlacedFindings(placed).map((one) => `no. ${insert.item.number}: ${one}`);
  cast.findings.set(castIn.id, found);
  return found;
}

/**
 * The job with the foot of inserts as much nearer to the face as the proudest of some stands out of it. A deeper foot is not counted: its product document
 * holds for the depth that it gives.
 */
export function overlayEmbedment(moved: JobIndex, members: readonly CastMember[]): JobIndex {
  const proud = Math.max(0, ...members.map((member) => member.proud));
  if (proud === 0) return moved;
  const items = new Map(moved.items);
  for (const { castIn } of members) {
    const item: CatalogueItem | undefined = castIn.item === null ? undefined : moved.items.get(castIn.item);
    if (item !== undefined) items.set(item.id, { ...item, embedment_mm: Math.max(1, item.embedment_mm - proud) });
  }
  return { ...moved, items };
}
