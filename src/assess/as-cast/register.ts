import { type ControlCheck, checkControls } from '../../engine/survey/control-blunder.ts';
import { fitPoints, type PointPair } from '../../engine/survey/fit-points.ts';
import { findStance, findTiltedStance, type InsertStance } from '../../engine/survey/insert-axis.ts';
import { movePoint, type Pose } from '../../engine/survey/pose.ts';
import { type Control, type Registered, type Registration, registerControls } from '../../engine/survey/register.ts';
import { SurveyError } from '../../engine/survey/survey-error.ts';
import { dot, lengthOf, minus, multiply, type Vector } from '../../engine/survey/vector.ts';
import type { CastIn } from '../../job/documents/cast-in.ts';
import type { Panel } from '../../job/documents/panel.ts';
import { type FaceFrame, frameOf } from '../../job/face-frame.ts';
import type { BodyOf } from '../../records/record.ts';
import { faceOfItem, placeOnItemFace, topOfItem } from './item-face.ts';

type Survey = Pick<BodyOf<'surveyed'>, 'controls' | 'points'>;
type SurveyControl = Survey['controls'][number];

/** Where an insert came out, in the axes in which the job gives it. Lengths mm, angles degrees. */
export interface RegisteredPlace {
  /** On a large face the drawn x and y, where its axis meets the face; on an edge along it, and from the outside face. */
  readonly x: number;
  readonly y: number;
  /** Standard deviations along x and y: the control's and the instrument's. */
  readonly sigma: readonly [number, number];
  /** Top of the insert below its own face as designed, above it (proud) negative; null: no heights. */
  readonly depth: number | null;
  readonly depthSigma: number | null;
  /** How its axis leans in the same axes, going out; null: no second point. */
  readonly tilt: { readonly x: number; readonly y: number; readonly total: number } | null;
}

/** A survey brought onto its panel. */
export interface PanelRegistration {
  readonly places: ReadonlyMap<string, RegisteredPlace>;
  readonly controls: readonly {
    readonly name: string;
    readonly residual: number;
    readonly isUsed: boolean;
    readonly isSuspect: boolean;
  }[];
  readonly rms: number;
  readonly redundancy: number;
  /** The points fit their mirror image far better: nothing of them may be believed. */
  readonly isMirrored: boolean;
  /** What a reader must know, in words. */
  readonly notes: readonly string[];
}

/** Points on a mirror image are told where they are off by so much [mm], and by the mirror image by a third of it at most. */
const MIRROR_OFF = 15;
const MIRROR_SHARE = 1 / 3;
/** A place that is less sure than this [mm] is told. */
const UNSURE = 5;
/** What a face of the panel is known to lie within (an edge within ± 5 mm, evenly) is the control's own; inserts lend only a start. */
const AS_START = 1;

/**
 * Brings a survey onto its panel by its controls (weighted, rigid, no scale, no mirror) and says where each insert is, in the job's own axes: the
 * drawing's x and y, not the form's. Points with heights: the drawing's plane with z out of the drawn face, any face of the panel. Points without
 * heights: all on one large face, measured from in front of it; on the face that is not drawn they are brought into its own frame first.
 *
 * @throws SurveyError where the controls do not fix the panel, or points without heights lie on several faces
 */
export function registerSurvey(panel: Panel, castIns: readonly CastIn[], survey: Survey): PanelRegistration {
  const points = survey.points.flatMap((point): SurveyedItem[] => {
    const castIn = castIns.find(({ key }) => key === point.item);
    return castIn === undefined ? [] : [{ castIn, point }];
  });
  const isFlat = survey.points.every(({ measured_mm }) => measured_mm.length === 2);
  checkDimensions(survey, isFlat);
  const frame = isFlat ? flatFrame(panel, points) : null;
  const onPanel = (design: Vector): Vector => (frame === null ? design : frame.toFace([design[0]!, design[1]!]));
  const used = survey.controls.filter(({ isUsed }) => isUsed);
  const controls = used.map((one) => toControl(one, onPanel));
  const pairs = listPairs(panel, controls, points, onPanel, isFlat);
  const registration = registerControls(controls, startFrom(controls, pairs));
  const check = checkControls(controls, registration);
  const suspect = check.blunder.kind === 'at' ? used[check.blunder.index] : undefined;
  const mirror = askMirror(pairs);
  const notes = [...(mirror === null ? [] : [mirror]), ...tellControls(used, check, registration)];
  const places = new Map<string, RegisteredPlace>();
  for (const { castIn, point } of points) {
    const at = registration.place(point.measured_mm, point.sigma_mm);
    places.set(
      castIn.key,
      frame === null ? placeInSpace(panel, castIn, point, registration, notes) : placeFlat(frame, at),
    );
  }
  tellUnsure(castIns, places, notes);
  const residualOf = (one: SurveyControl) => {
    const index = used.indexOf(one);
    return index >= 0 ? registration.residuals[index]! : leftOver(toControl(one, onPanel), registration);
  };
  return {
    places,
    controls: survey.controls.map((one) => ({
      name: one.name,
      residual: lengthOf(residualOf(one)),
      isUsed: one.isUsed,
      isSuspect: one === suspect,
    })),
    rms: registration.rms,
    redundancy: registration.redundancy,
    isMirrored: mirror !== null,
    notes,
  };
}

