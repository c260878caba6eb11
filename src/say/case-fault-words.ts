import type { CaseField, KnownField } from '../assess/out-of-place/case.ts';
import type { CaseFault } from '../assess/out-of-place/find-case-faults.ts';
import type { QuantityWriter } from './quantities.ts';

/** What each value is called where it is asked for. */
export const FIELD_NAMES: Readonly<Record<CaseField | KnownField, string>> = {
  role: 'What it is for',
  thread: 'Thread',
  length_mm: 'Length of the insert',
  edge1_mm: 'To the nearest edge, opening or joint',
  edge2_mm: 'To the next nearest',
  neighbours: 'Inserts beside it',
  spacing_mm: 'To the nearest of them',
  thickness_mm: 'Thickness of the concrete',
  strength_MPa: 'Strength today (cylinder)',
  isPoured: 'Is it poured?',
  tension_kN: 'Tension on this insert',
  shear_kN: 'Shear on this insert',
  document: 'Product document',
  bodyDiameter_mm: 'Body diameter',
  footDiameter_mm: 'Foot diameter',
  embedment_mm: 'Depth of the foot’s bearing side',
  steelUltimate_MPa: 'Strength of its steel (with its yield)',
  steelYield_MPa: 'Yield of its steel (with its strength)',
  threadClass: 'Class of its thread',
  boltClass: 'Class of the bolt',
  engagement_mm: 'Thread that the bolt has',
  isDense: 'Bars close together at the face',
  limitsCracks: 'Bars hold cracks fine (0.3 mm)',
  edgeBars: 'Bars along the edge',
  otherEdges_mm: 'Any other edge, at least',
  neighboursCarry: 'Share that neighbours carry',
  criticalEdge_mm: 'Critical edge distance (splitting)',
  drawnEdge1_mm: 'Drawn: to the first edge',
  drawnEdge2_mm: 'Drawn: to the second edge',
};

/** A value of a field with its unit, as the key says it. */
function writeValue(field: string, value: number, { length, force, strength }: QuantityWriter): string {
  if (field.endsWith('_mm')) return length(value);
  if (field.endsWith('_kN')) return force(value * 1000);
  return field.endsWith('_MPa') ? strength(value) : String(value);
}

const BOUNDS: Readonly<Record<Exclude<CaseFault['kind'], 'missing'>, string>> = {
  'not above': 'more than',
  'not below': 'less than',
  'not at least': 'at least',
  'not at most': 'at most',
};

/** Says what is expected in place of a value that is missing or cannot be, beside its field. */
export function sayExpected({ field, kind, limit, of }: CaseFault, writer: QuantityWriter): string {
  if (kind === 'missing' || limit === null) return 'needed, since nothing that could be assumed is on the safe side';
  const bound = of === 'zero' ? '0' : writeValue(field, limit, writer);
  const whose =
    of === null || of === 'zero' ? '' : of === 'body' ? ' (its body)' : ` (${FIELD_NAMES[of].toLowerCase()})`;
  return `expected ${BOUNDS[kind]} ${bound}${whose}`;
}

/** Says which value is missing or cannot be, and what is expected. */
export function sayCaseFault(fault: CaseFault, writer: QuantityWriter): string {
  const { field, value } = fault;
  const wrong = value === null ? '' : `${writeValue(field, value, writer)} cannot be; `;
  return `${FIELD_NAMES[field]}: ${wrong}${sayExpected(fault, writer)}`;
}
