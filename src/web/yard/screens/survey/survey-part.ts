import type { OpenPiece } from '../../../pieces/read-piece.ts';
import type { TapeSession } from '../../state/survey/tape-session.ts';

/** What every part of the screen gets. */
export interface SurveyPartProps {
  readonly tape: TapeSession;
  readonly piece: OpenPiece;
}
