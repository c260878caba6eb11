import { castDraft, current, type Draft } from 'immer';
import type { JobFile } from '../../documents/job-file.ts';
import type { Panel } from '../../documents/panel.ts';
import { makeHandedPartner } from '../../handed/make-handed-partner.ts';
import type { Recipe } from '../edit-job.ts';
import { takeState } from '../take-state.ts';

/** What a rectangular panel is made from. */
export interface RectangleSize {
  readonly key: string;
  readonly mark: string;
  readonly concrete: string;
  readonly length_mm: number;
  readonly height_mm: number;
  readonly thickness_mm: number;
  readonly drawnFace: Panel['drawnFace'];
  readonly faceDown: Panel['faceDown'];
}

/** A panel of four corners and one layer, without openings. */
export function makeRectangle({ length_mm, height_mm, ...given }: RectangleSize): Panel {
  return {
    ...given,
    inForm: { turn_deg: 0, datum: 'bottom-left' },
    handedOf: null,
    outline_mm: [
      [0, 0],
      [length_mm, 0],
      [length_mm, height_mm],
      [0, height_mm],
    ],
    openings_mm: [],
    layers: [],
    zones: [],
    edges: [],
    reinforcement: null,
  };
}

/** A name that is free, counted up from another: `P07` → `P08`, `Gable` → `Gable-2`. */
export function nextName(name: string, taken: ReadonlySet<string>): string {
  const [, start = '', digits = ''] = /^(.*?)(\d*)$/.exec(name) ?? [];
  const width = digits.length;
  for (let number = width === 0 ? 2 : Number(digits) + 1; ; number += 1) {
    const next = width === 0 ? `${name}-${number}` : `${start}${String(number).padStart(width, '0')}`;
    if (!taken.has(next)) return next;
  }
}

/** Puts a panel behind the others. */
export function addPanel(panel: Panel): Recipe {
  return ({ job }) => {
    job.panels.push(panel as Draft<Panel>);
  };
}

/**
 * Copies a panel with all that is cast into it and its connections, under a new mark; connections get names that are free. A copy of a handed
 * partner is a panel of its own.
 * @param makeKey gives a new permanent key at each call
 */
export function copyPanel(mark: string, newMark: string, makeKey: () => string): Recipe {
  return ({ job }) => {
    const { panels, castIns, connections } = current(job);
    const at = panels.findIndex((panel) => panel.mark === mark);
    const panel = panels[at];
    if (panel === undefined) return;
    const names = new Set(connections.map((connection) => connection.mark));
    job.panels.splice(at + 1, 0, castDraft({ ...panel, key: makeKey(), mark: newMark, handedOf: null }));
    for (const castIn of castIns)
      if (castIn.panel === mark) job.castIns.push({ ...castIn, key: makeKey(), panel: newMark });
    for (const connection of connections) {
      if (connection.panel !== mark) continue;
      const name = nextName(connection.mark, names);
      names.add(name);
      job.connections.push(castDraft({ ...connection, key: makeKey(), mark: name, panel: newMark }));
    }
  };
}

/** Why a panel cannot be taken out; null: it can. */
export function findHold({ job }: JobFile, mark: string): string | null {
  const partner = job.panels.find((panel) => panel.handedOf === mark);
  if (partner !== undefined) return `${partner.mark} is its handed partner: remove that one first`;
  if (job.panels.length === 1) return 'it is the only panel: a job holds one at least';
  return null;
}

/** Takes a panel out with all that is in it, and out of the pours; a pour of nothing else goes too. */
export function removePanel(mark: string): Recipe {
  return ({ job }) => {
    job.panels = job.panels.filter((panel) => panel.mark !== mark);
    job.castIns = job.castIns.filter((castIn) => castIn.panel !== mark);
    job.connections = job.connections.filter((connection) => connection.panel !== mark);
    for (const pour of job.pours) {
      if (pour.pieces.some((piece) => piece.panel === mark))
        pour.pieces = pour.pieces.filter((piece) => piece.panel !== mark);
    }
    job.pours = job.pours.filter((pour) => pour.pieces.length > 0);
  };
}

/** The handed partner of a panel as an edit, with what a person must look at; or why there can be none. */
export function addPartner(
  file: JobFile,
  mark: string,
  newMark: string,
):
  | { readonly ok: true; readonly recipe: Recipe; readonly notes: readonly string[] }
  | { readonly ok: false; readonly text: string } {
  const made = makeHandedPartner(file, mark, newMark);
  if (!made.ok) return made;
  return { ok: true, notes: made.notes, recipe: (draft) => takeState(draft, made.file) };
}
