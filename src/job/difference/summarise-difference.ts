import type { CastInAspect, JobDifference } from './job-difference.ts';

/** Sides of an insert that the line counts by themselves. */
const COUNTED: readonly CastInAspect[] = ['place', 'type'];

function count(number: number, one: string, many: string): string[] {
  return number === 0 ? [] : [`${number} ${number === 1 ? one : many}`];
}

/** A difference in one line: "2 inserts moved, 1 type changed, 14 panels unchanged". */
export function summariseDifference({ panels, library, general, unchanged }: JobDifference): string {
  const changed = panels.flatMap((panel) => (panel.kind === 'changed' ? [panel] : []));
  const castIns = changed.flatMap((panel) => panel.castIns);
  const connections = changed.flatMap((panel) => panel.connections);
  const withAspect = (isMeant: (what: CastInAspect) => boolean) =>
    castIns.filter((one) => one.kind === 'changed' && one.aspects.some(({ what }) => isMeant(what))).length;
  const panelsOf = (kind: 'added' | 'removed') => panels.filter((panel) => panel.kind === kind).length;
  const castInsOf = (kind: 'added' | 'removed') => castIns.filter((one) => one.kind === kind).length;
  const parts = [
    ...count(panelsOf('added'), 'panel new', 'panels new'),
    ...count(panelsOf('removed'), 'panel removed', 'panels removed'),
    ...count(
      changed.filter(({ aspects }) => aspects.length > 0).length,
      'panel changed in itself',
      'panels changed in themselves',
    ),
    ...count(
      withAspect((what) => what === 'place'),
      'insert moved',
      'inserts moved',
    ),
    ...count(
      withAspect((what) => what === 'type'),
      'type changed',
      'types changed',
    ),
    ...count(castInsOf('added'), 'insert added', 'inserts added'),
    ...count(castInsOf('removed'), 'insert removed', 'inserts removed'),
    ...count(
      withAspect((what) => !COUNTED.includes(what)),
      'insert otherwise changed',
      'inserts otherwise changed',
    ),
    ...count(connections.length, 'connection changed', 'connections changed'),
    ...library.map(({ kind, id }) => `${kind} ${id} changed`),
    ...general.map(({ of }) => `${of} changed`),
  ];
  const same = count(unchanged.length, 'panel unchanged', 'panels unchanged');
  return parts.length === 0 ? ['nothing changed', ...same].join(', ') : [...parts, ...same].join(', ');
}
