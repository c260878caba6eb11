import type { JobFile } from '../documents/job-file.ts';
import type { Patch } from './edit.ts';

/** The long lists of a job file, each with what tells its entries apart. */
const LISTS = [
  { path: ['job', 'panels'], name: 'key', of: ({ job }: JobFile): readonly object[] => job.panels },
  { path: ['job', 'castIns'], name: 'key', of: ({ job }: JobFile): readonly object[] => job.castIns },
  { path: ['job', 'connections'], name: 'key', of: ({ job }: JobFile): readonly object[] => job.connections },
  { path: ['job', 'pours'], name: 'id', of: ({ job }: JobFile): readonly object[] => job.pours },
  {
    path: ['library', 'catalogue', 'items'],
    name: 'id',
    of: ({ library }: JobFile): readonly object[] => library.catalogue.items,
  },
  {
    path: ['library', 'details', 'details'],
    name: 'id',
    of: ({ library }: JobFile): readonly object[] => library.details.details,
  },
] as const;

/** A change with its way back. */
interface Step {
  readonly change: Patch;
  readonly back: Patch;
}

type Value = NonNullable<Patch['value']>;
type Values = Readonly<Record<string, Value | null | undefined>>;

/** One entry in place of another of the same name: the values that differ. Null where one has a value that the other lacks. */
function diffEntry(before: object, after: object, path: readonly (string | number)[]): Step[] | null {
  const [old, now] = [before as Values, after as Values];
  const keys = Object.keys(old);
  if (keys.length !== Object.keys(now).length || keys.some((key) => !Object.hasOwn(now, key))) return null;
  return keys
    .filter((key) => old[key] !== now[key])
    .map((key) => {
      const at = [...path, key];
      const put = (value: Value | null | undefined): Patch => ({ op: 'replace', path: at, value: value ?? null });
      return { change: put(now[key]), back: put(old[key]) };
    });
}

/**
 * The steps from one list to another, entries that are the same object taken as unchanged. Null where entries changed places: then the
 * list is better written anew.
 */
function diffList(
  before: readonly object[],
  after: readonly object[],
  name: string,
  path: readonly string[],
): readonly Step[] | null {
  const [old, now] = [new Set(before), new Set(after)];
  const steps: Step[] = [];
  let [i, j] = [0, 0];
  while (i < before.length || j < after.length) {
    const [was, is] = [before[i], after[j]];
    const at = [...path, j];
    const isGone = was !== undefined && !now.has(was);
    const isNew = is !== undefined && !old.has(is);
    if (was !== undefined && was === is) {
      i += 1;
      j += 1;
    } else if (isGone && isNew && (was as Values)[name] === (is as Values)[name]) {
      const changed = diffEntry(was, is, at);
      if (changed === null) return null;
      steps.push(...changed);
      i += 1;
      j += 1;
    } else if (isGone) {
      steps.push({ change: { op: 'remove', path: at }, back: { op: 'add', path: at, value: was as Value } });
      i += 1;
    } else if (isNew) {
      steps.push({ change: { op: 'add', path: at, value: is as Value }, back: { op: 'remove', path: at } });
      j += 1;
    } else return null;
  }
  return steps;
}

/** Whether a patch is about a list as a whole or about which entries it has, not about what is in one of them. */
function isAboutEntries({ op, path }: Patch, list: readonly string[]): boolean {
  if (!list.every((step, i) => path[i] === step)) return false;
  return path.length === list.length || (path.length === list.length + 1 && op !== 'replace');
}

const isOf = ({ path }: Patch, list: readonly string[]) => list.every((step, i) => path[i] === step);

/**
 * The patches of an edit with those of lists written as entries put in and taken out. A list that was filtered would otherwise be written as a
 * whole, and one with an entry taken out of its middle entry by entry.
 */
export function shortenPatches(
  before: JobFile,
  after: JobFile,
  changes: readonly Patch[],
  back: readonly Patch[],
): { readonly changes: readonly Patch[]; readonly back: readonly Patch[] } {
  let [short, shortBack] = [changes, back];
  for (const { path, name, of } of LISTS) {
    if (!changes.some((patch) => isAboutEntries(patch, path))) continue;
    const steps = diffList(of(before), of(after), name, path);
    if (steps === null) continue;
    short = [...short.filter((patch) => !isOf(patch, path)), ...steps.map((step) => step.change)];
    shortBack = [...shortBack.filter((patch) => !isOf(patch, path)), ...steps.map((step) => step.back).reverse()];
  }
  return { changes: short, back: shortBack };
}
