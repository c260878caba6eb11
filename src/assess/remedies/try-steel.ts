import { isWithin } from '../../engine/checks/verdict.ts';
import type { Connection } from '../../job/documents/connection.ts';
import type { Fixture } from '../../job/documents/fixture.ts';
import { NOTHING_REPLACED } from '../../job/edit/replace-values.ts';
import { seatConnection } from '../../job/resolve/connection-seat.ts';
import { ownHardware } from '../../job/resolve/fill-seat.ts';
import { findStrongerClasses } from '../choose/stronger-bolts.ts';
import type { RemedyQuestion } from './question.ts';
import type { Attempt } from './remedy.ts';

const NONE: Attempt = { proposals: [], inVain: [] };

/** Bolts of the weakest stronger class that does; asked only where steel may govern. */
export function tryBolts({ connection, parts, items, before, assess }: RemedyQuestion): Attempt {
  const mode = before.governing?.mode;
  if (mode === undefined || !(mode.startsWith('steel') || mode === 'interaction-steel' || mode === 'interaction-all'))
    return NONE;
  const { boltClass } = ownHardware(seatConnection(parts));
  const stronger = findStrongerClasses(boltClass);
  const chosen = stronger.find((one) => assess({ connection: { ...connection, boltClass: one } }).state === 'passes');
  const strongest = stronger.at(-1);
  if (chosen === undefined)
    return { proposals: [], inVain: strongest === undefined ? [] : [{ kind: 'bolts', most: strongest }] };
  const isGalvanised = chosen === '10.9' && items.some(({ boltFinishes }) => boltFinishes.includes('galvanised'));
  return {
    proposals: [
      {
        kind: 'stronger bolts',
        deed: { kind: 'bolts', from: boltClass, to: chosen },
        notes: isGalvanised
          ? ['bolts 10.9: hot-dip galvanised only by a process that rules out hydrogen embrittlement']
          : [],
        change: { ...NOTHING_REPLACED, connections: [{ key: connection.key, set: { boltClass: chosen } }] },
      },
    ],
    inVain: [],
  };
}

/** Plates as steel is rolled [mm]. */
const PLATES = [6, 8, 10, 12, 15, 20, 25, 30, 35, 40, 50] as const;

/** A connection with a plate of its own of another thickness. */
const withPlate = (fixture: Fixture, thickness_mm: number): Pick<Connection, 'detail' | 'fixture'> => ({
  detail: null,
  fixture: { ...fixture, thickness_mm },
});

const noteDetail = ({ detail }: Connection): readonly string[] =>
  detail === null ? [] : [`its plate is then no longer that of detail ${detail}`];

/** The connection with the thinnest plate that its loads do not bend too far, where its own they do; null where there is no need, or none is. */
export function stiffenPlate({ connection, parts: { fixture }, before: { plate } }: RemedyQuestion): {
  readonly connection: Connection;
  readonly thickness: number;
  readonly notes: readonly string[];
} | null {
  if (fixture === null || plate?.kind !== 'checked' || isWithin(plate.ratio)) return null;
  const thickness = PLATES.find((one) => one >= plate.requiredThickness);
  if (thickness === undefined) return null;
  return {
    connection: { ...connection, ...withPlate(fixture, thickness) },
    thickness,
    notes: noteDetail(connection),
  };
}

/** A thicker plate, where the plate's bending governs: the thinnest that does. */
export function tryPlate({ connection, parts: { fixture }, before, assess }: RemedyQuestion): Attempt {
  if (fixture === null || before.governing?.mode !== 'plate-bending') return NONE;
  const thicker = PLATES.filter((thickness) => thickness > fixture.thickness_mm);
  const chosen = thicker.find(
    (thickness) => assess({ connection: { ...connection, ...withPlate(fixture, thickness) } }).state === 'passes',
  );
  const thickest = thicker.at(-1);
  if (chosen === undefined)
    return { proposals: [], inVain: thickest === undefined ? [] : [{ kind: 'plate', most: thickest }] };
  return {
    proposals: [
      {
        kind: 'thicker plate',
        deed: { kind: 'plate', from: fixture.thickness_mm, to: chosen },
        notes: noteDetail(connection),
        change: { ...NOTHING_REPLACED, connections: [{ key: connection.key, set: withPlate(fixture, chosen) }] },
      },
    ],
    inVain: [],
  };
}
