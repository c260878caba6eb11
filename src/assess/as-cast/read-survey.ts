import { SurveyError } from '../../engine/survey/survey-error.ts';
import type { CastIn } from '../../job/documents/cast-in.ts';
import type { Panel } from '../../job/documents/panel.ts';
import type { BodyOf, RecordOf } from '../../records/record.ts';
import type { PiecePlan } from '../yard/piece-plan.ts';
import { placeByTapes } from './place-by-tapes.ts';
import { type PanelRegistration, registerSurvey } from './register.ts';
import type { PlaceReading, SurveyReading } from './survey-reading.ts';

type Survey = BodyOf<'surveyed'>;

/** What a survey comes to on the panel, recorded or not yet. */
export type PlacedSurvey = Omit<SurveyReading['survey'], 'record'> & Pick<SurveyReading, 'places'>;

const NOTHING: PlaceReading = { position: null, isShapeOnly: false, depth: null, depthSigma: null, tilt: null };

/** A depth is read from a rule or a depth gauge to this, one standard deviation [mm]. Common practice. */
const RULE_SIGMA = 0.5;

/** The points of an instrument brought onto the panel; a message where they cannot be. */
function register(panel: Panel, castIns: readonly CastIn[], survey: Survey): PanelRegistration | string | null {
  if (survey.points.length === 0) return null;
  try {
    return registerSurvey(panel, castIns, survey);
  } catch (error) {
    if (error instanceof SurveyError) return `${error.message}.`;
    throw error;
  }
}

/** The tilt that a rod stands aside by [degrees]; a rod aside by more than its length is as flat as can be. */
function toTilt({ x_mm, y_mm, over_mm }: NonNullable<Survey['stances'][number]['tilt']>): PlaceReading['tilt'] {
  const angle = (aside: number) => (Math.asin(Math.max(-1, Math.min(1, aside / over_mm))) * 180) / Math.PI;
  return { x: angle(x_mm), y: angle(y_mm), total: angle(Math.hypot(x_mm, y_mm)) };
}

/**
 * Where the inserts are by one survey, in the axes in which the job gives them: by instrument, by tape, and how each stands in its face. Points that fit their
 * mirror image far better give no place.
 */
export function placeSurvey({ setOut: { panel, items } }: PiecePlan, survey: Survey): PlacedSurvey {
  const castIns = items.map(({ castIn }) => castIn);
  const places = new Map<string, PlaceReading>();
  const registered = register(panel, castIns, survey);
  const isRegistered = registered !== null && typeof registered !== 'string';
  if (isRegistered && !registered.isMirrored)
    for (const [key, { x, y, sigma, ...stance }] of registered.places)
      places.set(key, { position: { x, y, sigma }, isShapeOnly: false, ...stance });
  const taped = placeByTapes(castIns, survey.tapes);
  for (const [key, position] of taped.places)
    places.set(key, { ...(places.get(key) ?? NOTHING), position, isShapeOnly: taped.shapeOnly.has(key) });
  for (const { item, depth_mm, tilt } of survey.stances) {
    const had = places.get(item) ?? NOTHING;
    const byRule = depth_mm === null ? {} : { depth: depth_mm, depthSigma: RULE_SIGMA };
    places.set(item, { ...had, ...byRule, tilt: tilt === null ? had.tilt : toTilt(tilt) });
  }
  const notes = typeof registered === 'string' ? [registered] : (registered?.notes ?? []);
  return {
    controls: isRegistered ? registered.controls : [],
    rms: isRegistered ? registered.rms : null,
    notes: [...notes, ...taped.notes],
    places,
  };
}

/** A recorded survey brought onto the panel. */
export function readSurvey(plan: PiecePlan, record: RecordOf<'surveyed'>): SurveyReading {
  const { places, ...found } = placeSurvey(plan, record.body);
  return { survey: { record, ...found }, places };
}
