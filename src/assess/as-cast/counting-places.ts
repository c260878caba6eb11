import type { BodyOf, FactRecord, RecordOf } from '../../records/record.ts';
import { findTop } from '../clash/find-top.ts';
import type { SetOutItem } from '../set-out/set-out.ts';
import { findFarthest, findPlaces, listFoundPlaces } from '../yard/find-places.ts';
import type { PiecePlan } from '../yard/piece-plan.ts';
import type { YardContext } from '../yard/piece-report.ts';
import type { PieceSlots } from '../yard/piece-slots.ts';
import { placeCastIn } from '../yard/placed-cast-in.ts';
import type { SeenIndex } from '../yard/seen-index.ts';
import type { SurveyedPlace } from './as-cast-report.ts';
import type { PlaceReading, SurveyReading } from './survey-reading.ts';

/** What is known of where an insert is. */
export interface CountingPlace {
  readonly place: SurveyedPlace | null;
  /** Surveys that did not know of each other say different things; `place` is the one farthest from the design. */
  readonly isConflict: boolean;
  readonly isSurveyed: boolean;
  /** Surveyed only as it lies to others, so that a plate can be told to go on; where on the panel is not known. */
  readonly isShapeOnly: boolean;
  /** Everything that it rests on, which a decision must have seen. */
  readonly records: readonly FactRecord[];
}

/** Two places of one insert are the same within so many standard deviations, and within what nobody measures better [mm, degrees]. */
const SAME_WITHIN_SIGMAS = 3;
const SAME_WITHIN = 1;
/** Standard deviations of a depth of which none is given, and of a tilt over a rod [mm, degrees]. Common practice. */
const DEPTH_SIGMA = 1;
const TILT_SIGMA = 0.5;

interface Said<T> {
  readonly record: RecordOf<'surveyed'>;
  readonly value: T;
}

/** What the surveys say of one thing that no later one of them replaces. */
function listStanding<T>(
  readings: readonly SurveyReading[],
  seen: SeenIndex,
  key: string,
  find: (reading: PlaceReading) => T | null,
): readonly Said<T>[] {
  const said = readings.flatMap(({ survey: { record }, places }): Said<T>[] => {
    const reading = places.get(key);
    const value = reading === undefined ? null : find(reading);
    return value === null ? [] : [{ record, value }];
  });
  const standing = new Set(seen.standing(said.map(({ record }) => record)).map(({ id }) => id));
  return said.filter(({ record }) => standing.has(record.id)).sort((a, b) => (a.record.id < b.record.id ? -1 : 1));
}

/** The one that is farthest off, and whether another differs from it. */
function pickFarthest<T>(
  said: readonly Said<T>[],
  off: (value: T) => number,
  differ: (a: T, b: T) => boolean,
): { readonly far: Said<T>; readonly isConflict: boolean } | null {
  const [first] = said;
  if (first === undefined) return null;
  const far = said.reduce((most, one) => (off(one.value) > off(most.value) ? one : most), first);
  return { far, isConflict: said.some(({ value }) => differ(value, far.value)) };
}

type Position = NonNullable<PlaceReading['position']> & Pick<PlaceReading, 'isShapeOnly'>;
/** A depth and how sure it is [mm]. */
interface Depth {
  readonly depth: number;
  readonly sigma: number;
}

type Tilt = NonNullable<PlaceReading['tilt']>;

function differInPlace(a: Position, b: Position): boolean {
  const apart = Math.hypot(a.x - b.x, a.y - b.y);
  return apart > Math.max(SAME_WITHIN, SAME_WITHIN_SIGMAS * Math.hypot(...a.sigma, ...b.sigma));
}

/** Where an insert was last measured in the form; null: nobody taped it, or it was found just where it was to be. */
function placeInForm(
  context: YardContext,
  plan: PiecePlan,
  slots: PieceSlots,
  seen: SeenIndex,
  item: SetOutItem,
): CountingPlace {
  const found = findPlaces(context, plan, slots, seen, item);
  const record = found.records.at(-1);
  if (record === undefined)
    return { place: null, isConflict: false, isSurveyed: false, isShapeOnly: false, records: [] };
  const { setOut } = plan;
  const at = findFarthest(listFoundPlaces(found), item);
  const { castIn } = item;
  const placed = placeCastIn({ index: context.index, bed: setOut.bed, setOut, item, found: at });
  const top = findTop(context.index, setOut.panel, castIn, setOut.bed);
  const place: SurveyedPlace = {
    x: placed.x_mm,
    y: placed.y_mm,
    dx: placed.x_mm - castIn.x_mm,
    dy: placed.y_mm - castIn.y_mm,
    depth: at.level,
    depthOff: at.level === null ? null : at.level - top,
    depthSigma: at.level === null ? null : DEPTH_SIGMA,
    tilt: null,
    sigma: [item.scatter.x, item.scatter.y],
    basis: 'taped in the form',
    record,
  };
  return { place, isConflict: false, isSurveyed: false, isShapeOnly: false, records: found.records };
}

