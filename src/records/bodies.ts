import * as z from 'zod';
import { bodiesAfter } from './bodies-after.ts';
import { hash, mark, millimetres, moment, pieceId, recordId, stage, words } from './values.ts';

/** By sight: true it is as it must be, false it is not. */
const sight = z.boolean();

/** Which piece a record is of, as the panel and serial that its mark says. */
const marked = { panelKey: mark, mark, serial: mark } as const;

/** What a clearance was given on: enough to compute it again and to compare. */
const frozen = z.strictObject({
  revision: z.strictObject({ letter: mark, fingerprint: hash }),
  engine: mark,
  /** Hash of the piece's inputs: check keys and the records that count, in canonical text. */
  inputs: hash,
  /** Open points at that moment, in words; empty for a clearance without condition. */
  open: z.array(words).max(500).readonly(),
  /** Head of the server's log as the device knew it. */
  head: z.strictObject({ number: z.int().nonnegative(), hash }).nullable(),
});

/** Role in which a person decides. */
export const decidingRole = z.enum(['setter', 'checker', 'foreman', 'qa', 'design engineer', 'installer']);

/**
 * What may be recorded, by kind. A fact is never changed: a `correction` takes the record that it points at out of what counts, and another record
 * says what is so. A new kind is added here, in `slots.ts` and in the words of `say/`; a shipped one is never edited.
 */
export const bodies = {
  /** A casting is begun (or named for the first time): what is painted or planned on it. `recastOf`: the piece that it is made in place of. */
  'piece-started': z.strictObject({
    ...marked,
    pour: mark.nullable(),
    bed: mark.nullable(),
    recastOf: pieceId.nullable(),
  }),
  /** It is another mark than was thought, or gets another serial. Its records stay with it. */
  're-marked': z.strictObject({ ...marked, reason: words }),
  scrapped: z.strictObject({ reason: words }),
  /** Where it stands in the building. */
  located: z.strictObject({ place: words }),
  /** The form itself, measured before anything is measured from it; `what` as the set-out names the length. */
  'form-checked': z.strictObject({
    measures: z
      .array(z.strictObject({ what: words, measured_mm: millimetres }))
      .min(1)
      .max(60)
      .readonly(),
  }),
  /** An insert looked at in a stage: all at once, or what is wrong. `stick`: depth or length tried with a stick, where two types look alike. */
  placed: z.strictObject({ stage, type: sight, face: sight, firm: sight, note: words.nullable() }),
  /**
   * Taped along x and y from the datum corner (on an edge: along it, and above the bed). Level: below the face positive. Null: not taken.
   * `chosen`: no new measurement, but the one of several that a person found right.
   */
  measured: z.strictObject({
    stage,
    x_mm: millimetres.nullable(),
    y_mm: millimetres.nullable(),
    level_mm: millimetres.nullable(),
    basis: z.enum(['tape', 'sheet', 'chosen']),
  }),
  photo: z.strictObject({
    photo: hash,
    type: z.enum(['image/jpeg', 'image/webp', 'image/png']),
    bytes: z.int().positive(),
    width: z.int().positive(),
    height: z.int().positive(),
    of: z.enum(['insert', 'piece', 'sheet', 'defect', 'mark']),
    note: words.nullable(),
  }),
  comment: z.strictObject({ text: words }),
  /** Takes `of` out of what counts; it stays in the history. */
  correction: z.strictObject({ of: recordId, reason: words }),
  /** What becomes of an insert that is off: decided by a person in a role, on the records that it names. */
  decision: z.strictObject({
    about: z.array(recordId).min(1).max(20).readonly(),
    verdict: z.enum(['accepted', 'to be moved', 'rejected']),
    role: decidingRole,
    /** The person's registration, where a design engineer decides. */
    registration: words.nullable(),
    reason: words,
    /** What was computed then. */
    computed: z.strictObject({
      state: z.enum(['works', 'does not work', 'not known']),
      ratio: z.number().nonnegative().nullable(),
      engine: mark,
    }),
  }),
  cleared: z.strictObject({ role: decidingRole, condition: words.nullable(), frozen }),
  held: z.strictObject({ reason: words }),
  /** Poured shall be though not everything is in order: named, with its reason. */
  override: z.strictObject({ role: decidingRole, reason: words, frozen }),
  /** It was poured. Accepted whatever stands before it. */
  poured: z.strictObject({ reason: words.nullable() }),
  'screed-checked': z.strictObject({
    level: sight,
    plumb: sight,
    cap: sight,
    level_mm: millimetres.nullable(),
    note: words.nullable(),
  }),
  /** Out of the form. Fixing plates counted back, by the id of the part. */
  stripped: z.strictObject({
    plates: z
      .array(z.strictObject({ part: mark, out: z.int().nonnegative(), back: z.int().nonnegative() }))
      .max(60)
      .readonly(),
  }),
  /** Opened up after stripping: of the whole piece (all as it must be) or of one insert (what is not). Turns by hand of a bolt of the final finish. */
  uncovered: z.strictObject({
    plateOff: sight,
    mortarOut: sight,
    thread: sight,
    turns: z.number().nonnegative().max(100).nullable(),
    capBack: sight,
    note: words.nullable(),
  }),
  cap: z.strictObject({ is: z.enum(['back in', 'missing']) }),
  'strength-result': z.strictObject({
    specimen: z.enum(['cylinder', 'cube']),
    age_hours: z.number().positive(),
    values_MPa: z.array(z.number().positive().max(250)).min(1).max(20).readonly(),
    report: words.nullable(),
  }),
  'lot-taken': z.strictObject({ item: mark, lot: mark, count: z.int().positive() }),
  docket: z.strictObject({ number: mark, mix: mark.nullable(), at: moment.nullable() }),
  ...bodiesAfter,
} as const;
