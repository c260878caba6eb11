import { checkNames } from '../check/check-names.ts';
import type { JobFile } from '../documents/job-file.ts';
import type { DocumentFault } from '../fault.ts';
import { readJobDocument } from '../read-job-document.ts';
import { type Path, placeJob } from '../sift.ts';
import { type JobSlice, slicePlaced, withPartners } from './slice-panels.ts';
import { findTouched } from './touched-panels.ts';

/** A path in a slice as it is in the whole file. */
function placeInWhole({ places }: JobSlice, path: Path): Path {
  const [root, list, at, key, piece, ...rest] = path;
  if (root !== 'job' || typeof at !== 'number') return path;
  if (list === 'panels' || list === 'castIns' || list === 'connections')
    return [root, list, places[list][at]!, ...path.slice(3)];
  if (list !== 'pours') return path;
  const { pour, pieces } = places.pours[at]!;
  const place = key === 'pieces' && typeof piece === 'number' ? pieces[piece]! : piece;
  return [root, list, pour, ...(key === undefined ? [] : [key]), ...(place === undefined ? [] : [place]), ...rest];
}

/** The panels that share a bed and a day with some of a job: a panel that grows may come to lie on one of them. */
function findBedMates({ job }: JobFile, marks: ReadonlySet<string>): ReadonlySet<string> {
  const days = new Set(
    job.pours
      .filter(({ pieces }) => pieces.some(({ panel }) => marks.has(panel)))
      .map(({ bed, date }) => JSON.stringify([bed, date])),
  );
  const together = job.pours.filter(({ bed, date }) => days.has(JSON.stringify([bed, date])));
  return new Set(together.flatMap(({ pieces }) => pieces.map(({ panel }) => panel)));
}

/** The panels asked for in full, with the bare outlines of those beside them on the bed. */
function sliceForCheck(file: JobFile, marks: ReadonlySet<string>): JobSlice {
  const full = withPartners(file, marks);
  const beside = findBedMates(file, marks);
  const slice = slicePlaced(file, new Set([...full, ...beside]));
  const { job } = slice.file;
  const isFull = ({ panel }: { readonly panel: string }) => full.has(panel);
  const keep = (places: readonly number[], list: readonly { readonly panel: string }[]) =>
    places.filter((_, i) => isFull(list[i]!));
  return {
    file: {
      ...slice.file,
      job: {
        ...job,
        panels: job.panels.map((panel) => (full.has(panel.mark) ? panel : { ...panel, handedOf: null })),
        castIns: job.castIns.filter(isFull),
        connections: job.connections.filter(isFull),
      },
    },
    places: {
      ...slice.places,
      castIns: keep(slice.places.castIns, job.castIns),
      connections: keep(slice.places.connections, job.connections),
    },
  };
}

/** Whether an entry of the slice has a name for ever, or a mark, that another of the whole job has too. */
function sharesName(whole: JobFile, { file: { job } }: JobSlice): boolean {
  const keys = new Set([...job.panels, ...job.castIns, ...job.connections].map(({ key }) => key));
  const marks = new Set(job.connections.map(({ mark }) => mark));
  const count = (list: readonly { readonly key: string }[]) =>
    list.reduce((sum, { key }) => (keys.has(key) ? sum + 1 : sum), 0);
  const { panels, castIns, connections } = whole.job;
  const named = job.panels.length + job.castIns.length + job.connections.length;
  return (
    count(panels) + count(castIns) + count(connections) > named ||
    connections.reduce((sum, { mark }) => (marks.has(mark) ? sum + 1 : sum), 0) > job.connections.length
  );
}

/** One text for a fault, so that none is told twice. */
const keyOf = ({ path, text }: DocumentFault) => `${path.join('/')} ${text}`;

function readFaults(file: JobFile): readonly DocumentFault[] {
  const reading = readJobDocument(file);
  return reading.ok ? [] : reading.faults;
}

/**
 * What an edit made wrong, by the reading of the job: only the panels that it touched are looked at, unless something that all rest on
 * was changed. The same as a whole reading says, as long as the job before the edit could be read.
 * @returns faults with their paths in the whole file; empty where the job can be read
 */
export function checkEdit(before: JobFile, after: JobFile): readonly DocumentFault[] {
  const touched = findTouched(before, after);
  if (touched.kind === 'whole') return readFaults(after);
  if (touched.marks.size === 0) return [];
  return checkPanelsAlone(after, touched.marks);
}

/**
 * Faults of some panels of a job, of what is cast into them and of their pieces, by the reading of the job.
 * @returns faults with their paths in the whole file
 */
export function checkPanelsAlone(file: JobFile, marks: ReadonlySet<string>): readonly DocumentFault[] {
  const known = new Set(file.job.panels.map(({ mark }) => mark));
  const isLinked = ({ mark, handedOf }: { readonly mark: string; readonly handedOf: string | null }) =>
    !marks.has(mark) || handedOf === null || known.has(handedOf);
  if (!file.job.panels.every(isLinked)) return readFaults(file);
  const slice = sliceForCheck(file, marks);
  const faults = readFaults(slice.file).map((fault) => ({ ...fault, path: placeInWhole(slice, fault.path) }));
  if (!sharesName(file, slice)) return faults;
  const told = new Set(faults.map(keyOf));
  return [...faults, ...checkNames(placeJob(file)).filter((fault) => !told.has(keyOf(fault)))];
}
