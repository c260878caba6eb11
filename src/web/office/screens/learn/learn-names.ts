import type { JobIndex } from '../../../../job/job-index.ts';
import type { Person } from '../../../../records/person.ts';
import type { GroupNames } from '../../../../say/learn-words.ts';
import { writeQuantity } from '../../../parts/units.ts';

export const writeLength = (mm: number) => writeQuantity('length', mm);

/** What groups are called in this job. An erased person has no name any more. */
export function namesOf(index: JobIndex, people: readonly Person[]): GroupNames {
  const { beds } = index.file.library.yard;
  return {
    person: (id) => people.find((one) => one.id === id)?.name ?? null,
    bed: (id) => beds.find((one) => one.id === id)?.name ?? null,
    length: writeLength,
  };
}
