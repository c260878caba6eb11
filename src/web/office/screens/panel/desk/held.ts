import type { LiveAnswer } from '../../../../../assess/live/live-connection.ts';
import type { SnapGuide } from '../../../../../drawing/screen/snap.ts';
import type { Point } from '../../../../../engine/geometry/point.ts';
import type { MovedParts } from '../../../../../job/edit/moved-parts.ts';

/** What is selected: cast-in items of one connection or none. */
export interface Selection {
  /** Ids of cast-in items; the first one is in the hand. */
  readonly ids: readonly string[];
  /** The mark of the connection that all of them belong to; null: none, or several. */
  readonly connection: string | null;
  /** The connection is taken as one, plate and all; else its inserts singly. */
  readonly isWhole: boolean;
}

export const NOTHING: Selection = { ids: [], connection: null, isWhole: false };

/** What is being moved at this moment, as it would be. */
export interface Held {
  readonly parts: MovedParts;
  /** Why it cannot stay there; null: it can. */
  readonly misplaced: string | null;
  readonly guides: readonly SnapGuide[];
  /** Null without a connection, or where it cannot stay. */
  readonly answer: LiveAnswer | null;
}

/** Something that was not done, told where it happened. */
export interface Refusal {
  readonly text: string;
  /** Place on the drawing's screen [px]; null: where nothing was pointed at. */
  readonly at: Point | null;
}
