import { findThread } from '../../engine/hardware/threads.ts';
import type { CaseField, KnownField, KnownValues, OutOfPlaceCase } from './case.ts';
import { FOOT_TO_BODY, findLeastBody, findThickestFoot } from './least-insert.ts';

/** Why a case cannot be answered as it stands, at one of its values; words are made of it where it is shown. */
export interface CaseFault {
  readonly field: CaseField | KnownField;
  /** Missing: no assumption is on the safe side. Else the value is outside what can be, and the limit tells. */
  readonly kind: 'missing' | 'not above' | 'not below' | 'not at least' | 'not at most';
  readonly value: number | null;
  /** In the unit of the field. */
  readonly limit: number | null;
  /** What the limit is, where it is another value of the case. */
  readonly of: CaseField | KnownField | 'zero' | 'body' | null;
}

/** Without these there is no answer: nothing that could be taken for them is on the safe side. */
const REQUIRED = ['role', 'thread', 'length_mm', 'edge1_mm', 'edge2_mm', 'neighbours'] as const;

const ABOVE_ZERO = ['length_mm', 'edge1_mm', 'edge2_mm', 'spacing_mm', 'thickness_mm', 'strength_MPa'] as const;

const KNOWN_ABOVE_ZERO = [
  'bodyDiameter_mm',
  'footDiameter_mm',
  'embedment_mm',
  'steelUltimate_MPa',
  'steelYield_MPa',
  'engagement_mm',
  'otherEdges_mm',
  'criticalEdge_mm',
  'drawnEdge1_mm',
  'drawnEdge2_mm',
] as const;

function missing(field: CaseField): CaseFault {
  return { field, kind: 'missing', value: null, limit: null, of: null };
}

/** Values of which one must be below or above another. */
function findMisfits(given: OutOfPlaceCase, known: KnownValues): readonly CaseFault[] {
  const faults: CaseFault[] = [];
  const { length_mm: length, thickness_mm: thickness, spacing_mm: spacing, thread } = given;
  if (length !== null && thickness !== null && thickness <= length)
    faults.push({ field: 'thickness_mm', kind: 'not above', value: thickness, limit: length, of: 'length_mm' });
  if (length !== null && known.embedment_mm !== null && known.embedment_mm > length)
    faults.push({
      field: 'embedment_mm',
      kind: 'not at most',
      value: known.embedment_mm,
      limit: length,
      of: 'length_mm',
    });
  const { steelYield_MPa: yieldStress, steelUltimate_MPa: ultimate } = known;
  if (yieldStress !== null && ultimate !== null && yieldStress > ultimate)
    faults.push({
      field: 'steelYield_MPa',
      kind: 'not at most',
      value: yieldStress,
      limit: ultimate,
      of: 'steelUltimate_MPa',
    });
  if (thread === null) return faults;
  const { diameter } = findThread(thread);
  const shortest = diameter + findThickestFoot(findThread(thread));
  if (length !== null && length < shortest)
    faults.push({ field: 'length_mm', kind: 'not at least', value: length, limit: shortest, of: null });
  const leastBody = findLeastBody(findThread(thread));
  const body = known.bodyDiameter_mm ?? leastBody;
  if (body < leastBody)
    faults.push({ field: 'bodyDiameter_mm', kind: 'not at least', value: body, limit: leastBody, of: null });
  const leastFoot = FOOT_TO_BODY * body;
  if (known.footDiameter_mm !== null && known.footDiameter_mm < leastFoot)
    faults.push({
      field: 'footDiameter_mm',
      kind: 'not at least',
      value: known.footDiameter_mm,
      limit: leastFoot,
      of: 'body',
    });
  if (spacing !== null && (given.neighbours ?? 0) > 0 && spacing <= body)
    faults.push({ field: 'spacing_mm', kind: 'not above', value: spacing, limit: body, of: 'body' });
  return faults;
}

/** Everything that keeps a case from being answered, in the order of its values. Lifting and brace are not faults: they stop. */
export function findCaseFaults(given: OutOfPlaceCase, known: KnownValues): readonly CaseFault[] {
  const faults: CaseFault[] = REQUIRED.filter((field) => given[field] === null).map(missing);
  if ((given.neighbours ?? 0) > 0 && given.spacing_mm === null) faults.push(missing('spacing_mm'));
  const mustBeAbove = (field: CaseField | KnownField, value: number | null) => {
    if (value !== null && !(value > 0)) faults.push({ field, kind: 'not above', value, limit: 0, of: 'zero' });
  };
  for (const field of ABOVE_ZERO) mustBeAbove(field, given[field]);
  for (const field of KNOWN_ABOVE_ZERO) mustBeAbove(field, known[field]);
  for (const field of ['tension_kN', 'shear_kN'] as const) {
    const value = given[field];
    if (value !== null && !(value >= 0)) faults.push({ field, kind: 'not at least', value, limit: 0, of: 'zero' });
  }
  const share = known.neighboursCarry;
  if (share !== null && !(share >= 0 && share <= 1))
    faults.push({ field: 'neighboursCarry', kind: 'not at most', value: share, limit: 1, of: null });
  return faults.length > 0 ? faults : findMisfits(given, known);
}
