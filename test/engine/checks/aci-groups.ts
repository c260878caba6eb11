import { explainAnchorage, prepare } from '../../../src/engine/checks/anchorage.ts';
import type { AnchorageGroup, GroupActions } from '../../../src/engine/checks/anchorage-group.ts';
import type { AnchorageResult } from '../../../src/engine/checks/result.ts';
import type { StandardName } from '../../../src/engine/standards/standard-name.ts';
import { type Changes, makeGroup } from './groups.ts';

/** A document that lets the invented insert be designed by ACI 318. */
export const ACI_QUALIFICATION = { document: 'an invented product document', standard: 'ACI 318-19' } as const;

/**
 * The plain group by ACI 318, in SI unless the test says otherwise: f'c 36 MPa, whose root is 6; a foot that bears on 900 mm²,
 * whose root is 30; steel just ductile, A5 14 % and Z 30 %.
 */
export function makeAciGroup(changes: Changes = {}): AnchorageGroup {
  return makeGroup({
    standard: 'ACI 318M-19',
    ...changes,
    concrete: { strength: 36, ...changes.concrete },
    insert: {
      foot: { kind: 'area', area: 900 },
      elongation: 14,
      areaReduction: 30,
      qualification: ACI_QUALIFICATION,
      ...changes.insert,
    },
  });
}

/** The plain group with what the test changes, explained with every step. */
export function checkAci(changes: Changes, actions: GroupActions, standard?: StandardName): AnchorageResult {
  const group = makeAciGroup(standard === undefined ? changes : { ...changes, standard });
  return explainAnchorage(prepare(group), actions, true);
}
