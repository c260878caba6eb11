import type { CastIn } from '../documents/cast-in.ts';
import type {
  AspectChange,
  CastInDifference,
  ConnectionDifference,
  GeneralDifference,
  JobDifference,
  LibraryDifference,
  Move,
  PanelDifference,
} from './job-difference.ts';
import { sayChange, sayPath, sayValue, sayValues } from './say-change.ts';
import type { ValueChange } from './value-changes.ts';

/** The longest list of values in one sentence; more are counted. */
const MOST_VALUES = 3;

/** Tenths of a millimetre at most. */
const round = (value: number) => Math.round(value * 10) / 10;

const showPoint = ([x, y]: readonly [number, number]) => `(${round(x)}, ${round(y)})`;

/** The first few values, and how many more. */
function showChanges(changes: readonly ValueChange[], isNamed = false): string {
  const shown = changes
    .slice(0, MOST_VALUES)
    .map((change) => sayChange(change, isNamed))
    .join('; ');
  return changes.length > MOST_VALUES ? `${shown}; ${changes.length - MOST_VALUES} more` : shown;
}

/** A side of a thing: its one value, or which values in it. */
function describeAspect({ what, changes }: AspectChange<string>): string {
  const [first] = changes;
  // Of packers that are filled with mortar now, the packers themselves did not change.
  const isItself = changes.length === 1 && first !== undefined && ['', what].includes(sayPath(first.path));
  return isItself ? `${what} ${sayValues(first)}` : `${what}: ${showChanges(changes)}`;
}

function nameCastIn({ item, id }: CastIn): string {
  return item === null ? `item ${id}` : `insert ${id}`;
}

function nameFace({ face, edge }: Pick<CastIn, 'face' | 'edge'>): string {
  return face === 'edge' ? `edge ${edge}` : `${face} face`;
}

function describeMove({ from, to, distance }: Move): string {
  return `moved ${round(distance)} mm, from ${showPoint(from)} to ${showPoint(to)}`;
}

function describeCastIn(difference: CastInDifference): string {
  if (difference.kind !== 'changed') {
    const { kind, castIn } = difference;
    const what = sayValue(castIn.item ?? castIn.description);
    return `${nameCastIn(castIn)} ${kind}: ${what}, ${nameFace(castIn)}, ${showPoint([castIn.x_mm, castIn.y_mm])}`;
  }
  const { before, after, aspects, move } = difference;
  const words = aspects.map((aspect) => {
    if (aspect.what === 'face') return `on the ${nameFace(after)} (was on the ${nameFace(before)})`;
    if (aspect.what !== 'place') return describeAspect(aspect);
    return move === null ? `at ${showPoint([after.x_mm, after.y_mm])} of it` : describeMove(move);
  });
  return `${nameCastIn(after)}: ${words.join('; ')}`;
}

function describeConnection(difference: ConnectionDifference): string {
  if (difference.kind !== 'changed') {
    const { kind, connection } = difference;
    return `connection ${connection.mark} ${kind}: ${nameFace(connection)}, ${connection.inserts.length} inserts`;
  }
  const { before, after } = difference;
  const words = difference.aspects.map((aspect) => {
    const hasMoved = aspect.changes.some(({ path }) => String(path[0]) === 'origin_mm');
    if (aspect.what !== 'place' || !hasMoved) return describeAspect(aspect);
    const rest = aspect.changes.filter(({ path }) => String(path[0]) !== 'origin_mm');
    const moved = `moved from ${showPoint(before.origin_mm)} to ${showPoint(after.origin_mm)}`;
    return rest.length === 0 ? moved : `${moved}; ${describeAspect({ ...aspect, changes: rest })}`;
  });
  return `connection ${after.mark}: ${words.join('; ')}`;
}

/** The mark by which a person knows the panel now, or knew it. */
export function markOf(difference: PanelDifference): string {
  return difference.kind === 'changed' ? difference.after.mark : difference.panel.mark;
}

/** What is another in a panel, one sentence each, without the panel's mark. */
export function describePanel(difference: PanelDifference): string[] {
  if (difference.kind !== 'changed')
    return [`${difference.kind === 'added' ? 'new' : 'removed'}, ${difference.inserts} inserts`];
  return [
    ...difference.aspects.map(describeAspect),
    ...difference.castIns.map(describeCastIn),
    ...difference.connections.map(describeConnection),
  ];
}

/** What is another in something that panels use, with those panels. */
export function describeLibrary({ kind, id, changes, panels }: LibraryDifference): string {
  return `${kind} ${id}: ${showChanges(changes)}; used in ${panels.join(', ')}`;
}

/** What is another for the whole job. */
export function describeGeneral({ of, changes }: GeneralDifference): string {
  return `${of}: ${showChanges(changes, of === 'pours')}`;
}

/** Everything in which two states differ, a line each: panels by their marks first, then what is used by many, then what holds for all. */
export function describeDifference({ panels, library, general }: JobDifference): string[] {
  return [
    ...panels.flatMap((panel) => describePanel(panel).map((text) => `${markOf(panel)}: ${text}`)),
    ...library.map(describeLibrary),
    ...general.map(describeGeneral),
  ];
}
