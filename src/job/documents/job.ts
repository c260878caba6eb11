import * as z from 'zod';
import { castIn } from './cast-in.ts';
import { concrete } from './concrete.ts';
import { connection } from './connection.ts';
import { panel } from './panel.ts';
import { pour, revision } from './pour.ts';
import { pin, text } from './values.ts';

/** The project, for the head of every sheet. */
const project = z.strictObject({
  name: text,
  number: text.nullable().default(null),
  designEngineer: text.nullable().default(null),
  remarks: z.array(text).readonly().default([]),
});

/** What was designed: one document, checked as a whole. */
export const job = z.strictObject({
  project,
  pins: z.strictObject({ catalogue: pin, details: pin, holding: pin, rules: pin, yard: pin }),
  /** Null: nothing was issued yet, a preliminary state. */
  revision: revision.nullable().default(null),
  concretes: z.array(concrete).min(1).readonly(),
  panels: z.array(panel).min(1).readonly(),
  castIns: z.array(castIn).readonly(),
  connections: z.array(connection).readonly(),
  pours: z.array(pour).readonly().default([]),
});
