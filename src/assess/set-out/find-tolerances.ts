import type { CastIn } from '../../job/documents/cast-in.ts';
import type { Rules } from '../../job/documents/rules.ts';
import type { JobIndex } from '../../job/job-index.ts';
import { type BoxStanding, findBoxStanding } from '../../job/position-box.ts';
import type { SetOutProblem } from './set-out-problem.ts';

/** How far an insert may be off along each axis [mm], and who agreed to it where that is the box of its position zone; else null. */
export interface InsertTolerance {
  readonly within: number;
  readonly agreement: Rules['positionZones'];
}

/** Why a box that was taken over does not count. */
const NO_BOX: Readonly<Record<Exclude<BoxStanding['kind'], 'none' | 'stands'>, string>> = {
  'not agreed':
    'the rules name nobody who agreed that the box of a position zone may stand in place of the tolerance: the tolerance of the rules holds',
  outdated:
    'the box of its position zone was computed before something of the job was changed: the tolerance of the rules holds until the box is taken over anew',
};

/** Tolerances of a panel's cast-in items: its own, the box of its connection's position zone where that stands, else as the rules say. */
export function findTolerances(
  index: JobIndex,
  mark: string,
): { readonly of: (castIn: CastIn) => InsertTolerance; readonly problems: readonly SetOutProblem[] } {
  const { position_mm } = index.file.library.rules.tolerances;
  const boxes = new Map<string, InsertTolerance>();
  const problems: SetOutProblem[] = [];
  for (const connection of index.connectionsOf(mark)) {
    const standing = findBoxStanding(index, connection);
    if (standing.kind === 'stands') {
      const box = { within: standing.within_mm, agreement: standing.agreement };
      for (const { insert } of connection.inserts) boxes.set(insert, box);
    } else if (standing.kind !== 'none') {
      const text = `connection ${connection.mark}: ${NO_BOX[standing.kind]}`;
      problems.push({ severity: 'warning', kind: 'not decided', panel: mark, insert: null, text });
    }
  }
  return {
    of: ({ id, tolerance_mm }) =>
      tolerance_mm === null
        ? (boxes.get(id) ?? { within: position_mm, agreement: null })
        : { within: tolerance_mm, agreement: null },
    problems,
  };
}