interface SurveyedItem {
  readonly castIn: CastIn;
  readonly point: Survey['points'][number];
}

function checkDimensions({ controls, points }: Survey, isFlat: boolean): void {
  const size = isFlat ? 2 : 3;
  const isOdd = (vector: Vector) => vector.length !== size;
  if (
    points.some(({ measured_mm, second }) => isOdd(measured_mm) || (second !== null && isOdd(second.measured_mm))) ||
    controls.some((one) => one.isUsed && (isOdd(one.measured_mm) || isOdd(one.design_mm)))
  )
    throw new SurveyError(
      'measured',
      'some points have heights and some have none, expected all of a survey with them, or all without',
    );
}

/** The frame of the one large face that points without heights lie on. */
function flatFrame(panel: Panel, points: readonly SurveyedItem[]): FaceFrame {
  const faces = [...new Set(points.map(({ castIn }) => castIn.face))];
  const [face] = faces;
  if (faces.length > 1 || face === 'edge')
    throw new SurveyError(
      'insert',
      `points without heights on ${faces.length > 1 ? 'several faces' : 'an edge'} of the panel, expected them on one large face; give heights, or a survey a face`,
    );
  return frameOf(panel, { face: face ?? panel.drawnFace, edge: null });
}

function toControl(one: SurveyControl, onPanel: (design: Vector) => Vector): Control {
  const base = { measured: one.measured_mm, deviation: one.sigma_mm };
  if (one.kind !== 'edge' || one.edgeEnd_mm === null) return { kind: 'point', design: onPanel(one.design_mm), ...base };
  const through = onPanel(one.design_mm);
  const way = minus(onPanel(one.edgeEnd_mm), through);
  const length = Math.hypot(way[0]!, way[1]!);
  if (length === 0)
    throw new SurveyError('control', `the edge of control ${one.name} has both ends in one place, expected two apart`);
  const across = [0 - way[1]! / length, way[0]! / length, ...through.slice(2).map(() => 0)];
  return { kind: 'edge', through, across, ...base };
}

/** Everything that has a designed place, as the instrument has it. */
function listPairs(
  panel: Panel,
  controls: readonly Control[],
  points: readonly SurveyedItem[],
  onPanel: (design: Vector) => Vector,
  isFlat: boolean,
): readonly PointPair[] {
  return [
    ...controls.flatMap((one): PointPair[] =>
      one.kind === 'point' ? [{ design: one.design, measured: one.measured, weight: AS_START }] : [],
    ),
    ...points.map(
      ({ castIn, point }): PointPair => ({
        design: isFlat ? onPanel([castIn.x_mm, castIn.y_mm]) : topOfItem(panel, castIn),
        measured: point.measured_mm,
        weight: AS_START,
      }),
    ),
  ];
}

/** Where too few controls are points, the inserts as designed lend a start; it decides nothing else. */
function startFrom(controls: readonly Control[], pairs: readonly PointPair[]): Pose | null {
  return controls.every(({ kind }) => kind === 'point') ? null : tryFit(pairs);
}

function tryFit(pairs: readonly PointPair[]): Pose | null {
  try {
    return fitPoints(pairs);
  } catch (error) {
    if (error instanceof SurveyError) return null;
    throw error;
  }
}

function rmsOf(pairs: readonly PointPair[]): number {
  const pose = tryFit(pairs);
  if (pose === null) return Number.POSITIVE_INFINITY;
  const squares = pairs.map(({ design, measured }) => lengthOf(minus(design, movePoint(pose, measured))) ** 2);
  return Math.sqrt(squares.reduce((sum, square) => sum + square, 0) / pairs.length);
}

