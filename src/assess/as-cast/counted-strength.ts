import { cylinderFromCube } from '../../engine/material/cube-strength.ts';
import type { Concrete } from '../../job/documents/concrete.ts';
import type { JobIndex } from '../../job/job-index.ts';
import type { PieceState } from '../../records/fold/piece-state.ts';
import type { RecordOf } from '../../records/record.ts';
import { ofKind } from '../yard/piece-slots.ts';
import type { CountedStrength } from './as-cast-report.ts';

const HOURS_A_DAY = 24;
/** The age that the class of a concrete is of [days]. */
const CLASS_AGE = 28;

function showStrength(strength: number): string {
  return `${Math.round(strength * 10) / 10} MPa`;
}

/** What single specimens come to as cylinders [MPa]. */
function listCylinders({ body }: RecordOf<'strength-result'>): readonly number[] {
  return body.specimen === 'cylinder' ? body.values_MPa : body.values_MPa.map(cylinderFromCube);
}

/** Of results on younger specimens, which say nothing of the strength of the class. */
function tellYounger(younger: readonly RecordOf<'strength-result'>[]): string {
  if (younger.length === 0) return '';
  const days = Math.max(...younger.map(({ body }) => body.age_hours)) / HOURS_A_DAY;
  return `; results up to ${Math.round(days * 10) / 10} days are not counted: before ${CLASS_AGE} days they say nothing of the strength of the class`;
}

/**
 * Strength of a piece's concrete as its answers count it: the lowest single result of specimens of 28 days or older, where that is less than the
 * design's class; a stronger concrete is never counted. Common practice for small samples: no scatter is known of so few, so that no lower limit can be
 * worked out from their mean, and none is credited.
 *
 */
export function countStrength(concrete: Concrete, state: Pick<PieceState, 'beside'>): CountedStrength {
  const design = concrete.strength28_MPa;
  const results = ofKind(state.beside.get('strength-result') ?? [], 'strength-result');
  const isOfAge = ({ body }: RecordOf<'strength-result'>) => body.age_hours >= CLASS_AGE * HOURS_A_DAY;
  const counting = results.filter(isOfAge);
  const younger = tellYounger(results.filter((result) => !isOfAge(result)));
  const values = counting.flatMap(listCylinders);
  if (values.length === 0)
    return {
      cylinder_MPa: design,
      from: 'design',
      words: `${showStrength(design)} as designed: no result of ${CLASS_AGE} days is recorded${younger}`,
    };
  const least = Math.min(...values);
  const cubes = counting.some(({ body }) => body.specimen === 'cube')
    ? ', cubes as cylinders by the pairs of the strength classes (EN 206, recalled)'
    : '';
  const of = `the lowest of ${values.length === 1 ? 'one result' : `${values.length} results`} is ${showStrength(least)}${cubes}`;
  return least < design
    ? {
        cylinder_MPa: least,
        from: 'measured',
        words: `${showStrength(least)}, less than the ${showStrength(design)} of the design: ${of}; the lowest counts (common practice)${younger}`,
      }
    : {
        cylinder_MPa: design,
        from: 'design',
        words: `${showStrength(design)} as designed: ${of}, and more than the class is never counted${younger}`,
      };
}

/** The job with the concrete of a panel no stronger than counted, at any age. */
export function overlayStrength(
  index: JobIndex,
  concrete: Concrete,
  { cylinder_MPa, from }: CountedStrength,
): JobIndex {
  if (from === 'design') return index;
  const ages = concrete.ages.map((one) => ({ ...one, strength_MPa: Math.min(one.strength_MPa, cylinder_MPa) }));
  const measured = { ...concrete, strength28_MPa: cylinder_MPa, ages };
  return { ...index, concretes: new Map(index.concretes).set(concrete.id, measured) };
}
