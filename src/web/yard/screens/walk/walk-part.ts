import type { OpenPiece } from '../../../pieces/read-piece.ts';
import type { StopState } from '../../state/walk/stop-state.ts';
import type { WalkSession } from '../../state/walk/walk-session.ts';

/** What each part of the walk's screen is given. */
export interface WalkPartProps {
  readonly walk: WalkSession;
  readonly piece: OpenPiece;
  /** The stop that the person stands at; null: the stage has none. */
  readonly here: StopState | null;
}
