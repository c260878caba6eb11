import type { JobFile } from '../../documents/job-file.ts';
import type { Piece, Pour } from '../../documents/pour.ts';
import { extentOnBed } from '../../extent-on-bed.ts';
import type { Recipe } from '../edit-job.ts';

/** Room left beside a piece that is put onto a bed, for the side form and a person's foot [mm]. */
const ROOM = 500;

/** The next name after the last of a list: `T14` → `T15`; `T1` where there is none. */
export function nextPourId({ job }: JobFile): string {
  const ids = new Set(job.pours.map(({ id }) => id));
  const [, start = 'T', digits = '0'] = /^(.*?)(\d*)$/.exec(job.pours.at(-1)?.id ?? 'T0') ?? [];
  for (let number = Number(digits) + 1; ; number += 1) {
    const id = `${start}${String(number).padStart(digits.length, '0')}`;
    if (!ids.has(id)) return id;
  }
}

/** Panels that no pour casts, by their marks, in the order of the job. */
export function listUnplanned({ job }: JobFile): readonly string[] {
  const planned = new Set(job.pours.flatMap(({ pieces }) => pieces.map(({ panel }) => panel)));
  return job.panels.flatMap(({ mark }) => (planned.has(mark) ? [] : [mark]));
}

/** The next serial of a panel: one more than the highest number that any pour gives it. */
function nextSerial(pours: JobFile['job']['pours'], mark: string): string {
  const numbers = pours.flatMap(({ pieces }) =>
    pieces.flatMap(({ panel, serial }) => (panel === mark && /^\d+$/.test(serial) ? [Number(serial)] : [])),
  );
  return String(Math.max(0, ...numbers) + 1);
}

/**
 * Where a panel goes on a bed beside all that lies there on that day: the first gap with room at both sides [mm from the bed's start].
 * Null: there is none, or one of the pieces there has no place yet.
 */
function findPlace({ job, library }: JobFile, pour: Pick<Pour, 'bed' | 'date'>, mark: string): number | null {
  const bed = library.yard.beds.find(({ id }) => id === pour.bed);
  const panels = new Map(job.panels.map((panel) => [panel.mark, panel]));
  const panel = panels.get(mark);
  if (bed === undefined || panel === undefined) return null;
  const { along: length } = extentOnBed(panel);
  const taken = job.pours
    .filter((other) => other.bed === pour.bed && other.date === pour.date)
    .flatMap(({ pieces }) => pieces)
    .map((piece) => {
      const own = panels.get(piece.panel);
      return own === undefined || piece.along_mm === null
        ? null
        : { from: piece.along_mm, to: piece.along_mm + extentOnBed(own).along };
    });
  if (taken.includes(null)) return null;
  let from = ROOM;
  for (const one of taken.filter((span) => span !== null).sort((a, b) => a.from - b.from)) {
    if (from + length + ROOM <= one.from) break;
    from = Math.max(from, one.to + ROOM);
  }
  return from + length <= bed.length_mm ? from : null;
}

/** Puts one more casting of each panel into a pour, each at the first place that is free; without a place where none is. */
export function addPieces(id: string, marks: readonly string[]): Recipe {
  return (draft) => {
    const pour = draft.job.pours.find((one) => one.id === id);
    for (const mark of marks) {
      pour?.pieces.push({
        panel: mark,
        serial: nextSerial(draft.job.pours, mark),
        revision: null,
        along_mm: findPlace(draft, pour, mark),
      });
    }
  };
}

/** A new pour with a casting of each of some panels. */
export function addPour(head: Pick<Pour, 'id' | 'bed' | 'date'>, marks: readonly string[]): Recipe {
  return (draft) => {
    draft.job.pours.push({ ...head, strengthAtStrip_MPa: null, remarks: [], pieces: [] });
    addPieces(head.id, marks)(draft);
  };
}

/** What a pour says of itself; its pieces have edits of their own. */
export type PourChange = Partial<Pick<Pour, 'id' | 'bed' | 'date' | 'strengthAtStrip_MPa' | 'remarks'>>;

export function changePour(id: string, change: PourChange): Recipe {
  return (draft) => {
    const pour = draft.job.pours.find((one) => one.id === id);
    if (pour !== undefined) Object.assign(pour, change);
  };
}

export function removePour(id: string): Recipe {
  return (draft) => {
    draft.job.pours = draft.job.pours.filter((one) => one.id !== id);
  };
}

/** @param index of the piece in its pour */
export function changePiece(id: string, index: number, change: Partial<Piece>): Recipe {
  return (draft) => {
    const piece = draft.job.pours.find((one) => one.id === id)?.pieces[index];
    if (piece !== undefined) Object.assign(piece, change);
  };
}

/** Takes a piece out of its pour; the last one takes the pour with it, which is cast from nothing otherwise. */
export function removePiece(id: string, index: number): Recipe {
  return (draft) => {
    const pour = draft.job.pours.find((one) => one.id === id);
    if (pour === undefined) return;
    if (pour.pieces.length > 1) pour.pieces.splice(index, 1);
    else removePour(id)(draft);
  };
}
