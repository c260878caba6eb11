import type { CastIn } from '../documents/cast-in.ts';
import type { Connection } from '../documents/connection.ts';
import type { Detail } from '../documents/details.ts';
import type { JobIndex } from '../job-index.ts';
import { findOffHole } from './hole-place.ts';

/** What a placed connection does other than its standard detail. */
export interface LocalOverride {
  readonly kind: 'type' | 'place' | 'holes' | 'packers' | 'bolts' | 'concrete' | 'bars';
  readonly words: string;
}

const n = (value: number) => `${Number(value.toFixed(1))}`;

/** A shift in words, as one stands in front of the plate: `4 mm right, 2 mm down`. */
function tellShift([x, y]: readonly [number, number]): string {
  const parts = [
    [x, 'right', 'left'],
    [y, 'up', 'down'],
  ] as const;
  return parts
    .filter(([by]) => n(Math.abs(by)) !== '0')
    .map(([by, plus, minus]) => `${n(Math.abs(by))} mm ${by > 0 ? plus : minus}`)
    .join(', ');
}

function findTypes({ id, item }: Detail, castIns: readonly CastIn[]): LocalOverride[] {
  if (item === null) return [];
  return castIns
    .filter((castIn) => castIn.item !== item)
    .map((castIn) => ({
      kind: 'type',
      words: `insert ${castIn.id} is ${castIn.item ?? castIn.description ?? castIn.role}, detail ${id} has ${item}`,
    }));
}

function findPlaces(index: JobIndex, connection: Connection, { id, fixture }: Detail): LocalOverride[] {
  const panel = index.panels.get(connection.panel);
  if (panel === undefined) return [];
  const off = connection.inserts.flatMap(({ insert, hole: holeId }): LocalOverride[] => {
    const hole = fixture.holes.find((one) => one.id === holeId);
    const castIn = index.castIn(panel.mark, insert);
    if (hole === undefined || castIn === undefined) return [];
    const shift = findOffHole(panel, connection, hole, castIn);
    const words = shift === null ? '' : tellShift(shift);
    return words === ''
      ? []
      : [{ kind: 'place', words: `insert ${insert} stands ${words} of the middle of hole ${hole.id}` }];
  });
  const used = new Set(connection.inserts.map(({ hole }) => hole));
  const empty = fixture.holes.filter((hole) => !used.has(hole.id)).map((hole) => hole.id);
  if (empty.length === 0) return off;
  const words = `${empty.length === 1 ? 'hole' : 'holes'} ${empty.join(', ')} of detail ${id} without an insert`;
  return [...off, { kind: 'holes', words }];
}

/** Bolts, packers, concrete and bars: a detail says nothing of them, so each that is given is the connection's own. */
function findOwn(connection: Connection): LocalOverride[] {
  const { packers_mm, isFilled, isHeldAgainstTurning, boltThread, boltClass, boltFinish, engagement_mm } = connection;
  const { cracked, age_days, hangers, hairpins } = connection;
  const bolts = [
    ...(boltThread === null ? [] : [boltThread]),
    ...(boltClass === null ? [] : [`class ${boltClass}`]),
    ...(boltFinish === null ? [] : [boltFinish]),
    ...(engagement_mm === null ? [] : [`${n(engagement_mm)} mm engaged`]),
  ];
  const concrete = [
    ...(cracked === null ? [] : [cracked ? 'cracked' : 'uncracked']),
    ...(age_days === null ? [] : [`loaded at ${n(age_days)} days`]),
  ];
  const bars = [
    ...(hangers.length === 0 ? [] : [`${hangers.length} ${hangers.length === 1 ? 'hanger' : 'hangers'}`]),
    ...(hairpins.length === 0 ? [] : [`${hairpins.length} ${hairpins.length === 1 ? 'hairpin' : 'hairpins'}`]),
  ];
  const packers = [
    ...(packers_mm === 0 ? [] : [`${n(packers_mm)} mm of packers${isFilled ? ', filled with mortar' : ''}`]),
    ...(isHeldAgainstTurning ? ['plate held against turning'] : []),
  ];
  return [
    ...(packers.length === 0 ? [] : [{ kind: 'packers', words: packers.join(', ') } as const]),
    ...(bolts.length === 0 ? [] : [{ kind: 'bolts', words: `bolts: ${bolts.join(', ')}` } as const]),
    ...(concrete.length === 0 ? [] : [{ kind: 'concrete', words: `concrete: ${concrete.join(', ')}` } as const]),
    ...(bars.length === 0 ? [] : [{ kind: 'bars', words: bars.join(', ') } as const]),
  ];
}

/** What a connection does other than, or beyond, its standard detail, in words; none where it has no detail. */
export function listLocalOverrides(index: JobIndex, connection: Connection): readonly LocalOverride[] {
  const detail = connection.detail === null ? undefined : index.details.get(connection.detail);
  if (detail === undefined) return [];
  const castIns = connection.inserts.flatMap(({ insert }) => index.castIn(connection.panel, insert) ?? []);
  return [...findTypes(detail, castIns), ...findPlaces(index, connection, detail), ...findOwn(connection)];
}
