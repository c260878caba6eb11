import type { RegisteredSurvey, SurveyedPlace } from './as-cast-report.ts';

/** What one survey says of one insert; null: it says nothing of it. Axes as the job's cast-in items are given. Lengths mm. */
export interface PlaceReading {
  readonly position: { readonly x: number; readonly y: number; readonly sigma: readonly [number, number] } | null;
  /** Only how inserts lie to each other is known of it: on the panel they are laid where they are nearest to the design. */
  readonly isShapeOnly: boolean;
  readonly depth: number | null;
  readonly depthSigma: number | null;
  readonly tilt: SurveyedPlace['tilt'];
}

/** A survey with what it says of each insert, by the permanent key. */
export interface SurveyReading {
  readonly survey: RegisteredSurvey;
  readonly places: ReadonlyMap<string, PlaceReading>;
}
