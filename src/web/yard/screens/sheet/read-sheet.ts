import type { PiecePlan } from '../../../../assess/yard/piece-plan.ts';
import type { KindAndBody } from '../../../../records/record.ts';
import type { Issued } from '../../../../wire/revisions.ts';
import type { WriteDraft } from '../../../records/record-device.ts';
import { cellName, formCellName } from './sheet-cells.ts';
import { type PartHead, SHEET_PARTS, type SheetDraft, type SheetPart } from './sheet-draft.ts';

/** What a typed sheet is read with. */
export interface SheetGround {
  readonly plan: PiecePlan;
  /** Lengths of the form check, in the order of the sheet. */
  readonly measures: readonly string[];
  readonly inForce: { readonly letter: string; readonly fingerprint: string };
  readonly revisions: readonly Pick<Issued, 'letter' | 'fingerprint'>[];
  /** Who types. */
  readonly person: string;
  /** ms since 1970. */
  readonly now: number;
}

export interface SheetFault {
  /** Name of the cell or field, to go to it. */
  readonly at: string;
  readonly words: string;
}

/** What a typed sheet comes to: faults, all at once, or records in their order. */
export interface SheetReading {
  readonly faults: readonly SheetFault[];
  readonly drafts: readonly WriteDraft[];
}

/** Names of the fields above a part, as faults point at them. */
export const headField = (part: SheetPart, field: keyof PartHead): string => `${part} ${field}`;
export const LETTER_FIELD = 'letter';

const PART_WORDS: Readonly<Record<SheetPart, string>> = {
  'stage 1': 'before the cage',
  'stage 2': 'before the pour',
  screed: 'after screeding',
};

/** A length as it was typed [mm]; null: not a number that a tape gives. */
function readLength(text: string): number | null {
  const value = /^-?\d+(\.\d*)?$/.test(text) ? Number(text) : Number.NaN;
  return Number.isFinite(value) && Math.abs(value) < 100_000 ? value : null;
}

/** By which revision the sheet was printed, and whether that is the one in force. Revisions nobody knows are null. */
export function findSheetRevision(
  draft: SheetDraft,
  { inForce, revisions }: Pick<SheetGround, 'inForce' | 'revisions'>,
): { readonly isInForce: boolean; readonly revision: { letter: string; fingerprint: string } | null } {
  const wanted = draft.letter.trim().toUpperCase();
  const isThis = ({ letter, fingerprint }: { readonly letter: string; readonly fingerprint: string }) =>
    draft.fingerprint === null ? letter.toUpperCase() === wanted : fingerprint.startsWith(draft.fingerprint);
  if (isThis(inForce)) return { isInForce: true, revision: null };
  const found = revisions.find(isThis);
  return {
    isInForce: false,
    revision: found === undefined ? null : { letter: found.letter, fingerprint: found.fingerprint },
  };
}

/** A day as it was typed, `2026-11-30`; one that is only begun is none. */
function readDay(text: string): string {
  const typed = text.trim();
  return typed.endsWith('-') ? '' : typed;
}

/** A time of 24 hours as it was typed, with a colon or without: `0940`, `9:40`. Null: it is none. */
export function readTime(text: string): string | null {
  const read = /^(\d{1,2})[:.]?(\d{2})$/.exec(text.trim());
  if (read === null || Number(read[1]) > 23 || Number(read[2]) > 59) return null;
  return `${read[1]!.padStart(2, '0')}:${read[2]}`;
}

/** The moment by the clock of the yard [ms since 1970]; null: there is no such day or time. */
function readMoment(day: string, time: string): number | null {
  const at = /^\d{4}-\d{2}-\d{2}$/.test(day) ? Date.parse(`${day}T${readTime(time) ?? ''}`) : Number.NaN;
  return Number.isNaN(at) ? null : at;
}

/** Moment and person of each part that something is typed in; an empty field takes over from the part before. */
function readHeads(draft: SheetDraft, used: ReadonlySet<SheetPart>, now: number) {
  const faults: SheetFault[] = [];
  const heads = new Map<SheetPart, { readonly at: string; readonly by: string }>();
  let before: PartHead = { day: '', time: '', by: '' };
  for (const part of SHEET_PARTS) {
    const own = draft.parts[part];
    const head = { day: readDay(own.day) || before.day, time: own.time || before.time, by: own.by || before.by };
    before = head;
    if (!used.has(part)) continue;
    const fault = (field: keyof PartHead, words: string) => faults.push({ at: headField(part, field), words });
    if (head.day === '') fault('day', `${PART_WORDS[part]}: which day was it measured?`);
    if (head.time === '') fault('time', `${PART_WORDS[part]}: at what time was it measured? As signed on the sheet`);
    if (head.by === '') fault('by', `${PART_WORDS[part]}: who measured?`);
    if (head.day === '' || head.time === '') continue;
    const at = readMoment(head.day, head.time);
    if (at === null)
      fault('time', `${PART_WORDS[part]}: there is no ${head.day} ${head.time}; a day is 2026-11-30, a time 0940`);
    else if (at > now) fault('time', `${PART_WORDS[part]}: that moment is still to come`);
    else heads.set(part, { at: new Date(at).toISOString(), by: head.by });
  }
  return { faults, heads };
}

