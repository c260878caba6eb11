import type { ClashBar, ClashItem, ClashRules, ClashSide } from '../../engine/form/clash/clash-scene.ts';
import { prepareRegion, type Region } from '../../engine/geometry/region.ts';
import type { Bounds } from '../../engine/geometry/solid.ts';
import { prepareHoles } from '../../engine/tolerance/hole-fit.ts';
import type { CastIn } from '../../job/documents/cast-in.ts';
import type { Connection } from '../../job/documents/connection.ts';
import type { Panel } from '../../job/documents/panel.ts';
import type { Bed } from '../../job/documents/yard.ts';
import type { JobIndex } from '../../job/job-index.ts';
import { buildScene, type PanelScene } from '../clash/build-scene.ts';
import type { CoverLine } from '../set-out/assembly-type.ts';
import { listBolts, MOST_TURN_RAD } from '../yard/fit-plate.ts';
import { listCovers, listLeans, listMeetings, type Meeting, pickOwn } from '../yard/placed-findings.ts';

/** What is around a connection's inserts as far as they may come, with the panel's sides leaning one way. */
export interface Surroundings {
  readonly lean: 1 | -1;
  readonly built: PanelScene;
  /** Bars and sides near; items near that do not belong to the connection. */
  readonly bars: readonly ClashBar[];
  readonly sides: readonly ClashSide[];
  readonly others: readonly { readonly item: ClashItem; readonly box: Bounds }[];
  /** One an insert, in the connection's order; null where its size is not known. */
  readonly members: readonly (ClashItem | null)[];
}

/** A plate and its bolts; null where none is known. */
export interface ZonePlate {
  /** Whether it goes on over its bolts, by a shift and no more turn than a plate may have. */
  readonly goesOn: (castIns: readonly CastIn[]) => boolean;
}

/** A connection whose inserts are to be tried elsewhere: everything that stays found once. */
export interface ZoneSite {
  readonly index: JobIndex;
  readonly panel: Panel;
  readonly bed: Bed | null;
  readonly region: Region;
  readonly connection: Connection;
  /** As designed, in the connection's order. */
  readonly members: readonly CastIn[];
  /** Other inserts of the same face. */
  readonly neighbours: readonly CastIn[];
  readonly rules: ClashRules;
  readonly plate: ZonePlate | null;
  readonly surroundings: readonly Surroundings[];
  /** Of each insert as designed: its covers, and what it meets. */
  readonly designedCovers: readonly (readonly CoverLine[])[];
  readonly designedMeetings: readonly (readonly Meeting[])[];
}

/** The box around all parts of items; one or more. */
export function boundAll(items: readonly ClashItem[]): Bounds {
  const solids = items.flatMap(({ parts }) => parts.map(({ solid }) => solid));
  const least = (key: 'minX' | 'minY' | 'minZ') => Math.min(...solids.map((solid) => solid[key]));
  const most = (key: 'maxX' | 'maxY' | 'maxZ') => Math.max(...solids.map((solid) => solid[key]));
  return {
    minX: least('minX'),
    minY: least('minY'),
    minZ: least('minZ'),
    maxX: most('maxX'),
    maxY: most('maxY'),
    maxZ: most('maxZ'),
  };
}

/** The plate with its holes read once. */
function readPlate(
  index: JobIndex,
  panel: Panel,
  connection: Connection,
  members: readonly CastIn[],
): ZonePlate | null {
  const bolts = listBolts(index, panel, connection, members);
  if (bolts.length === 0) return null;
  const holes = prepareHoles(
    bolts.map(({ hole, boltDiameter }) => ({
      at: hole.at_mm,
      slack: (hole.diameter_mm - boltDiameter) / 2,
      slot: hole.slot_mm,
      angle: (hole.slotAngle_deg * Math.PI) / 180,
    })),
    MOST_TURN_RAD,
  );
  const places = new Float64Array(2 * bolts.length);
  return {
    goesOn: (castIns) => {
      for (const [k, { bolt }] of listBolts(index, panel, connection, castIns).entries()) places.set(bolt, 2 * k);
      return holes.decide(places);
    },
  };
}

/** Whether two boxes come within a distance of each other [mm]. */
export function isNear(a: Bounds, b: Bounds, reach: number): boolean {
  return (
    a.minX - reach <= b.maxX &&
    b.minX <= a.maxX + reach &&
    a.minY - reach <= b.maxY &&
    b.minY <= a.maxY + reach &&
    a.minZ - reach <= b.maxZ &&
    b.minZ <= a.maxZ + reach
  );
}

/** What of a scene the inserts may come near to when they go as far as `window` [mm]. */
function findSurroundings(
  built: PanelScene,
  lean: 1 | -1,
  members: readonly CastIn[],
  reach: { readonly window: number; readonly clearance: number },
): Surroundings {
  const { items, bars, sides } = built.scene;
  const own = members.map(({ id }) => items.find((item) => item.id === id) ?? null);
  const known = own.flatMap((item) => item ?? []);
  const base = { lean, built, members: own };
  if (known.length === 0) return { ...base, bars: [], sides: [], others: [] };
  const box = boundAll(known);
  const cover = Math.max(...items.map((item) => item.cover), reach.clearance);
  const isClose = (other: Bounds) => isNear(box, other, reach.window + cover + 1);
  return {
    ...base,
    bars: bars.filter(({ solid }) => isClose(solid)),
    sides: sides.filter(({ pieces }) => pieces.some(isClose)),
    others: items
      .filter((item) => !known.includes(item))
      .map((item) => ({ item, box: boundAll([item]) }))
      .filter((other) => isClose(other.box)),
  };
}

/**
 * Prepares a connection for trying its inserts elsewhere.
 * @param bed that the panel is cast on; null: none is named
 * @param window how far they may be tried, along x or y [mm]
 * @throws Error where the job has no such panel
 */
export function openZone(index: JobIndex, connection: Connection, bed: Bed | null, window: number): ZoneSite {
  const panel = index.panels.get(connection.panel);
  if (panel === undefined) throw new Error(`no panel ${connection.panel}`);
  const members = connection.inserts.flatMap(({ insert }) => index.castIn(panel.mark, insert) ?? []);
  const rules = { clearance: index.file.library.rules.clearance_mm };
  const scenes = listLeans(panel).map((lean) => ({ lean, built: buildScene(index, panel, bed, lean) }));
  const region = prepareRegion(panel.outline_mm, panel.openings_mm);
  const met = scenes.flatMap(({ built }) => listMeetings(panel, built, rules));
  const ids = new Set(members.map(({ id }) => id));
  return {
    index,
    panel,
    bed,
    region,
    connection,
    members,
    neighbours: index
      .castInsOf(panel.mark)
      .filter(({ id, face, edge }) => !ids.has(id) && face === connection.face && edge === connection.edge),
    rules,
    surroundings: scenes.map(({ lean, built }) =>
      findSurroundings(built, lean, members, { window, clearance: rules.clearance }),
    ),
    plate: readPlate(index, panel, connection, members),
    designedCovers: members.map((castIn) => listCovers({ index, panel, bed, region }, castIn, null)),
    designedMeetings: members.map(({ id }) => pickOwn(met, id)),
  };
}
