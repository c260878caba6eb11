import type { JobIndex } from '../../job/job-index.ts';
import { slotKey } from '../../records/fold/fold-piece.ts';
import type { PieceState } from '../../records/fold/piece-state.ts';
import { namePiece } from '../../records/name-piece.ts';

/** What a piece is marked as, and where it is cast. */
export interface PieceHead {
  readonly piece: string;
  readonly panelKey: string;
  readonly mark: string;
  readonly serial: string;
  readonly pour: string | null;
  readonly bed: string | null;
  /** The piece that it is made in place of. */
  readonly recastOf: string | null;
}

/**
 * The pieces that the pours of a job plan, by id.
 * @param job id of the job in the store
 */
export function listPlanned(job: string, { file, panels }: JobIndex): ReadonlyMap<string, PieceHead> {
  const planned = new Map<string, PieceHead>();
  for (const { id: pour, bed, pieces } of file.job.pours)
    for (const { panel, serial } of pieces) {
      const found = panels.get(panel);
      if (found === undefined) continue;
      const piece = namePiece(job, found.key, serial);
      planned.set(piece, { piece, panelKey: found.key, mark: panel, serial, pour, bed, recastOf: null });
    }
  return planned;
}

/**
 * What a piece is now: as it was last marked, else as it was begun, else as a pour plans it. Of several that did not know of each other the first by
 * id counts until somebody decides; the report flags the conflict.
 * @param planned what a pour plans for its id; null: none does
 * @returns null where neither a pour nor a record names it
 */
export function findHead(state: PieceState, planned: PieceHead | null): PieceHead | null {
  const [started] = state.slots.get(slotKey(null, 'started'))?.latest ?? [];
  const [marked] = state.slots.get(slotKey(null, 'mark'))?.latest ?? [];
  const begun: PieceHead | null =
    started?.kind === 'piece-started'
      ? {
          piece: state.piece,
          panelKey: started.body.panelKey,
          mark: started.body.mark,
          serial: started.body.serial,
          pour: started.body.pour ?? planned?.pour ?? null,
          bed: started.body.bed ?? planned?.bed ?? null,
          recastOf: started.body.recastOf,
        }
      : planned;
  if (marked?.kind !== 're-marked') return begun;
  const { panelKey, mark, serial } = marked.body;
  return {
    piece: state.piece,
    pour: null,
    bed: null,
    recastOf: null,
    ...begun,
    panelKey,
    mark,
    serial,
  };
}