/**
 * Where an insert is by the surveys that count: of its place, its depth and its tilt each the last ones, of those that did not know of each other the one
 * farthest from the design. Without a survey of its place: as last measured in the form.
 */
export function findCountingPlace(
  context: YardContext,
  plan: PiecePlan,
  slots: PieceSlots,
  seen: SeenIndex,
  readings: readonly SurveyReading[],
  item: SetOutItem,
): CountingPlace {
  const { castIn } = item;
  const { panel, bed } = plan.setOut;
  const findPosition = (ofShape: boolean) =>
    listStanding(readings, seen, castIn.key, ({ position, isShapeOnly }) =>
      position === null || isShapeOnly !== ofShape ? null : { ...position, isShapeOnly },
    );
  // How inserts lie to each other says nothing of where they are: it never stands in for a place that was measured.
  const [onPanel, ofShape] = [findPosition(false), findPosition(true)];
  const positions = onPanel.length > 0 ? onPanel : ofShape;
  const depths = listStanding(readings, seen, castIn.key, ({ depth, depthSigma }) =>
    depth === null ? null : { depth, sigma: depthSigma ?? DEPTH_SIGMA },
  );
  const tilts = listStanding(readings, seen, castIn.key, ({ tilt }) => tilt);
  const inForm = placeInForm(context, plan, slots, seen, item);
  if (positions.length + depths.length + tilts.length === 0) return inForm;
  const top = findTop(context.index, panel, castIn, bed);
  const position = pickFarthest<Position>(
    positions,
    ({ x, y }) => Math.hypot(x - castIn.x_mm, y - castIn.y_mm),
    differInPlace,
  );
  const depth = pickFarthest<Depth>(
    depths,
    (one) => Math.abs(one.depth - top),
    (a, b) => Math.abs(a.depth - b.depth) > Math.max(SAME_WITHIN, SAME_WITHIN_SIGMAS * Math.hypot(a.sigma, b.sigma)),
  );
  const tilt = pickFarthest<Tilt>(
    tilts,
    ({ total }) => total,
    (a, b) => Math.hypot(a.x - b.x, a.y - b.y) > SAME_WITHIN_SIGMAS * TILT_SIGMA,
  );
  // A survey of depth or tilt alone leaves the place as it was taped in the form.
  const before = inForm.place ?? { x: castIn.x_mm, y: castIn.y_mm, sigma: [item.scatter.x, item.scatter.y] as const };
  const at = position?.far.value ?? before;
  const { record } = (position ?? depth ?? tilt)!.far; // one of them was said
  const basis: BodyOf<'surveyed'>['basis'] = record.body.basis;
  const level = depth?.far.value.depth ?? inForm.place?.depth ?? null;
  const records = [...onPanel, ...ofShape, ...depths, ...tilts].map((one): FactRecord => one.record);
  return {
    place: {
      x: at.x,
      y: at.y,
      dx: at.x - castIn.x_mm,
      dy: at.y - castIn.y_mm,
      depth: level,
      depthOff: level === null ? null : level - top,
      depthSigma: level === null ? null : (depth?.far.value.sigma ?? DEPTH_SIGMA),
      tilt: tilt?.far.value ?? null,
      sigma: at.sigma,
      basis: position === null ? (inForm.place?.basis ?? basis) : basis,
      record: position === null ? (inForm.place?.record ?? record) : record,
    },
    isConflict: [position, depth, tilt].some((one) => one?.isConflict === true),
    isSurveyed: position !== null && !position.far.value.isShapeOnly,
    isShapeOnly: position?.far.value.isShapeOnly === true,
    records: [...new Set(position === null ? [...records, ...inForm.records] : records)],
  };
}
