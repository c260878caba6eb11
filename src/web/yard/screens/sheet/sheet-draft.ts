import * as z from 'zod';

/** Parts of a paper sheet, each done at a time of its own by a person of its own. */
export type SheetPart = 'stage 1' | 'stage 2' | 'screed';
export const SHEET_PARTS: readonly SheetPart[] = ['stage 1', 'stage 2', 'screed'];

const headOfPart = z.strictObject({
  /** As typed; empty: as the part before. */
  day: z.string(),
  time: z.string(),
  /** Who measured; empty: as the part before. */
  by: z.string(),
});

const draft = z.strictObject({
  v: z.literal(1),
  /** The letter printed on the sheet, as typed. */
  letter: z.string(),
  /** First digits of the fingerprint, where the sheet's code was read from its photo. */
  fingerprint: z.string().nullable(),
  photo: z.strictObject({ hash: z.string(), bytes: z.number(), width: z.number(), height: z.number() }).nullable(),
  parts: z.strictObject({ 'stage 1': headOfPart, 'stage 2': headOfPart, screed: headOfPart }),
  /** What was typed, by the name of the cell. Empty cells are not there. */
  cells: z.record(z.string(), z.string()),
});

/** A sheet that is being typed in: texts as they stand in the fields, so that nothing is lost between two keys. */
export type SheetDraft = z.infer<typeof draft>;
export type PartHead = z.infer<typeof headOfPart>;

const EMPTY_HEAD: PartHead = { day: '', time: '', by: '' };

export const EMPTY_DRAFT: SheetDraft = {
  v: 1,
  letter: '',
  fingerprint: null,
  photo: null,
  parts: { 'stage 1': EMPTY_HEAD, 'stage 2': EMPTY_HEAD, screed: EMPTY_HEAD },
  cells: {},
};

/** Somebody typed something that would be missed. */
export function isTouched({ cells, photo }: SheetDraft): boolean {
  return photo !== null || Object.keys(cells).length > 0;
}

/** Puts a text into a cell; an empty one takes the cell away. */
export function putCell(before: SheetDraft, name: string, text: string): SheetDraft {
  const cells = { ...before.cells };
  if (text === '') delete cells[name];
  else cells[name] = text;
  return { ...before, cells };
}

const keyOf = (piece: string) => `onepour-sheet ${piece}`;

/** The sheet of a piece as it was left on this device. What cannot be read is as if it were not there. */
export function readDraft(storage: Pick<Storage, 'getItem'>, piece: string): SheetDraft {
  const kept = storage.getItem(keyOf(piece));
  if (kept === null) return EMPTY_DRAFT;
  try {
    return draft.parse(JSON.parse(kept));
  } catch {
    return EMPTY_DRAFT;
  }
}

/** Keeps a sheet on this device after each key; an empty one is forgotten. */
export function keepDraft(storage: Pick<Storage, 'setItem' | 'removeItem'>, piece: string, kept: SheetDraft): void {
  if (kept === EMPTY_DRAFT) storage.removeItem(keyOf(piece));
  else storage.setItem(keyOf(piece), JSON.stringify(kept));
}
