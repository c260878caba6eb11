import type { JobIndex } from '../../job/job-index.ts';
import type { SetOutItem } from '../set-out/set-out.ts';
import type { FactPhase } from './list-pieces.ts';
import type { PieceHead } from './piece-head.ts';
import type { PiecePlan } from './piece-plan.ts';
import { planPiece } from './plan-piece.ts';

/** An insert for which the yard must do something else than before. */
export interface ChangedInsert {
  /** On the sheets of the new revision; of one that is gone on those of the old. */
  readonly number: number;
  readonly is: 'changed' | 'added' | 'gone';
  /** What about it, short; empty where it is nothing that has a word here. */
  readonly what: readonly string[];
}

/** What a new revision means for one piece. */
export interface RevisionEffect {
  readonly head: PieceHead;
  readonly is: 'cast' | 'in the form' | 'not started' | 'scrapped';
  /** The new revision has no such panel. */
  readonly isGone: boolean;
  /** The form itself is to be another. */
  readonly isFormChanged: boolean;
  readonly inserts: readonly ChangedInsert[];
}

const CAST: Readonly<Record<FactPhase, RevisionEffect['is']>> = {
  'not started': 'not started',
  'in the form': 'in the form',
  poured: 'cast',
  stripped: 'cast',
  'opened up': 'cast',
  surveyed: 'cast',
  'bolted up': 'cast',
  scrapped: 'scrapped',
};

/** Lengths that differ by less [mm] are the same. */
const SAME = 0.05;

function planOf(index: JobIndex, { piece, panelKey, bed }: PieceHead): PiecePlan | null {
  const { job, library } = index.file;
  // A panel is told by its key: its mark may be another now.
  const panel = job.panels.find(({ key }) => key === panelKey);
  if (panel === undefined) return null;
  return planPiece(index, { id: piece, mark: panel.mark, bed: library.yard.beds.find(({ id }) => id === bed) ?? null });
}

function nameType({ castIn, item }: SetOutItem): string {
  return item?.id ?? castIn.description ?? castIn.role;
}

/** What is another about an insert, as the yard would say it. */
function tellChange(before: SetOutItem, after: SetOutItem): readonly string[] {
  const moved = (axis: 0 | 1) => {
    const by = after.taped[axis] - before.taped[axis];
    return Math.abs(by) < SAME
      ? []
      : [`${axis === 0 ? 'x' : 'y'} ${Math.round(after.taped[axis])} (was ${Math.round(before.taped[axis])})`];
  };
  const other = (name: string, was: string | null, is: string | null) =>
    was === is ? [] : [`${name} ${is ?? 'not decided'} (was ${was ?? 'not decided'})`];
  return [
    ...other('type', nameType(before), nameType(after)),
    ...other('finish', before.item?.finish ?? null, after.item?.finish ?? null),
    ...other('face', before.side ?? before.place, after.side ?? after.place),
    ...moved(0),
    ...moved(1),
    ...other('held by', before.way?.name ?? null, after.way?.name ?? null),
    ...(Math.abs(before.castIn.recess_mm - after.castIn.recess_mm) < SAME
      ? []
      : [`recess ${after.castIn.recess_mm} mm (was ${before.castIn.recess_mm})`]),
    ...(Math.abs(before.tolerance - after.tolerance) < SAME
      ? []
      : [`± ${after.tolerance} mm (was ± ${before.tolerance})`]),
  ];
}

function compareInserts(before: PiecePlan, after: PiecePlan): readonly ChangedInsert[] {
  const itemsOf = ({ setOut }: PiecePlan) => new Map(setOut.items.map((item) => [item.castIn.key, item]));
  const [was, is] = [itemsOf(before), itemsOf(after)];
  const now = [...is].flatMap(([key, item]): ChangedInsert[] => {
    const old = was.get(key);
    if (old === undefined) return [{ number: item.number, is: 'added', what: [nameType(item)] }];
    if (before.keys.get(key) === after.keys.get(key)) return [];
    return [{ number: item.number, is: 'changed', what: tellChange(old, item) }];
  });
  const gone = [...was].flatMap(([key, item]): ChangedInsert[] =>
    is.has(key) ? [] : [{ number: item.number, is: 'gone', what: [nameType(item)] }],
  );
  return [...now, ...gone];
}

/**
 * What a new revision asks anew of each piece: only inserts whose check key is another, and the form. Of a cast piece it is what it was not made by.
 * @param pieces as `listPieces` gives them
 */
export function describeRevisionEffect(
  before: JobIndex,
  after: JobIndex,
  pieces: readonly { readonly head: PieceHead; readonly phase: FactPhase }[],
): readonly RevisionEffect[] {
  return pieces.map(({ head, phase }): RevisionEffect => {
    const [was, is] = [planOf(before, head), planOf(after, head)];
    const base = { head, is: CAST[phase] };
    if (is === null) return { ...base, isGone: true, isFormChanged: false, inserts: [] };
    if (was === null)
      return {
        ...base,
        isGone: false,
        isFormChanged: true,
        inserts: is.setOut.items.map((item) => ({ number: item.number, is: 'added', what: [nameType(item)] })),
      };
    return { ...base, isGone: false, isFormChanged: was.formKey !== is.formKey, inserts: compareInserts(was, is) };
  });
}
