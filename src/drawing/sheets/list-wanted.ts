import type { PanelSetOut } from '../../assess/set-out/set-out.ts';
import { planPiece } from '../../assess/yard/plan-piece.ts';
import type { JobIndex } from '../../job/job-index.ts';
import { namePiece } from '../../records/name-piece.ts';
import { wantedLength } from './check-sheet.ts';

/** Both lengths of both ends of each group: holds whatever a casting may be asked for of its groups. */
function listCorners({ groups, items }: PanelSetOut): readonly string[] {
  const ends = groups.flatMap(({ diagonal }) => (diagonal === null ? [] : [diagonal.from, diagonal.to]));
  return ends.flatMap((number) => {
    const key = items.find((item) => item.number === number)?.castIn.key;
    return key === undefined ? [] : [wantedLength(key, 'x'), wantedLength(key, 'y')];
  });
}

/**
 * Lengths of a casting that must be taped in digits, the same that a tablet asks for.
 * @param job id of the job in the office; null: it has none, then the corners of each group
 */
export function listWanted(
  index: JobIndex,
  job: string | null,
  setOut: PanelSetOut,
  serial: string,
): ReadonlySet<string> {
  if (job === null) return new Set(listCorners(setOut));
  const { mark, key } = setOut.panel;
  const plan = planPiece(index, { id: namePiece(job, key, serial), mark, bed: setOut.bed });
  return new Set(plan.stops.flatMap(({ asks }) => asks.map((ask) => wantedLength(ask.key, ask.axis))));
}
