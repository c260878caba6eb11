import { current, type Draft, isDraft, original } from 'immer';
import { giveType } from '../details/give-type.ts';
import { findOffHole, placeOfHole } from '../details/hole-place.ts';
import { findValueChanges } from '../difference/value-changes.ts';
import type { CastIn } from '../documents/cast-in.ts';
import type { Connection } from '../documents/connection.ts';
import type { Detail } from '../documents/details.ts';
import type { JobFile } from '../documents/job-file.ts';
import type { Panel } from '../documents/panel.ts';
import { makeHandedPartner } from '../handed/make-handed-partner.ts';
import { indexJob, type JobIndex } from '../job-index.ts';
import type { Recipe } from './edit-job.ts';
import { findTouched } from './touched-panels.ts';

/** A detail before and after an edit. */
interface DetailChange {
  readonly before: Detail;
  readonly after: Detail;
}

function isSame(a: object, b: object): boolean {
  return findValueChanges(a, b, { within: 0, passedOver: [] }).length === 0;
}

function findDetailChanges(before: JobFile, after: JobFile): ReadonlyMap<string, DetailChange> {
  const [old, now] = [before.library.details.details, after.library.details.details];
  if (old === now) return new Map();
  const known = new Map(old.map((detail) => [detail.id, detail]));
  return new Map(
    now.flatMap((detail) => {
      const was = known.get(detail.id);
      return was === undefined || was === detail ? [] : [[detail.id, { before: was, after: detail }] as const];
    }),
  );
}

/** One insert of a connection after its detail changed: it goes with its hole and type, unless it had another place or type before. */
function followDetail(
  index: JobIndex,
  panel: Panel,
  connection: Connection,
  castIn: CastIn,
  holeId: string | null,
  { before, after }: DetailChange,
): CastIn {
  const { catalogue, holding } = index.file.library;
  const item = catalogue.items.find(({ id }) => id === after.item);
  const isTyped = before.item !== after.item && castIn.item === before.item && item !== undefined;
  const typed = isTyped ? giveType(castIn, item, holding.ways) : castIn;
  const was = before.fixture.holes.find(({ id }) => id === holeId);
  const hole = after.fixture.holes.find(({ id }) => id === holeId);
  if (was === undefined || hole === undefined || findOffHole(panel, connection, was, castIn) !== null) return typed;
  if (was.at_mm[0] === hole.at_mm[0] && was.at_mm[1] === hole.at_mm[1]) return typed;
  const [x_mm, y_mm] = placeOfHole(panel, connection, hole.at_mm);
  return { ...typed, x_mm, y_mm };
}

/** The job with the inserts of all connections of changed details where the details now want them. */
function followDetails(before: JobFile, after: JobFile): JobFile {
  const changes = findDetailChanges(before, after);
  if (changes.size === 0) return after;
  const index = indexJob(after);
  const moved = new Map<CastIn, CastIn>();
  for (const connection of after.job.connections) {
    const change = connection.detail === null ? undefined : changes.get(connection.detail);
    const panel = index.panels.get(connection.panel);
    if (change === undefined || panel === undefined) continue;
    for (const { insert, hole } of connection.inserts) {
      const castIn = index.castIn(panel.mark, insert);
      if (castIn === undefined) continue;
      const next = followDetail(index, panel, connection, castIn, hole, change);
      if (next !== castIn) moved.set(castIn, next);
    }
  }
  if (moved.size === 0) return after;
  const castIns = after.job.castIns.map((castIn) => moved.get(castIn) ?? castIn);
  return { ...after, job: { ...after.job, castIns } };
}

/** Entries made anew under the permanent keys of those that they replace; one that is the same stays the same object. */
function keepKeys<T extends { readonly key: string }>(
  made: readonly T[],
  old: readonly T[],
  nameOf: (entry: T) => string,
) {
  const known = new Map(old.map((entry) => [nameOf(entry), entry]));
  return made.map((entry) => {
    const was = known.get(nameOf(entry));
    if (was === undefined) return entry;
    const kept = { ...entry, key: was.key };
    return isSame(was, kept) ? was : kept;
  });
}

/** Why a partner could not be made anew: the edit that asks for it then cannot be made either. */
export class FollowError extends Error {
  override readonly name = 'FollowError';
}

/** The job with one partner made anew from its source. */
function remakePartner(file: JobFile, partner: Panel, source: string): JobFile {
  const { mark } = partner;
  const made = makeHandedPartner(file, source, mark);
  if (!made.ok) throw new FollowError(`${mark}, handed partner of ${source}: ${made.text}`);
  const isHere = ({ panel }: { readonly panel: string }) => panel === mark;
  const { job } = made.file;
  const put = <T extends { readonly key: string; readonly panel: string }>(
    now: readonly T[],
    old: readonly T[],
    nameOf: (entry: T) => string,
  ): readonly T[] => {
    const kept = keepKeys(now.filter(isHere), old.filter(isHere), nameOf)[Symbol.iterator]();
    return now.map((entry) => (isHere(entry) ? kept.next().value! : entry));
  };
  const panels = job.panels.map((panel) => {
    if (panel.mark !== mark) return panel;
    const kept = { ...panel, key: partner.key, inForm: partner.inForm };
    return isSame(partner, kept) ? partner : kept;
  });
  return {
    ...file,
    job: {
      ...job,
      panels,
      castIns: put(job.castIns, file.job.castIns, ({ id }) => id),
      connections: put(job.connections, file.job.connections, (connection) => connection.mark),
    },
  };
}

/**
 * The job after an edit with what must follow it: inserts of connections whose standard detail changed, and handed partners, made
 * anew from their sources under their own permanent keys, marks and ways of lying in the form.
 * @throws FollowError where a partner cannot be made anew
 */
export function follow(before: JobFile, after: JobFile): JobFile {
  const detailed = followDetails(before, after);
  const touched = findTouched(before, detailed);
  const isTouched = (mark: string) => touched.kind === 'whole' || touched.marks.has(mark);
  return detailed.job.panels.reduce((file, panel) => {
    const { handedOf } = panel;
    const source = file.job.panels.find(({ mark }) => mark === handedOf);
    const follows = source !== undefined && source.handedOf === null && source !== panel;
    return follows && isTouched(source.mark) ? remakePartner(file, panel, source.mark) : file;
  }, detailed);
}

/** Writes a list into a draft entry by entry: what did not change is not written, so that an edit stays small. */
function writeList<T extends object>(list: Draft<T>[], before: readonly T[], after: readonly T[]): void {
  for (let i = 0; i < after.length; i++) if (before[i] !== after[i]) list[i] = after[i] as Draft<T>;
  if (list.length > after.length) list.splice(after.length);
}

/** A recipe with what must follow it, as one edit. */
export function withFollowing(recipe: Recipe): Recipe {
  return (draft) => {
    if (!isDraft(draft)) throw new Error('what follows an edit is found on a draft only');
    const before = original(draft) as JobFile;
    recipe(draft);
    const edited = current(draft) as JobFile;
    const followed = follow(before, edited);
    if (followed === edited) return;
    const { castIns, connections, panels } = edited.job;
    writeList(draft.job.castIns, castIns, followed.job.castIns);
    writeList(draft.job.connections, connections, followed.job.connections);
    writeList(draft.job.panels, panels, followed.job.panels);
  };
}
