import * as z from 'zod';
import { decidingRole } from './bodies.ts';
import { mark, personId, words } from './values.ts';

/** A person whom records name by id. The name may be erased; the records stay. No account: nobody proves who he is yet. */
export const person = z.strictObject({
  id: personId,
  /** Null: erased. */
  name: mark.nullable(),
  roles: z.array(decidingRole).max(6).readonly(),
  /** Number and place of a design engineer's registration. */
  registration: words.max(200).nullable(),
});

export type Person = z.infer<typeof person>;
export type Role = z.infer<typeof decidingRole>;
