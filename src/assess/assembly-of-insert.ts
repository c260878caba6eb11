import type { JobIndex } from '../job/job-index.ts';
import type { Assembly } from './set-out/assembly-type.ts';
import { setOutPanel } from './set-out/set-out-panel.ts';

type SetOut = ReturnType<typeof setOutPanel>;

/** How an insert is built into its form, on the bed where its panel is poured first. */
export interface InsertAssembly {
  readonly assembly: Assembly;
  readonly faceDown: SetOut['faceDown'];
  readonly bed: SetOut['bed'];
}

/**
 * The assembly of one insert; null while its type or its way of holding is not decided.
 * @throws Error when the job has no such panel
 */
export function findInsertAssembly(index: JobIndex, panel: string, insert: string): InsertAssembly | null {
  const { job, library } = index.file;
  const pour = job.pours.find(({ pieces }) => pieces.some((piece) => piece.panel === panel));
  const bed = library.yard.beds.find(({ id }) => id === pour?.bed) ?? null;
  const setOut = setOutPanel(index, panel, bed);
  const letter = setOut.items.find(({ castIn }) => castIn.id === insert)?.assembly ?? null;
  const assembly = setOut.assemblies.find((one) => one.letter === letter);
  return assembly === undefined ? null : { assembly, faceDown: setOut.faceDown, bed };
}
