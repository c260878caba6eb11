import type { AnchorageGroup } from '../../checks/anchorage-group.ts';
import { writeMessage } from '../../checks/messages.ts';
import { findQualificationFault, findUncoveredAnywhere } from '../uncovered.ts';

/**
 * Range of the rules: concrete C12/15 to C90/105 and h_ef from 40 mm (1.1, both recalled), f_uk up to 1000 MPa in shear
 * (7.2.2.3.1).
 */
export const LIMITS = { lowestConcrete: 12, highestConcrete: 90, smallestEmbedment: 40, highestSteel: 1000 } as const;

/**
 * Why a group lies outside EN 1992-4:2018 (clause 1, scope; 7.2.1.5 for the head; 7.2.2.3.1 for the steel), or outside a
 * document with the same limits.
 * @param document its name
 * @param isMeant the names of the document in a qualification document
 * @returns sentences; empty when the group is covered
 */
export function findUncovered(group: AnchorageGroup, document: string, isMeant: RegExp): readonly string[] {
  const reasons: string[] = [];
  const { concrete, insert } = group;
  if (concrete.strength < LIMITS.lowestConcrete || concrete.strength > LIMITS.highestConcrete)
    reasons.push(
      writeMessage('strength-range', {
        value: concrete.strength,
        low: LIMITS.lowestConcrete,
        high: LIMITS.highestConcrete,
        document,
      }),
    );
  if (concrete.lightweightFactor !== 1)
    reasons.push(writeMessage('lightweight', { value: concrete.lightweightFactor, document }));
  if (insert.embedment < LIMITS.smallestEmbedment)
    reasons.push(writeMessage('embedment-range', { value: insert.embedment, low: LIMITS.smallestEmbedment, document }));
  reasons.push(...findQualificationFault(insert, document, isMeant));
  for (const part of insert.steelParts)
    if (part.ultimate > LIMITS.highestSteel)
      reasons.push(
        writeMessage('steel-strength', {
          part: part.name,
          value: part.ultimate,
          high: LIMITS.highestSteel,
          document,
        }),
      );
  return [...reasons, ...findUncoveredAnywhere(group)];
}
