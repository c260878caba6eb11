import { lookUp } from '../explain-issue.ts';
import type { DocumentFault } from '../fault.ts';
import { faultAt } from './fault-at.ts';

/** What the rules say that cannot hold together. */
export function checkRules(document: unknown): DocumentFault[] {
  const path = ['library', 'rules', 'belowFace', 'aim_mm'];
  const aim = lookUp(document, path);
  const most = lookUp(document, ['library', 'rules', 'belowFace', 'most_mm']);
  if (typeof aim !== 'number' || typeof most !== 'number' || aim <= most) return [];
  const text = `tops are aimed ${aim} mm below the face, deeper than the ${most} mm that are allowed; expected at most ${most} mm`;
  return [faultAt(path, aim, `at most ${most} mm`, text)];
}
