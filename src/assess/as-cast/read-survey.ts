import { FormError } from '../../engine/form/form-error.ts';
import { findTapedPosition } from '../../engine/form/tape-position.ts';
import { type Control, registerControls } from '../../engine/survey/register.ts';
import { SurveyError } from '../../engine/survey/survey-error.ts';
import type { Vector } from '../../engine/survey/vector.ts';
import type { CastIn } from '../../job/documents/cast-in.ts';
import type { Panel } from '../../job/documents/panel.ts';
import { panelSide } from '../../job/face-frame.ts';
import type { RecordOf } from '../../records/record.ts';
import type { PiecePlan } from '../yard/piece-plan.ts';
import type { PlaceReading, SurveyReading } from './survey-reading.ts';

type Survey = RecordOf<'surveyed'>;

/** A point of the panel in the axes of a cast-in item, and how deep below its face. In 2D the depth is not known. */
function toItem(
  panel: Panel,
  { face, edge }: CastIn,
  [x = 0, y = 0, z]: Vector,
): { x: number; y: number; depth: number | null } {
  const t = panel.thickness_mm;
  if (face !== 'edge' || edge === null)
    return { x, y, depth: z === undefined ? null : face === panel.drawnFace ? 0 - z : z + t };
  const { from, along, inward } = panelSide(panel, edge);
  const [px, py] = [x - from[0], y - from[1]];
  const fromOutside = panel.drawnFace === 'outside' ? 0 - (z ?? 0) : t + (z ?? 0);
  return {
    x: px * along[0] + py * along[1],
    y: fromOutside,
    depth: z === undefined ? null : px * inward[0] + py * inward[1],
  };
}

function readInstrument({ setOut: { panel, items } }: PiecePlan, body: Survey['body']) {
  const used = body.controls.filter(({ isUsed }) => isUsed);
  const controls = used.map((one): Control => {
    const base = { measured: one.measured_mm, deviation: one.sigma_mm };
    if (one.kind !== 'edge' || one.edgeEnd_mm === null) return { kind: 'point', design: one.design_mm, ...base };
    const [dx, dy] = [one.edgeEnd_mm[0] - one.design_mm[0], one.edgeEnd_mm[1] - one.design_mm[1]];
    const length = Math.hypot(dx, dy);
    const across = [0 - dy / length, dx / length, ...(one.design_mm.length === 3 ? [0] : [])];
    return { kind: 'edge', through: one.design_mm, across, ...base };
  });
  const registration = registerControls(controls);
  const places = body.points.flatMap((point): [string, PlaceReading][] => {
    const item = items.find(({ castIn }) => castIn.key === point.item);
    if (item === undefined) return [];
    const { at, covariance } = registration.place(point.measured_mm, point.sigma_mm);
    const { x, y, depth } = toItem(panel, item.castIn, at);
    const sigma = [Math.sqrt(covariance[0]![0]!), Math.sqrt(covariance[1]![1]!)] as const;
    return [[point.item, { position: { x, y, sigma }, depth, tilt: null }]];
  });
  const residuals = used.map((one, i) => ({
    name: one.name,
    residual: Math.hypot(...registration.residuals[i]!),
    isUsed: true,
    isSuspect: false,
  }));
  return { places, residuals, rms: registration.rms };
}

function readTapes({ setOut: { items } }: PiecePlan, body: Survey['body']): [string, PlaceReading][] {
  return items.flatMap(({ castIn }): [string, PlaceReading][] => {
    const own = body.tapes.filter(({ item }) => item === castIn.key);
    const measured = own.flatMap(({ to, distance_mm, sigma_mm }) =>
      to.kind === 'edge'
        ? [
            {
              to: { kind: 'edge' as const, from: to.from_mm, end: to.end_mm },
              distance: distance_mm,
              deviation: sigma_mm,
            },
          ]
        : [],
    );
    if (measured.length < 2 || castIn.face === 'edge') return [];
    const { at, sigmaX, sigmaY } = findTapedPosition(measured, [castIn.x_mm, castIn.y_mm]);
    return [[castIn.key, { position: { x: at[0], y: at[1], sigma: [sigmaX, sigmaY] }, depth: null, tilt: null }]];
  });
}

/** What a survey comes to on the panel, recorded or not yet. */
export function placeSurvey(
  plan: PiecePlan,
  body: Survey['body'],
): Omit<SurveyReading['survey'], 'record'> & Pick<SurveyReading, 'places'> {
  const notes: string[] = [];
  const places = new Map<string, PlaceReading>();
  let [rms, controls]: [number | null, SurveyReading['survey']['controls']] = [null, []];
  try {
    if (body.points.length > 0) {
      const read = readInstrument(plan, body);
      for (const [key, place] of read.places) places.set(key, place);
      [rms, controls] = [read.rms, read.residuals];
    }
    for (const [key, place] of readTapes(plan, body)) places.set(key, place);
  } catch (error) {
    if (!(error instanceof SurveyError || error instanceof FormError)) throw error;
    notes.push(error.message);
  }
  for (const { item, depth_mm, tilt } of body.stances) {
    const had = places.get(item) ?? { position: null, depth: null, tilt: null };
    const angle = (aside: number, over: number) => (Math.asin(Math.max(-1, Math.min(1, aside / over))) * 180) / Math.PI;
    places.set(item, {
      ...had,
      depth: depth_mm ?? had.depth,
      tilt:
        tilt === null
          ? had.tilt
          : {
              x: angle(tilt.x_mm, tilt.over_mm),
              y: angle(tilt.y_mm, tilt.over_mm),
              total: angle(Math.hypot(tilt.x_mm, tilt.y_mm), tilt.over_mm),
            },
    });
  }
  return { controls, rms, notes, places };
}

/** A survey brought onto the panel. */
export function readSurvey(plan: PiecePlan, record: Survey): SurveyReading {
  const { places, ...found } = placeSurvey(plan, record.body);
  return { survey: { record, ...found }, places };
}
