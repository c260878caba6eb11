import * as z from 'zod';
import { label, length, stress, text } from './values.ts';

/** A concrete mix. Strengths are characteristic cylinder strengths f_ck. */
export const concrete = z.strictObject({
  id: label,
  name: text.nullable().default(null),
  strength28_MPa: stress,
  /** Strength at other ages, as tested or agreed. */
  ages: z
    .array(z.strictObject({ age_days: length, strength_MPa: stress }))
    .readonly()
    .default([]),
  lightweight: z.boolean().default(false),
});

export type Concrete = z.infer<typeof concrete>;
