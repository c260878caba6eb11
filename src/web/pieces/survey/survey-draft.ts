import * as z from 'zod';
import type { SurveyRow } from '../../../files/survey/survey-file.ts';
import { NO_TOOL } from './read-tool.ts';

/** What a surveyed point is, as a person confirmed it or geometry suggests it. */
const meaning = z.discriminatedUnion('is', [
  z.strictObject({ is: z.literal('insert'), key: z.string() }),
  /** Another point on the axis of an insert, on a rod screwed in. */
  z.strictObject({ is: z.literal('rod'), key: z.string() }),
  z.strictObject({ is: z.literal('corner'), name: z.string() }),
  /** Anywhere on a side of the outline: only the distance across it is known. */
  z.strictObject({ is: z.literal('side'), edge: z.int().nonnegative() }),
  /** A drilled or painted mark, of which the place on the panel is known. */
  z.strictObject({ is: z.literal('mark'), x: z.number(), y: z.number() }),
  z.strictObject({ is: z.literal('nothing') }),
]);

const pair = z.strictObject({
  /** Line of the file. */
  line: z.int().positive(),
  meaning,
  /** A person has looked at it. */
  isConfirmed: z.boolean(),
  /** Of a known point: how sure its place is [mm]; null: as such points are. */
  sigma: z.number().positive().nullable(),
  isUsed: z.boolean(),
  /** Why it is left out. */
  note: z.string(),
});

const draft = z.strictObject({
  v: z.literal(1),
  /** Bytes in base 64: what the record names by its hash. */
  file: z.strictObject({ name: z.string(), bytes: z.string() }).nullable(),
  choices: z.strictObject({
    separator: z.enum([';', '\t', ',', '|', ' ']).optional(),
    decimal: z.enum(['.', ',']).optional(),
    unit: z.enum(['m', 'mm']).optional(),
    columns: z
      .strictObject({
        name: z.int().nullable(),
        x: z.int(),
        y: z.int(),
        z: z.int().nullable(),
        code: z.int().nullable(),
      })
      .optional(),
  }),
  pairs: z.array(pair).max(2000).readonly(),
  /** Standard deviation of a point by the instrument [mm]. */
  instrument: z.number().positive(),
  tool: z.strictObject({ name: z.string(), serial: z.string(), until: z.string() }),
  note: z.string(),
});

export type Meaning = z.infer<typeof meaning>;
export type SurveyPair = z.infer<typeof pair>;
/** A survey that is being brought onto a panel, as it is kept over a reload. */
export type SurveyDraft = z.infer<typeof draft>;

/** A total station to a prism or a sticker: common practice. */
const INSTRUMENT = 2;

export const EMPTY_SURVEY: SurveyDraft = {
  v: 1,
  file: null,
  choices: {},
  pairs: [],
  instrument: INSTRUMENT,
  tool: NO_TOOL,
  note: '',
};

/** How sure the place of a known point is where nobody says otherwise [mm]: an edge or a corner ± 5 mm, a drilled mark ± 1 mm (common practice). */
export const USUAL_SIGMA = { corner: 5, side: 5, mark: 1 } as const;

/** Points by which the panel is found. */
export function isControl({ meaning: { is } }: Pick<SurveyPair, 'meaning'>): boolean {
  return is === 'corner' || is === 'side' || is === 'mark';
}

/** A point of which nothing is said yet. */
export function beginPair({ line }: SurveyRow, as: Meaning): SurveyPair {
  return { line, meaning: as, isConfirmed: false, sigma: null, isUsed: true, note: '' };
}

const keyOf = (piece: string) => `onepour-survey ${piece}`;

/** What was begun at a piece on this device. What cannot be read is as if it were not there. */
export function readSurveyDraft(storage: Pick<Storage, 'getItem'>, piece: string): SurveyDraft {
  const kept = storage.getItem(keyOf(piece));
  if (kept === null) return EMPTY_SURVEY;
  try {
    return draft.parse(JSON.parse(kept));
  } catch {
    return EMPTY_SURVEY;
  }
}

/** Keeps it on this device after each change. False: there was no room; then it is on the page only. */
export function keepSurveyDraft(
  storage: Pick<Storage, 'setItem' | 'removeItem'>,
  piece: string,
  kept: SurveyDraft,
): boolean {
  if (kept.file === null) {
    storage.removeItem(keyOf(piece));
    return true;
  }
  try {
    storage.setItem(keyOf(piece), JSON.stringify(kept));
    return true;
  } catch {
    storage.removeItem(keyOf(piece));
    return false;
  }
}

/** Bytes as text that a browser's own store can keep. */
export function packBytes(bytes: Uint8Array): string {
  let text = '';
  for (const byte of bytes) text += String.fromCharCode(byte);
  return btoa(text);
}

export function unpackBytes(packed: string): Uint8Array {
  return Uint8Array.from(atob(packed), (sign) => sign.charCodeAt(0));
}
