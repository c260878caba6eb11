import type { Point } from '../../engine/geometry/point.ts';
import type { JobFile } from '../../job/documents/job-file.ts';
import type { Piece, Pour } from '../../job/documents/pour.ts';
import type { Bed } from '../../job/documents/yard.ts';
import { viewPanel } from './panel-view.ts';

/** A piece on its bed, seen from above: x along the bed from its start, y across it from rail A [mm]. */
export interface BedPiece {
  readonly pour: string;
  /** Its number in the pour's list. */
  readonly index: number;
  readonly piece: Piece;
  /** Extent along and across the bed. */
  readonly length: number;
  readonly width: number;
  /** From its corner nearest to the bed's start and rail A. */
  readonly outline: readonly Point[];
  readonly openings: readonly (readonly Point[])[];
}

/** A bed on one day. */
export interface BedPlan {
  readonly bed: Bed;
  /** Of the pour itself, those without a place included. */
  readonly pieces: readonly BedPiece[];
  /** Of other pours on the same bed and day. */
  readonly others: readonly BedPiece[];
}

/**
 * What lies on a bed on the day of a pour. Where across the bed a panel lies is not planned: it is drawn along rail A.
 * @throws Error where the bed or a panel is not in the job (reading refuses such a job)
 */
export function planBed({ job, library }: JobFile, pour: Pour): BedPlan {
  const bed = library.yard.beds.find(({ id }) => id === pour.bed);
  if (bed === undefined) throw new Error(`pour ${pour.id}: no bed ${pour.bed}`);
  const panels = new Map(job.panels.map((panel) => [panel.mark, panel]));
  const lay = (of: Pour): readonly BedPiece[] =>
    of.pieces.map((piece, index) => {
      const panel = panels.get(piece.panel);
      if (panel === undefined) throw new Error(`pour ${of.id}: no panel ${piece.panel}`);
      const view = viewPanel(panel);
      return {
        pour: of.id,
        index,
        piece,
        length: view.length,
        width: view.width,
        outline: panel.outline_mm.map(view.toPlan),
        openings: panel.openings_mm.map((ring) => ring.map(view.toPlan)),
      };
    });
  const beside = job.pours.filter(({ id, bed: on, date }) => id !== pour.id && on === pour.bed && date === pour.date);
  return { bed, pieces: lay(pour), others: beside.flatMap(lay) };
}
