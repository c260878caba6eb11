import type { Draft } from 'immer';
import type { Detail } from '../../documents/details.ts';
import type { JobFile } from '../../documents/job-file.ts';
import type { Recipe } from '../edit-job.ts';
import { findDraft, putInPlate } from './follow-holes.ts';

/** A copy that shares nothing with what it was made of, so that changing one does not change the other. */
const copyOf = (fixture: Detail['fixture']): Draft<Detail['fixture']> =>
  structuredClone(fixture) as Draft<typeof fixture>;

/** A connection takes the plate of its standard detail as its own: it no longer follows. */
export function makeOwnPlate(mark: string, fixture: Detail['fixture']): Recipe {
  return (draft) => {
    const { connection } = findDraft(draft, mark);
    connection.detail = null;
    connection.fixture = copyOf(fixture);
  };
}

/** Makes a standard detail of a connection's own plate; the connection follows it from then on. */
export function makeDetailOf(mark: string, id: string, name: string, fixture: Detail['fixture']): Recipe {
  return (draft) => {
    const { connection, castIns } = findDraft(draft, mark);
    const item = castIns[0]?.item ?? null;
    draft.library.details.details.push({ id, name, fixture: copyOf(fixture), item });
    connection.detail = id;
    connection.fixture = null;
  };
}

/** A connection takes a standard detail: inserts go to its holes, in their order, and become of its type. */
export function takeDetail(mark: string, detail: Detail): Recipe {
  return (draft) => {
    const found = findDraft(draft, mark);
    const { connection, castIns } = found;
    connection.detail = detail.id;
    connection.fixture = null;
    placeAtHoles(draft, mark, detail);
    for (const castIn of castIns) if (detail.item !== null) castIn.item = detail.item;
  };
}

/** Puts each insert into the hole of its number, or, where it has none of the detail's, into the next free one, at its middle. */
function placeAtHoles(draft: Draft<JobFile>, mark: string, { fixture: { holes } }: Detail): void {
  const found = findDraft(draft, mark);
  const { connection } = found;
  const wanted = connection.inserts.map(({ hole }) => holes.find(({ id }) => id === hole));
  const free = holes.filter((hole) => !wanted.includes(hole));
  const taken = wanted.map((hole) => hole ?? free.shift());
  for (const [i, insert] of connection.inserts.entries()) insert.hole = taken[i]?.id ?? null;
  putInPlate(
    found,
    taken.flatMap((hole) => (hole === undefined ? [] : [hole.at_mm])),
  );
}

/** Changes a standard detail. What is placed of it follows each edit (`follow.ts`); under another name its connections go with it. */
export function changeDetail(id: string, change: (detail: Draft<Detail>) => void): Recipe {
  return (draft) => {
    const detail = draft.library.details.details.find((one) => one.id === id);
    if (detail === undefined) return;
    change(detail);
    if (detail.id === id) return;
    for (const connection of draft.job.connections) if (connection.detail === id) connection.detail = detail.id;
  };
}

/** Adds a standard detail. */
export function addDetail(detail: Detail): Recipe {
  return (draft) => {
    draft.library.details.details.push({ ...detail, fixture: copyOf(detail.fixture) });
  };
}

/** Takes a standard detail out of the job; one that connections use is refused by the reading of the job. */
export function removeDetail(id: string): Recipe {
  return (draft) => {
    draft.library.details.details = draft.library.details.details.filter((one) => one.id !== id);
  };
}

/** Replaces a standard detail as a whole, with the name that it has now. */
export function putDetail(id: string, detail: Detail): Recipe {
  return changeDetail(id, (draft) => {
    Object.assign(draft, { ...detail, fixture: copyOf(detail.fixture) });
  });
}
