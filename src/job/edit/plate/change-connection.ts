import type { Draft } from 'immer';
import type { Point } from '../../../engine/geometry/point.ts';
import type { CastIn } from '../../documents/cast-in.ts';
import type { Connection } from '../../documents/connection.ts';
import type { Fixture } from '../../documents/fixture.ts';
import type { Recipe } from '../edit-job.ts';
import { findDraft, followHoles, placesInPlate, putInPlate } from './follow-holes.ts';

/** Changes what a connection itself says; where its inserts are stays as it is. */
export function changeConnection(mark: string, change: (connection: Draft<Connection>) => void): Recipe {
  return (draft) => change(findDraft(draft, mark).connection);
}

/** Changes every insert of a connection. */
export function changeInserts(mark: string, change: (castIn: Draft<CastIn>) => void): Recipe {
  return (draft) => {
    for (const castIn of findDraft(draft, mark).castIns) change(castIn);
  };
}

/** Changes one insert of a connection. */
export function changeInsert(mark: string, insert: string, change: (castIn: Draft<CastIn>) => void): Recipe {
  return (draft) => {
    const found = findDraft(draft, mark).castIns.find(({ id }) => id === insert);
    if (found !== undefined) change(found);
  };
}

/** Puts a connection elsewhere on its face, plate and inserts together. Lengths mm, as the documents give places on that face. */
export function placeConnection(mark: string, origin: Point, turn_deg: number): Recipe {
  return (draft) => {
    const found = findDraft(draft, mark);
    const places = placesInPlate(found);
    found.connection.origin_mm = [origin[0], origin[1]];
    found.connection.turn_deg = turn_deg;
    putInPlate(found, places);
  };
}

/** Changes a connection's own plate; its inserts go with their holes. Does nothing where it has none of its own. */
export function changeOwnPlate(mark: string, change: (fixture: Draft<Fixture>) => void): Recipe {
  return (draft) => {
    const found = findDraft(draft, mark);
    const { fixture } = found.connection;
    if (fixture === null) return;
    const before = fixture.holes.map((hole) => ({ ...hole, at_mm: [hole.at_mm[0], hole.at_mm[1]] as const }));
    change(fixture);
    followHoles(found, before, fixture.holes);
  };
}

/** The least whole number that no name of a list is. */
export function nextNumber(names: readonly string[]): string {
  const taken = new Set(names);
  let number = 1;
  while (taken.has(String(number))) number += 1;
  return String(number);
}

/**
 * Adds a hole to a connection's own plate, and an insert behind it like its first.
 * @param key permanent key of the new insert
 */
export function addHoleWithInsert(mark: string, at: Point, key: string): Recipe {
  return (draft) => {
    const found = findDraft(draft, mark);
    const { connection, castIns, panel } = found;
    const [model] = castIns;
    const hole = connection.fixture?.holes.at(-1);
    if (connection.fixture === null || hole === undefined || model === undefined) return;
    const id = nextNumber(connection.fixture.holes.map((one) => one.id));
    const insert = nextNumber(draft.job.castIns.filter((one) => one.panel === panel.mark).map((one) => one.id));
    connection.fixture.holes.push({ ...hole, id, at_mm: [at[0], at[1]] });
    connection.inserts.push({ insert, hole: id });
    draft.job.castIns.push({ ...model, key, id: insert });
    const after = findDraft(draft, mark);
    putInPlate(after, [...placesInPlate(found), at]);
  };
}

/** Takes a hole out of a connection's own plate, and the insert behind it out of the panel. */
export function removeHoleWithInsert(mark: string, hole: string): Recipe {
  return (draft) => {
    const { connection, panel } = findDraft(draft, mark);
    if (connection.fixture === null) return;
    connection.fixture.holes = connection.fixture.holes.filter(({ id }) => id !== hole);
    const gone = new Set(connection.inserts.flatMap((one) => (one.hole === hole ? [one.insert] : [])));
    connection.inserts = connection.inserts.filter(({ insert }) => !gone.has(insert));
    draft.job.castIns = draft.job.castIns.filter((one) => one.panel !== panel.mark || !gone.has(one.id));
  };
}

/** A plate for a connection that has none: round its inserts, a hole for each, so that loads and moments can be shared out. */
export function addPlate(mark: string, margin: number, thickness: number, holeDiameter: number): Recipe {
  return (draft) => {
    const found = findDraft(draft, mark);
    const places = placesInPlate(found);
    const [xs, ys] = [places.map(([x]) => x), places.map(([, y]) => y)];
    const [x0, x1] = [Math.min(...xs) - margin, Math.max(...xs) + margin];
    const [y0, y1] = [Math.min(...ys) - margin, Math.max(...ys) + margin];
    found.connection.fixture = {
      outline_mm: [
        [x0, y0],
        [x1, y0],
        [x1, y1],
        [x0, y1],
      ],
      thickness_mm: thickness,
      yield_MPa: null,
      holes: places.map(([x, y], i) => ({
        id: String(i + 1),
        at_mm: [x, y],
        diameter_mm: holeDiameter,
        slot_mm: 0,
        slotAngle_deg: 0,
        takesShear: true,
      })),
      attachment_mm: null,
    };
    for (const [i, insert] of found.connection.inserts.entries()) insert.hole = String(i + 1);
  };
}
