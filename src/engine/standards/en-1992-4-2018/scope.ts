import type { AnchorageGroup } from '../../checks/anchorage-group.ts';
import { writeMessage } from '../../checks/messages.ts';
import { findUncoveredAnywhere, isQualifiedFor } from '../uncovered.ts';

/** Concrete strength that EN 1992-4 covers, C12/15 to C90/105 (1.1; recalled) [MPa]. */
const STRENGTH_RANGE = { low: 12, high: 90 } as const;

/** Smallest embedment that EN 1992-4 covers (1.1; recalled) [mm]. */
const SMALLEST_EMBEDMENT = 40;

/** Highest steel strength of the shear rules, 7.2.2.3.1 [MPa]. */
const HIGHEST_STEEL_STRENGTH = 1000;

/**
 * Why a group lies outside EN 1992-4:2018 (clause 1, scope; 7.2.1.5 for the head; 7.2.2.3.1 for the steel), or outside a
 * document with the same limits.
 * @param document its name, which an insert's qualification document must name too
 * @returns sentences; empty when the group is covered
 */
export function findUncovered(group: AnchorageGroup, document: string): readonly string[] {
  const reasons: string[] = [];
  const { concrete, insert } = group;
  if (concrete.strength < STRENGTH_RANGE.low || concrete.strength > STRENGTH_RANGE.high)
    reasons.push(writeMessage('strength-range', { value: concrete.strength, ...STRENGTH_RANGE, document }));
  if (concrete.lightweightFactor !== 1)
    reasons.push(writeMessage('lightweight', { value: concrete.lightweightFactor, document }));
  if (insert.embedment < SMALLEST_EMBEDMENT)
    reasons.push(writeMessage('embedment-range', { value: insert.embedment, low: SMALLEST_EMBEDMENT, document }));
  if (!isQualifiedFor(insert, document)) reasons.push(writeMessage('no-qualification', { document }));
  for (const part of insert.steelParts)
    if (part.ultimate > HIGHEST_STEEL_STRENGTH)
      reasons.push(
        writeMessage('steel-strength', {
          part: part.name,
          value: part.ultimate,
          high: HIGHEST_STEEL_STRENGTH,
          document,
        }),
      );
  return [...reasons, ...findUncoveredAnywhere(group)];
}
