import type { ControlResidual } from '../../../assess/as-cast/as-cast-report.ts';
import { listOff } from '../../../assess/as-cast/judge-insert.ts';
import { placeSurvey } from '../../../assess/as-cast/read-survey.ts';
import type { PlaceReading } from '../../../assess/as-cast/survey-reading.ts';
import { findTop } from '../../../assess/clash/find-top.ts';
import type { SetOutItem } from '../../../assess/set-out/set-out.ts';
import type { PiecePlan } from '../../../assess/yard/piece-plan.ts';
import type { YardContext } from '../../../assess/yard/piece-report.ts';
import type { BodyOf } from '../../../records/record.ts';

/** What came out for one insert, in the axes in which it is given [mm, degrees]. */
export interface PreviewedInsert {
  readonly item: SetOutItem;
  readonly reading: PlaceReading;
  /** Found less designed; null: its place did not come out. */
  readonly off: readonly [number, number] | null;
  /** In what it is beyond its tolerances, as it will be told once the survey is recorded; none: within. */
  readonly why: readonly string[];
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
export function previewSurvey(
  { index }: Pick<YardContext, 'index'>,
  plan: PiecePlan,
  body: BodyOf<'surveyed'>,
): SurveyPreview {
  const { panel, bed } = plan.setOut;
  const { places, controls, rms, notes } = placeSurvey(plan, body);
  return {
    controls,
    rms,
    notes,
    inserts: plan.setOut.items.flatMap((item): PreviewedInsert[] => {
      const reading = places.get(item.castIn.key);
      if (reading === undefined) return [];
      const { position, depth, depthSigma, tilt } = reading;
      const { castIn } = item;
      const off = position === null ? null : ([position.x - castIn.x_mm, position.y - castIn.y_mm] as const);
      const depthOff = depth === null ? null : depth - findTop(index, panel, castIn, bed);
      const [dx, dy] = off ?? [0, 0];
      return [{ item, reading, off, why: listOff(index, panel, item, { dx, dy, depth, depthOff, depthSigma, tilt }) }];
    }),
  };
}
