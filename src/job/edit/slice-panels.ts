import type { JobFile } from '../documents/job-file.ts';

/** A part of a job file, and where its entries stand in the whole. */
export interface JobSlice {
  readonly file: JobFile;
  readonly places: {
    readonly panels: readonly number[];
    readonly castIns: readonly number[];
    readonly connections: readonly number[];
    /** The pours that are left, each with the pieces that are left of it. */
    readonly pours: readonly { readonly pour: number; readonly pieces: readonly number[] }[];
  };
}

/** Entries that are wanted, and where they stand. */
function pick<T>(
  list: readonly T[],
  isWanted: (entry: T) => boolean,
): { readonly at: number[]; readonly entries: T[] } {
  const at: number[] = [];
  const entries: T[] = [];
  for (let i = 0; i < list.length; i++) {
    if (!isWanted(list[i]!)) continue;
    at.push(i);
    entries.push(list[i]!);
  }
  return { at, entries };
}

/** Panels with those that they are the handed partners of, and those that are their partners. */
export function withPartners({ job }: JobFile, marks: Iterable<string>): ReadonlySet<string> {
  const asked = new Set(marks);
  const all = new Set(asked);
  for (const { mark, handedOf } of job.panels) {
    if (handedOf === null) continue;
    if (asked.has(mark)) all.add(handedOf);
    if (asked.has(handedOf)) all.add(mark);
  }
  return all;
}

/** The slice of exactly these panels. */
export function slicePlaced(file: JobFile, marks: ReadonlySet<string>): JobSlice {
  const { job } = file;
  const isHere = ({ panel }: { readonly panel: string }) => marks.has(panel);
  const panels = pick(job.panels, ({ mark }) => marks.has(mark));
  const castIns = pick(job.castIns, isHere);
  const connections = pick(job.connections, isHere);
  const pours = job.pours.flatMap((pour, at) => {
    const pieces = pick(pour.pieces, isHere);
    return pieces.at.length === 0 ? [] : [{ pour: { ...pour, pieces: pieces.entries }, at, pieces: pieces.at }];
  });
  return {
    file: {
      ...file,
      job: {
        ...job,
        panels: panels.entries,
        castIns: castIns.entries,
        connections: connections.entries,
        pours: pours.map(({ pour }) => pour),
      },
    },
    places: {
      panels: panels.at,
      castIns: castIns.at,
      connections: connections.at,
      pours: pours.map(({ at, pieces }) => ({ pour: at, pieces })),
    },
  };
}

/**
 * A job file of some panels alone, with their handed partners and sources: cast-in items, connections and pieces of these, the whole
 * library. Small enough to index and compute at each frame of a drag.
 * @param marks panels of the job; none of them known gives a file without panels
 */
export function slicePanels(file: JobFile, marks: Iterable<string>): JobFile {
  return slicePlaced(file, withPartners(file, marks)).file;
}
