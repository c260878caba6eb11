import type { Piece, Pour, Revision } from '../../job/documents/pour.ts';
import type { Bed } from '../../job/documents/yard.ts';
import type { JobIndex } from '../../job/job-index.ts';
import type { PanelSetOut } from './set-out.ts';
import { setOutPanel } from './set-out-panel.ts';
import type { SetOutProblem } from './set-out-problem.ts';

/** What is cast on one bed on one day, with the set-out of each panel. */
export interface PourPlan {
  readonly pour: Pour;
  readonly bed: Bed;
  readonly revision: Revision | null;
  /** One for each panel, in the order of its first piece. */
  readonly setOuts: readonly PanelSetOut[];
  readonly pieces: readonly (Piece & { readonly revision: string })[];
  /** Of the pour itself; those of a panel are with its set-out. */
  readonly problems: readonly PourProblem[];
}

/** A finding about a pour. An error: it must not be poured so. */
export interface PourProblem {
  readonly severity: SetOutProblem['severity'];
  readonly text: string;
}

/** What is written in place of a letter where nothing was issued. */
const NOT_ISSUED = 'not issued';

/** Whether a revision may be poured: only one that is for construction. */
export function mayBePoured(revision: Revision | null): boolean {
  return revision?.status === 'for construction';
}

function checkRevisions(revision: Revision | null, pieces: PourPlan['pieces']): PourProblem[] {
  const problems: PourProblem[] = [];
  if (!mayBePoured(revision)) {
    const what = revision === null ? 'the job has no revision' : `revision ${revision.letter} is "${revision.status}"`;
    problems.push({ severity: 'error', text: `${what}: do not pour; only "for construction" may be poured` });
  }
  const now = revision?.letter ?? NOT_ISSUED;
  const old = new Map<string, string[]>();
  for (const { panel, serial, revision: letter } of pieces)
    if (letter !== now) old.set(letter, [...(old.get(letter) ?? []), `${panel} no. ${serial}`]);
  const isMixed = new Set(pieces.map(({ revision: letter }) => letter)).size > 1;
  for (const [letter, names] of old) {
    const text = `${isMixed ? 'this pour mixes revisions: ' : ''}${names.join(', ')} ${names.length === 1 ? 'was' : 'were'} planned by revision ${letter}, the sheets show revision ${now}: plan anew, or take out of the pour`;
    problems.push({ severity: 'warning', text });
  }
  return problems;
}

/** Panels whose inserts cannot be held with the face down that the job gives, though they could the other way up. */
function checkFaces(setOuts: readonly PanelSetOut[]): PourProblem[] {
  return setOuts.flatMap(({ panel, faceDown, problems }) => {
    const wrong = problems.filter(({ kind }) => kind === 'face');
    if (wrong.length === 0) return [];
    const list = wrong.map(({ insert }) => insert).join(', ');
    return [
      {
        severity: 'error' as const,
        text: `panel ${panel.mark} lies with its ${faceDown} face on the form, which does not suit how its inserts ${list} are held: turn it over, or hold them another way`,
      },
    ];
  });
}

/**
 * Plans one pour: the set-out of each of its panels on its bed, and what is wrong with the pour as a whole.
 * @throws Error when there is no pour of that id, with the ids that there are
 */
export function planPour(index: JobIndex, id: string): PourPlan {
  const { job, library } = index.file;
  const pour = job.pours.find((candidate) => candidate.id === id);
  if (pour === undefined) throw new Error(`no pour ${id}`);
  const bed = library.yard.beds.find((candidate) => candidate.id === pour.bed);
  if (bed === undefined) throw new Error(`pour ${id}: no bed ${pour.bed}`);
  const marks = [...new Set(pour.pieces.map(({ panel }) => panel))];
  const setOuts = marks.map((mark) => setOutPanel(index, mark, bed));
  const letter = job.revision?.letter ?? NOT_ISSUED;
  const pieces = pour.pieces.map((piece) => ({ ...piece, revision: piece.revision ?? letter }));
  return {
    pour,
    bed,
    revision: job.revision,
    setOuts,
    pieces,
    problems: [...checkRevisions(job.revision, pieces), ...checkFaces(setOuts)],
  };
}
