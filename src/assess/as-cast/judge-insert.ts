import type { Point } from '../../engine/geometry/point.ts';
import type { Panel } from '../../job/documents/panel.ts';
import { frameOf } from '../../job/face-frame.ts';
import type { JobIndex } from '../../job/job-index.ts';
import { showLength } from '../../job/resolve/local-member-type.ts';
import type { SetOutItem } from '../set-out/set-out.ts';
import type { AsCastInsert, SurveyedPlace } from './as-cast-report.ts';
import { findProud } from './cast-panel.ts';
import type { CountingPlace } from './counting-places.ts';
import { tellShift } from './tell-shift.ts';

/** Lengths that lie this close together [mm] are the same. */
const ROUNDING = 1e-6;
/** A bolt that leans by more than 1 in 20 [degrees] bears on one side of its head: a bevelled washer is needed. Steelwork practice, recalled. */
export const MOST_TILT = (Math.atan(1 / 20) * 180) / Math.PI;

/** A shift given in the axes of the documents, on the face as seen from its front. */
function shiftOnFace(panel: Panel, { castIn }: SetOutItem, [dx, dy]: Point): Point {
  const { toFace } = frameOf(panel, castIn);
  const [fromX, fromY] = toFace([0, 0]);
  const [toX, toY] = toFace([dx, dy]);
  return [toX - fromX, toY - fromY];
}

/** What of a place is held against its tolerances. */
export type JudgedPlace = Pick<SurveyedPlace, 'dx' | 'dy' | 'depth' | 'depthOff' | 'depthSigma' | 'tilt'>;

function tellPlace(panel: Panel, item: SetOutItem, { dx, dy }: JudgedPlace): readonly string[] {
  const isOff = Math.abs(dx) > item.tolerance + ROUNDING || Math.abs(dy) > item.tolerance + ROUNDING;
  if (!isOff) return [];
  const shift = tellShift(shiftOnFace(panel, item, [dx, dy]), item.castIn.face, panel) ?? 'nowhere';
  return [`${shift} of its place, as seen from in front of it; ±${showLength(item.tolerance)} is allowed`];
}

function tellDepth(index: JobIndex, place: JudgedPlace): readonly string[] {
  const { depth, depthOff } = place;
  if (depth === null || depthOff === null) return [];
  const { level_mm } = index.file.library.rules.tolerances;
  const proud = findProud(place);
  if (proud > 0) return [`its top stands ${showLength(proud)} out of the face`];
  if (Math.abs(depthOff) <= level_mm + ROUNDING) return [];
  const way = depthOff > 0 ? 'deeper' : 'less deep';
  // Too little for the survey to be sure that it stands proud: still never told as less than none below.
  const lies = depth < 0 ? `${showLength(-depth)} above the face` : `${showLength(depth)} below the face`;
  return [
    `its top lies ${lies}, ${showLength(Math.abs(depthOff))} ${way} than aimed at; ±${showLength(level_mm)} is allowed`,
  ];
}

/** Whether the bolt of an insert leans more than a usual washer takes. */
export function leansTooMuch(place: Pick<SurveyedPlace, 'tilt'> | null): boolean {
  return place?.tilt != null && place.tilt.total > MOST_TILT;
}

function tellTilt(place: JudgedPlace): readonly string[] {
  if (!leansTooMuch(place)) return [];
  return [`it leans by ${place.tilt!.total.toFixed(1)}°; a usual washer takes 1 in 20 (${MOST_TILT.toFixed(1)}°)`];
}

/** In what an insert is off by itself: place, depth, tilt; none: it is within its tolerances. */
export function listOff(index: JobIndex, panel: Panel, item: SetOutItem, place: JudgedPlace): readonly string[] {
  return [...tellPlace(panel, item, place), ...tellDepth(index, place), ...tellTilt(place)];
}

/** An insert as cast, judged against its tolerance by itself. */
export function judgeInsert(
  index: JobIndex,
  panel: Panel,
  item: SetOutItem,
  { place, isConflict, isSurveyed, isShapeOnly }: CountingPlace,
): AsCastInsert {
  if (place === null) return { item, place, state: 'not surveyed', why: ['nobody surveyed it: taken as designed'] };
  const off = listOff(index, panel, item, place);
  const unsurveyed = isSurveyed
    ? []
    : [
        isShapeOnly
          ? 'only how it lies to others was measured: where on the panel is taken as designed'
          : 'nobody surveyed its place: taken as last measured in the form',
      ];
  const conflict = isConflict
    ? ['surveys that did not know of each other differ: the one farthest from the design counts until they are settled']
    : [];
  const why = [...conflict, ...unsurveyed, ...off];
  if (isConflict) return { item, place, state: 'conflict', why };
  if (off.length > 0) return { item, place, state: 'off', why };
  return { item, place, state: isSurveyed ? 'within' : 'not surveyed', why };
}