/** Reads a sheet that was typed in. With a fault no record is made. */
export function readSheet(draft: SheetDraft, ground: SheetGround): SheetReading {
  const { plan, measures, person, now } = ground;
  const faults: SheetFault[] = [];
  if (draft.letter.trim() === '')
    faults.push({ at: LETTER_FIELD, words: 'which revision letter is printed on the sheet?' });
  const { isInForce, revision } = findSheetRevision(draft, ground);
  const used = new Set<SheetPart>();
  const waiting: { readonly part: SheetPart; readonly draft: KindAndBody & { readonly item: string | null } }[] = [];
  const cell = (name: string) => draft.cells[name] ?? '';
  const length = (name: string, says: string): number | null => {
    const text = cell(name);
    if (text === '') return null;
    const value = readLength(text);
    if (value === null) faults.push({ at: name, words: `${says}: "${text}" is no length in mm` });
    return value;
  };

  const taken = measures.flatMap((what) => {
    const measured_mm = length(formCellName(what), `form, ${what}`);
    return measured_mm === null ? [] : [{ what, measured_mm }];
  });
  if (taken.length > 0) {
    used.add('stage 1');
    waiting.push({ part: 'stage 1', draft: { kind: 'form-checked', item: null, body: { measures: taken } } });
  }

  /** Three answers by sight: all of them or none. */
  const sights = (part: SheetPart, key: string, number: number, columns: readonly [string, string, string]) => {
    const answers = columns.map((column) => cell(cellName(part, key, column)));
    if (answers.every((answer) => answer === '')) return null;
    const missing = columns.find((_, i) => answers[i] === '');
    if (missing !== undefined)
      faults.push({
        at: cellName(part, key, missing),
        words: `insert ${number}: "${missing}" is left out; y or n as on the sheet`,
      });
    return answers.map((answer) => answer === 'y') as [boolean, boolean, boolean]; // three columns, three answers
  };

  for (const item of plan.setOut.items) {
    const part: SheetPart = `stage ${item.stage}`;
    const { key } = item.castIn;
    const sight = sights(part, key, item.number, ['type', 'face', 'firm']);
    const x_mm = length(cellName(part, key, 'x'), `insert ${item.number}, x`);
    const y_mm = length(cellName(part, key, 'y'), `insert ${item.number}, y`);
    const level_mm = length(cellName(part, key, 'level'), `insert ${item.number}, level`);
    const { stage } = item;
    if (sight !== null) {
      used.add(part);
      const [type, face, firm] = sight;
      waiting.push({ part, draft: { kind: 'placed', item: key, body: { stage, type, face, firm, note: null } } });
    }
    if (x_mm !== null || y_mm !== null || level_mm !== null) {
      used.add(part);
      waiting.push({
        part,
        draft: { kind: 'measured', item: key, body: { stage, x_mm, y_mm, level_mm, basis: 'sheet' } },
      });
    }
  }
  for (const { castIn, number } of plan.afterScreed) {
    const sight = sights('screed', castIn.key, number, ['level ok', 'plumb', 'cap']);
    if (sight === null) continue;
    used.add('screed');
    const [level, plumb, cap] = sight;
    const body = { level, plumb, cap, level_mm: null, note: null };
    waiting.push({ part: 'screed', draft: { kind: 'screed-checked', item: castIn.key, body } });
  }
  if (waiting.length === 0) faults.push({ at: LETTER_FIELD, words: 'nothing is typed in yet' });

  const { faults: headFaults, heads } = readHeads(draft, used, now);
  faults.push(...headFaults);
  if (faults.length > 0) return { faults, drafts: [] };

  const first = [...heads.values()][0]!; // something waits, so a part is used, and it has no fault
  const envelope = (key: string | null, { at, by }: { readonly at: string; readonly by: string }) => ({
    piece: plan.piece,
    item: key,
    checkKey: isInForce ? (key === null ? plan.formKey : (plan.keys.get(key) ?? null)) : null,
    measuredAt: at,
    measuredBy: by === person ? null : by,
    ...(isInForce ? {} : { revision }),
  });
  const photo = draft.photo;
  return {
    faults: [],
    drafts: [
      ...(photo === null
        ? []
        : [
            {
              ...envelope(null, first),
              checkKey: null,
              measuredAt: null,
              measuredBy: null,
              kind: 'photo' as const,
              body: {
                photo: photo.hash,
                type: 'image/jpeg' as const,
                bytes: photo.bytes,
                width: photo.width,
                height: photo.height,
                of: 'sheet' as const,
                note: null,
              },
            },
          ]),
      ...waiting.map((one) => ({ ...envelope(one.draft.item, heads.get(one.part)!), ...one.draft })),
    ],
  };
}