/** In words, where the mirror image of what was measured fits far better; null: it does not. */
function askMirror(pairs: readonly PointPair[]): string | null {
  const [asIs, mirrored] = [
    rmsOf(pairs),
    rmsOf(pairs.map((pair) => ({ ...pair, measured: pair.measured.map((value, k) => (k === 0 ? 0 - value : value)) }))),
  ];
  if (asIs < MIRROR_OFF || !(mirrored < asIs * MIRROR_SHARE)) return null;
  const said = Number.isFinite(asIs) ? `by ${asIs.toFixed(0)} mm as they are` : 'as they are in no one way';
  return `The mirror image of these points fits the panel (off by ${mirrored.toFixed(0)} mm, ${said}): they look measured from the other face, or east and north are exchanged. Nothing of this survey counts until that is put right.`;
}

function tellControls(
  used: readonly SurveyControl[],
  { blunder, leftOut }: ControlCheck,
  registration: Registration,
): readonly string[] {
  const names = (indices: readonly number[]) => indices.map((i) => used[i]!.name).join(', ');
  if (blunder.kind === 'at')
    return [
      `Control ${names([blunder.index])} does not agree with the others: it lies ${leftOut[blunder.index]!.misses!.toFixed(0)} mm from where they have it. Measure it again, or leave it out and say why.`,
    ];
  if (blunder.kind === 'one of')
    return [
      `The controls contradict each other; which of ${names(blunder.indices)} is wrong cannot be told. Measure one more.`,
    ];
  if (registration.redundancy === 0)
    return ['No control more than needed: a slip in one of them would not show. Measure one more.'];
  const unchecked = leftOut.flatMap(({ fall }, i) => (fall === null ? [i] : []));
  return unchecked.length === 0
    ? []
    : [`Nothing checks control ${names(unchecked)}: without it the others do not fix the panel.`];
}

function tellUnsure(castIns: readonly CastIn[], places: ReadonlyMap<string, RegisteredPlace>, notes: string[]): void {
  const unsure = castIns.filter(({ key }) => Math.max(...(places.get(key)?.sigma ?? [0])) > UNSURE);
  if (unsure.length > 0)
    notes.push(
      `Where insert ${unsure.map(({ id }) => id).join(', ')} is, is sure to more than ±${UNSURE} mm only (one standard deviation): the controls lie too near together, or all in one line.`,
    );
}

/** What a control that was left out lies off by. */
function leftOver(control: Control, { pose }: Registration): Vector {
  const at = movePoint(pose, control.measured);
  if (control.kind === 'point') return minus(control.design, at);
  const off = dot(control.across, minus(control.through, at));
  return control.across.map((part) => part * off);
}

/** The other large face mirrors x alone, so that deviations stay. */
function placeFlat({ toFace }: FaceFrame, { at, covariance }: Registered): RegisteredPlace {
  // Back into the drawing by the same mirror: it is its own inverse.
  const [x, y] = toFace([at[0]!, at[1]!]);
  const sigma = [Math.sqrt(covariance[0]![0]!), Math.sqrt(covariance[1]![1]!)] as const;
  return { x, y, sigma, depth: null, depthSigma: null, tilt: null };
}

const degrees = (angle: number) => (angle * 180) / Math.PI;

function placeInSpace(
  panel: Panel,
  castIn: CastIn,
  { measured_mm, second, sigma_mm }: SurveyedItem['point'],
  registration: Registration,
  notes: string[],
): RegisteredPlace {
  const face = faceOfItem(panel, castIn);
  const { at: top, covariance } = registration.place(measured_mm, sigma_mm);
  let stance: InsertStance = findStance(face, top);
  if (second !== null)
    try {
      stance = findTiltedStance(face, top, movePoint(registration.pose, second.measured_mm));
    } catch (error) {
      if (!(error instanceof SurveyError)) throw error;
      notes.push(`Insert ${castIn.id}: ${error.message}. Its tilt is not known.`);
    }
  const [x, y] = placeOnItemFace(face, stance.at);
  const along = (way: Vector) => Math.sqrt(dot(way, multiply(covariance, way)));
  const [right, up] = stance.lean;
  return {
    x,
    y,
    sigma: [along(face.right), along(face.up)],
    depth: stance.depth,
    depthSigma: along(face.out),
    tilt:
      stance.tilt === null
        ? null
        : { x: degrees(Math.atan(right)), y: degrees(Math.atan(up)), total: degrees(stance.tilt) },
  };
}
