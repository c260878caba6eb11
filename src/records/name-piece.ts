import { writeCanonical } from '../job/canonical.ts';
import { hashText } from '../job/fingerprint.ts';

/**
 * The id of a piece: two devices that never met give the same to the same casting.
 * @param panelKey permanent key of its panel
 */
export function namePiece(job: string, panelKey: string, serial: string): string {
  return hashText(writeCanonical([job, panelKey, serial])).slice(0, 24);
}
