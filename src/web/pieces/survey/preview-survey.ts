import type { ControlResidual } from '../../../assess/as-cast/as-cast-report.ts';
import { placeSurvey } from '../../../assess/as-cast/read-survey.ts';
import type { PlaceReading } from '../../../assess/as-cast/survey-reading.ts';
import type { SetOutItem } from '../../../assess/set-out/set-out.ts';
import type { PiecePlan } from '../../../assess/yard/piece-plan.ts';
import type { BodyOf } from '../../../records/record.ts';

/** What came out for one insert, in the axes in which it is given [mm, degrees]. */
export interface PreviewedInsert {
  readonly item: SetOutItem;
  readonly reading: PlaceReading;
  /** Found less designed; null: its place did not come out. */
  readonly off: readonly [number, number] | null;
  readonly isOff: boolean;
}

/** What a survey would come to, before it is recorded. */
export interface SurveyPreview {
  readonly controls: readonly ControlResidual[];
  readonly rms: number | null;
  /** What a reader must know. */
  readonly notes: readonly string[];
  readonly inserts: readonly PreviewedInsert[];
}

/** Brings a survey that is not recorded onto the panel, the same way as a recorded one. */
export function previewSurvey(plan: PiecePlan, body: BodyOf<'surveyed'>): SurveyPreview {
  const { places, controls, rms, notes } = placeSurvey(plan, body);
  return {
    controls,
    rms,
    notes,
    inserts: plan.setOut.items.flatMap((item): PreviewedInsert[] => {
      const reading = places.get(item.castIn.key);
      if (reading === undefined) return [];
      const { position } = reading;
      const off = position === null ? null : ([position.x - item.castIn.x_mm, position.y - item.castIn.y_mm] as const);
      return [{ item, reading, off, isOff: off?.some((part) => Math.abs(part) > item.tolerance) ?? false }];
    }),
  };
}
