import type { AsCastConnection, AsCastReport } from '../../../../assess/as-cast/as-cast-report.ts';
import { drawAsCast, drawNonConformance } from '../../../pieces/prints/draw-as-cast.ts';
import { readSheetGround, saveSheets } from '../../../pieces/prints/sheet-ground.ts';
import type { OpenPiece } from '../../../pieces/read-piece.ts';
import type { Yard } from '../../../pieces/yard.ts';
import { writeStamp } from '../../state/write-moment.ts';

/** The page of one connection that did not come out as drawn. Rejects where it cannot be drawn or written. */
export function saveNonConformance(
  yard: Yard,
  piece: OpenPiece,
  report: AsCastReport,
  found: AsCastConnection,
): Promise<void> {
  const ground = readSheetGround(yard, piece, writeStamp);
  const sheets = drawNonConformance(ground, report, found);
  return saveSheets(ground, `${found.connection.mark} non-conformance`, [sheets]);
}

/** The piece as it came out, with what was decided. Rejects as above. */
export function saveAsCast(yard: Yard, piece: OpenPiece, report: AsCastReport): Promise<void> {
  const ground = readSheetGround(yard, piece, writeStamp);
  return saveSheets(ground, 'as cast', [drawAsCast(ground, report)]);
}
