import * as z from 'zod';
import { jobBody } from './job-body.ts';
import { editor, moment, version } from './values.ts';

const keptId = z.string().regex(/^[a-z0-9]{12}$/, 'the id of a kept version: 12 small letters and digits');
const reason = z.string().min(1).max(400);

/** The other version of a conflict, to be kept whole beside the job. `base`: the last version of the job that it knew. */
export const newKept = z.strictObject({ base: version, editor, reason, file: z.unknown() });

export const keptHead = z.strictObject({ id: keptId, base: version, editor, reason, keptAt: moment });

export const keptList = z.strictObject({ kept: z.array(keptHead).readonly() });

export const keptVersion = keptHead.extend({ file: jobBody });

export type NewKept = z.infer<typeof newKept>;
export type KeptHead = z.infer<typeof keptHead>;
export type KeptVersion = z.infer<typeof keptVersion>;
