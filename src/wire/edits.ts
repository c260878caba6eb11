import * as z from 'zod';
import { edit } from '../job/edit/edit.ts';
import { editor, moment, version } from './values.ts';

/** As many edits as one call carries, either way. */
export const MOST_EDITS = 500;

/** Edits made on version `base`, in the order in which they were made. */
export const newEdits = z.strictObject({
  base: version,
  editor,
  edits: z.array(edit).min(1).max(MOST_EDITS).readonly(),
});

/** All edits of the call are on disk; `version` is that after the last of them. */
export const saved = z.strictObject({ version, savedAt: moment });

/** An edit as it was stored: `version` is what the job became by it. */
const storedEdit = z.strictObject({ version, editor, savedAt: moment, edit });

/** Edits after a version, the earliest first, at most MOST_EDITS; `version` is where the job stands. */
export const editList = z.strictObject({ version, edits: z.array(storedEdit).readonly() });

export type NewEdits = z.infer<typeof newEdits>;
export type Saved = z.infer<typeof saved>;
export type StoredEdit = z.infer<typeof storedEdit>;
export type EditList = z.infer<typeof editList>;
