import type { Draft } from 'immer';
import type { Point } from '../../../engine/geometry/point.ts';
import type { JobFile } from '../../documents/job-file.ts';
import type { Panel } from '../../documents/panel.ts';
import type { Recipe } from '../edit-job.ts';

/**
 * Why this exists: sides are numbered from the first corner, so a corner put in or taken out gives others their numbers. Whatever is
 * on a side must go on naming it.
 */

/** @throws Error when the job has no such panel */
function findPanel({ job }: Draft<JobFile>, mark: string): Draft<Panel> {
  const panel = job.panels.find((one) => one.mark === mark);
  if (panel === undefined) throw new Error(`panel ${mark} is not in the job`);
  return panel;
}

/** Gives everything of a panel that names a side the side's new number; null: the side is gone, and what it is said of it with it. */
function renumber(draft: Draft<JobFile>, panel: Draft<Panel>, numberOf: (edge: number) => number | null): void {
  panel.edges = panel.edges.flatMap((one) => {
    const edge = numberOf(one.edge);
    return edge === null ? [] : [{ ...one, edge }];
  });
  const isHere = (entry: { readonly panel: string; readonly edge: number | null }) =>
    entry.panel === panel.mark && entry.edge !== null;
  for (const entry of [...draft.job.castIns, ...draft.job.connections])
    if (isHere(entry)) entry.edge = numberOf(entry.edge!) ?? entry.edge;
}

/** Puts a corner into a side: the first part keeps its number, and what is on the side stays on that part. */
export function addCorner(mark: string, edge: number, at: Point): Recipe {
  return (draft) => {
    const panel = findPanel(draft, mark);
    panel.outline_mm.splice(edge + 1, 0, [at[0], at[1]]);
    const batter = panel.edges.find((one) => one.edge === edge);
    renumber(draft, panel, (number) => (number > edge ? number + 1 : number));
    if (batter !== undefined) panel.edges.push({ ...batter, edge: edge + 1 });
  };
}

/** Things cast into, or bolted to, one of the two sides that meet in a corner: they keep it from being taken out. Null: nothing does. */
export function findOnSides({ job }: JobFile, mark: string, corner: number): string | null {
  const panel = job.panels.find((one) => one.mark === mark);
  if (panel === undefined) return null;
  const before = (corner + panel.outline_mm.length - 1) % panel.outline_mm.length;
  const castIn = job.castIns.find((one) => one.panel === mark && (one.edge === corner || one.edge === before));
  return castIn === undefined ? null : `insert ${castIn.id} is in edge ${castIn.edge}: move it to another side first`;
}

/**
 * Takes a corner out: the two sides that meet there become one, with the number of the one before it. The last three corners stay.
 * What is in one of these sides has no place any more (see `findOnSides`), and the reading of the job refuses it.
 */
export function removeCorner(mark: string, corner: number): Recipe {
  return (draft) => {
    const panel = findPanel(draft, mark);
    const corners = panel.outline_mm.length;
    if (corners <= 3 || corner >= corners) return;
    panel.outline_mm.splice(corner, 1);
    const joined = corner === 0 ? corners - 2 : corner - 1;
    renumber(draft, panel, (number) => {
      if (number === corner || number === (corner + corners - 1) % corners) return number === corner ? null : joined;
      return number > corner ? number - 1 : number;
    });
  };
}
