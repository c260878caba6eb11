import type { Connection } from '../../job/documents/connection.ts';
import type { FixtureHole } from '../../job/documents/fixture.ts';
import type { BodyOf, FactRecord, RecordOf } from '../../records/record.ts';
import type { ConnectionState } from '../connection-answer.ts';
import type { SetOutItem } from '../set-out/set-out.ts';
import type { Act } from '../yard/rights.ts';

/** Where an insert of the hard panel is, from the surveys that count. Lengths mm, angles degrees. */
export interface SurveyedPlace {
  /** In the axes in which the job's cast-in items are given: on a face its drawn x and y; on an edge along it, and from the outside face. */
  readonly x: number;
  readonly y: number;
  /** Found less designed. */
  readonly dx: number;
  readonly dy: number;
  /** Top of the insert below its own face, above it (proud) negative, less what the assembly aims at; null: not taken. */
  readonly depth: number | null;
  readonly depthOff: number | null;
  /** Standard deviation of the depth; null: not taken. */
  readonly depthSigma: number | null;
  /** How its axis leans in the same axes; null: not taken. */
  readonly tilt: { readonly x: number; readonly y: number; readonly total: number } | null;
  /** Standard deviation of the place along x and y. */
  readonly sigma: readonly [number, number];
  readonly basis: BodyOf<'surveyed'>['basis'] | 'taped in the form';
  readonly record: FactRecord;
}

/** An insert as cast. */
export interface AsCastInsert {
  readonly item: SetOutItem;
  readonly place: SurveyedPlace | null;
  /** `not surveyed`: taken as last measured in the form, else as designed; `conflict`: surveys that did not know of each other differ, the worse counts. */
  readonly state: 'within' | 'off' | 'not surveyed' | 'conflict';
  /** In words: what is off, by how much and which way. */
  readonly why: readonly string[];
}

/** What a control point left over. */
export interface ControlResidual {
  readonly name: string;
  readonly residual: number;
  readonly isUsed: boolean;
  /** It does not agree with the others: named as the likely blunder. */
  readonly isSuspect: boolean;
}

/** A survey brought onto the panel. */
export interface RegisteredSurvey {
  readonly record: RecordOf<'surveyed'>;
  readonly controls: readonly ControlResidual[];
  /** Root mean square of what the used controls left; null: no controls (taped from edges). */
  readonly rms: number | null;
  /** What a reader must know: a blunder, too few controls to show one, a mirrored set. In words. */
  readonly notes: readonly string[];
}

export type RemedyKind = BodyOf<'remedy-decided'>['remedy'];

/** A remedy, computed. */
export interface Remedy {
  readonly kind: RemedyKind;
  /** In one sentence: `Hole 2 becomes a slot of 18 × 30 mm, lengthwise along the plate; washer 50 × 50 × 6.` */
  readonly words: string;
  /** `works`: strength passes, plate goes on, nothing else stands against it. `does not work`: with why. `not known`: strength not checked or not covered. */
  readonly verdict: 'works' | 'does not work' | 'not known';
  readonly why: readonly string[];
  readonly state: ConnectionState;
  readonly ratio: number | null;
  /** Least radial clearance left at a hole, and how sure that it is the best; null: no plate. */
  readonly clearance: { readonly margin: number; readonly provenWithin: number } | null;
  /** Who may decide it. */
  readonly act: Extract<Act, 'decide on site' | 'change the design'>;
  readonly change: BodyOf<'remedy-decided'>['change'];
  /** Plate's holes as they would be, all of them; null: no plate. */
  readonly holes: readonly FixtureHole[] | null;
  /** Where the plate comes to lie on the panel: its origin and turn with the movement in it. */
  readonly connection: Connection;
  /** What goes with it: zinc made good, the steel designer's yes, washers welded. In words. */
  readonly conditions: readonly string[];
}

/** A connection as cast, and what may be done about it. */
export interface AsCastConnection {
  readonly connection: Connection;
  readonly members: readonly AsCastInsert[];
  readonly before: { readonly state: ConnectionState; readonly ratio: number | null };
  /**
   * `fine`: within tolerance, nothing to decide. `fine as it is`: off, works and the plate goes on as drawn, still decided by a person. `needs a remedy`. `not surveyed`.
   * `decided`: by somebody who may, on what is known now.
   */
  readonly state: 'fine' | 'fine as it is' | 'needs a remedy' | 'not usable' | 'not surveyed' | 'decided' | 'conflict';
  /** Side by side, those that an installer may do himself first. */
  readonly remedies: readonly Remedy[];
  readonly decision: RecordOf<'remedy-decided'> | null;
  /** What was decided, by its own numbers, as it is computed now; null: nobody decided. */
  readonly decided: Remedy | null;
  /** Records that the places of its inserts rest on: a decision is about them, and must have seen them. Empty: nobody measured any. */
  readonly rests: readonly FactRecord[];
  /** Of the fallen decisions those by somebody who may not. */
  readonly withoutRight: readonly RecordOf<'remedy-decided'>[];
  /** Decisions that do not count, with why. */
  readonly fallen: readonly { readonly record: RecordOf<'remedy-decided'>; readonly why: string }[];
}

/** Strength of the piece's concrete as it is counted in the answers. */
export interface CountedStrength {
  readonly cylinder_MPa: number;
  readonly from: 'design' | 'measured';
  /** In words: how it comes from which results. */
  readonly words: string;
}

export interface AsCastReport {
  readonly piece: string;
  readonly surveys: readonly RegisteredSurvey[];
  readonly inserts: readonly AsCastInsert[];
  readonly connections: readonly AsCastConnection[];
  readonly strength: CountedStrength;
}
