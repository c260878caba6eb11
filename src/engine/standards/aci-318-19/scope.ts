import type { AnchorageGroup } from '../../checks/anchorage-group.ts';
import { roundForText, writeMessage } from '../../checks/messages.ts';
import { findQualificationFault, findUncoveredAnywhere } from '../uncovered.ts';

const DOCUMENT = 'ACI 318';

/** ACI 318 without a year, or of 2019 in either of its units. */
export const MEANT = /^ACI 318M?([-:](20)?19\b.*)?$/;

/**
 * Highest concrete strength for cast-in anchors, 17.3.1: 10 000 psi, 70 MPa in the SI edition, taken for both. Steel above 1000 MPa
 * counts as too brittle to go by (our choice; f_uta is held down to 860 MPa in any case).
 */
export const LIMITS = {
  lowestConcrete: null,
  highestConcrete: 70,
  smallestEmbedment: null,
  highestSteel: 1000,
} as const;

/**
 * Why a group lies outside ACI 318-19 Chapter 17 (17.3.1 for the concrete; 17.1 leaves out specialty inserts, so an insert
 * needs a document that says it is designed as a headed anchor; no rule for bolts that bend at a stand-off).
 * @returns sentences; empty when the group is covered
 */
export function findUncovered(group: AnchorageGroup): readonly string[] {
  const reasons: string[] = [];
  const { concrete, insert, leverArm } = group;
  if (concrete.strength > LIMITS.highestConcrete)
    reasons.push(
      writeMessage('strength-high', { value: concrete.strength, high: LIMITS.highestConcrete, document: DOCUMENT }),
    );
  for (const part of insert.steelParts)
    if (part.ultimate > LIMITS.highestSteel)
      reasons.push(
        writeMessage('steel-strength', {
          part: part.name,
          value: part.ultimate,
          high: LIMITS.highestSteel,
          document: DOCUMENT,
        }),
      );
  reasons.push(...findQualificationFault(insert, DOCUMENT, MEANT));
  if (leverArm !== null)
    reasons.push(writeMessage('lever-arm-uncovered', { value: roundForText(leverArm.length), document: DOCUMENT }));
  return [...reasons, ...findUncoveredAnywhere(group)];
}
