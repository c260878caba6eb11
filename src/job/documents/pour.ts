import * as z from 'zod';
import { label, lengthOrZero, stress, text } from './values.ts';

/** A day of the calendar, as YYYY-MM-DD. */
const day = z.iso.date();

/** How far a revision may be trusted: only "for construction" may be poured. */
const revisionStatus = z.enum(['preliminary', 'for approval', 'for construction', 'void']);

/** The revision of the job as it stands. */
export const revision = z.strictObject({ letter: label, status: revisionStatus, date: day });

/** One casting of a panel: the mark is a design, the piece is one of it. */
const piece = z.strictObject({
  panel: label,
  serial: label,
  /** The revision by which it was planned; null: the job's. */
  revision: label.nullable().default(null),
  /** From the start of the bed to the panel's side nearest to it; null: not planned. */
  along_mm: lengthOrZero.nullable().default(null),
});

/** What is cast on one bed on one day. */
export const pour = z.strictObject({
  id: label,
  bed: label,
  date: day,
  /** Strength that the concrete must have before it is lifted out of the form, as the lifting design says. */
  strengthAtStrip_MPa: stress.nullable().default(null),
  remarks: z.array(text).readonly().default([]),
  pieces: z.array(piece).min(1).readonly(),
});

export type Pour = z.infer<typeof pour>;
export type Piece = Pour['pieces'][number];
export type Revision = z.infer<typeof revision>;
