import * as z from 'zod';

/** A permanent key of a cast-in item. */
const item = z.string();
/** Typed in mm; null: not taken, such as what cannot be reached. */
const typed = z.number().nullable();

const entry = z.discriminatedUnion('kind', [
  /** Square from a side of the outline; `slot`: the first or second of its sides. */
  z.strictObject({ kind: z.literal('side'), item, slot: z.int().min(0).max(1), edge: z.int().nonnegative(), typed }),
  z.strictObject({ kind: z.literal('between'), item, other: item, typed }),
  /** Below the face; proud of it negative. */
  z.strictObject({ kind: z.literal('depth'), item, typed }),
  /** How far the end of a rod stands aside, along the drawing's x and y; nobody is asked for it. */
  z.strictObject({ kind: z.literal('tilt'), item, x: z.number(), y: z.number(), over: z.number().positive() }),
]);

const draft = z.strictObject({
  v: z.literal(1),
  basis: z.enum(['tape', 'scaffold']),
  /** From a scaffold: the permanent key of the connection that is taped. */
  connection: z.string().nullable(),
  face: z.enum(['outside', 'inside']),
  turn: z.union([z.literal(0), z.literal(90), z.literal(180), z.literal(270)]),
  /** In the order in which they were typed. */
  entries: z.array(entry).max(2000).readonly(),
});

export type TapeEntry = z.infer<typeof entry>;
/** What was taped and is not written down yet, as it is kept over a reload. */
export type TapeDraft = z.infer<typeof draft>;

export const EMPTY_TAPE_DRAFT: TapeDraft = {
  v: 1,
  basis: 'tape',
  connection: null,
  face: 'outside',
  turn: 0,
  entries: [],
};

const keyOf = (piece: string) => `onepour-tape ${piece}`;

/** What was taped at a piece and left on this device. What cannot be read is as if it were not there. */
export function readTapeDraft(storage: Pick<Storage, 'getItem'>, piece: string): TapeDraft {
  const kept = storage.getItem(keyOf(piece));
  if (kept === null) return EMPTY_TAPE_DRAFT;
  try {
    return draft.parse(JSON.parse(kept));
  } catch {
    return EMPTY_TAPE_DRAFT;
  }
}

/** Keeps it on this device after each number; nothing typed is forgotten. */
export function keepTapeDraft(storage: Pick<Storage, 'setItem' | 'removeItem'>, piece: string, kept: TapeDraft): void {
  if (kept.entries.length === 0) storage.removeItem(keyOf(piece));
  else storage.setItem(keyOf(piece), JSON.stringify(kept));
}
