import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { JobFile } from '../../../src/job/documents/job-file.ts';
import { previewEdit, type Recipe } from '../../../src/job/edit/edit-job.ts';
import { withFollowing } from '../../../src/job/edit/follow.ts';
import {
  addHoleWithInsert,
  addPlate,
  changeOwnPlate,
  nextNumber,
  placeConnection,
  removeHoleWithInsert,
} from '../../../src/job/edit/plate/change-connection.ts';
import {
  changeDetail,
  makeDetailOf,
  makeOwnPlate,
  removeDetail,
  takeDetail,
} from '../../../src/job/edit/plate/change-detail.ts';
import { findRectangle, makeRectangle } from '../../../src/job/edit/plate/rectangle.ts';
import { readJobDocument } from '../../../src/job/read-job-document.ts';
import { demo } from './demo.ts';

const make = (file: JobFile, recipe: Recipe) => previewEdit(file, withFollowing(recipe));
const find = ({ job }: JobFile, mark: string) => job.connections.find((one) => one.mark === mark)!;
const insertsOf = (file: JobFile, mark: string) => {
  const { panel, inserts } = find(file, mark);
  return inserts.map(({ insert }) => file.job.castIns.find((one) => one.panel === panel && one.id === insert)!);
};
const faultsOf = (file: JobFile) => {
  const read = readJobDocument(file);
  return read.ok ? [] : read.faults.map(({ text }) => text);
};

/** Connections of panels that are no partners. */
const MARKS = demo.job.connections
  .filter(({ panel }) => demo.job.panels.find(({ mark }) => mark === panel)?.handedOf === null)
  .map(({ mark }) => mark);

describe('a connection put elsewhere', () => {
  it('takes its inserts along, on every face and at every turn: the bolts still go through the holes', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...MARKS),
        fc.double({ min: -30, max: 30, noNaN: true }),
        fc.integer({ min: -180, max: 180 }),
        (mark, by, turn) => {
          const { origin_mm } = find(demo, mark);
          const moved = make(demo, placeConnection(mark, [origin_mm[0] + by, origin_mm[1] - by], turn));
          expect(faultsOf(moved).filter((text) => text.includes('misses the hole'))).toEqual([]);
          const back = make(moved, placeConnection(mark, origin_mm, find(demo, mark).turn_deg));
          for (const [i, { x_mm, y_mm }] of insertsOf(back, mark).entries()) {
            expect(x_mm).toBeCloseTo(insertsOf(demo, mark)[i]!.x_mm, 5);
            expect(y_mm).toBeCloseTo(insertsOf(demo, mark)[i]!.y_mm, 5);
          }
        },
      ),
      { numRuns: 60 },
    );
  });
});

describe('a plate of its own', () => {
  it('moves an insert with its hole and no other', () => {
    const moved = make(
      demo,
      changeOwnPlate('C05', ({ holes }) => {
        holes[0]!.at_mm = [holes[0]!.at_mm[0] + 7, holes[0]!.at_mm[1] - 3];
      }),
    );
    expect(faultsOf(moved)).toEqual([]);
    const [first, ...others] = insertsOf(moved, 'C05');
    const [was, ...same] = insertsOf(demo, 'C05');
    expect(Math.abs(first!.x_mm - was!.x_mm)).toBeCloseTo(7, 9);
    expect(Math.abs(first!.y_mm - was!.y_mm)).toBeCloseTo(3, 9);
    expect(others).toEqual(same);
  });

  it('gets a hole with an insert behind it, like the first, and loses both together', () => {
    const more = make(demo, addHoleWithInsert('C05', [0, 100], 'new key'));
    expect(faultsOf(more)).toEqual([]);
    const added = insertsOf(more, 'C05').at(-1)!;
    expect(added).toMatchObject({ key: 'new key', id: '16', item: insertsOf(demo, 'C05')[0]!.item });
    expect(find(more, 'C05').inserts.at(-1)).toEqual({ insert: '16', hole: '5' });
    const less = make(more, removeHoleWithInsert('C05', '5'));
    expect(less.job.castIns).toEqual(demo.job.castIns);
    expect(find(less, 'C05')).toEqual(find(demo, 'C05'));
  });

  it('is made round inserts that have none', () => {
    const bare = previewEdit(demo, ({ job }) => {
      const connection = job.connections.find(({ mark }) => mark === 'C05')!;
      connection.fixture = null;
      connection.actions = { kind: 'required', N_kN: 1, V_kN: 1 };
      for (const insert of connection.inserts) insert.hole = null;
    });
    expect(faultsOf(bare)).toEqual([]);
    const plated = make(bare, addPlate('C05', 50, 12, 18));
    expect(faultsOf(plated)).toEqual([]);
    expect(find(plated, 'C05').fixture!.holes).toHaveLength(4);
  });

  it('becomes a detail that the connection follows, and a plate of its own again', () => {
    const { fixture } = find(demo, 'C05');
    const made = make(demo, makeDetailOf('C05', 'T9', 'A plate', fixture!));
    expect(faultsOf(made)).toEqual([]);
    expect(find(made, 'C05')).toMatchObject({ detail: 'T9', fixture: null });
    expect(insertsOf(made, 'C05')).toEqual(insertsOf(demo, 'C05'));
    const own = make(made, makeOwnPlate('C05', fixture!));
    expect(find(own, 'C05')).toEqual(find(demo, 'C05'));
  });
});

describe('a standard detail', () => {
  const detail = demo.library.details.details[0]!;

  it('is taken by a connection: inserts go to the middles of its holes and become of its type', () => {
    const taken = make(demo, takeDetail('C05', { ...detail, item: 'F16-120' }));
    expect(faultsOf(taken)).toEqual([]);
    expect(insertsOf(taken, 'C05').map(({ item }) => item)).toEqual(Array(4).fill('F16-120'));
    const [a, b] = insertsOf(taken, 'C05');
    expect(Math.hypot(a!.x_mm - b!.x_mm, a!.y_mm - b!.y_mm)).toBeCloseTo(200, 6);
  });

  it('under another name takes its connections with it', () => {
    const renamed = make(
      demo,
      changeDetail('T1', (draft) => {
        draft.id = 'T7';
      }),
    );
    expect(faultsOf(renamed)).toEqual([]);
    expect(renamed.job.connections.filter((one) => one.detail === 'T7')).toHaveLength(5);
    expect(renamed.job.connections.some((one) => one.detail === 'T1')).toBe(false);
  });

  it('cannot be removed while it is placed', () => {
    expect(faultsOf(make(demo, removeDetail('T1'))).join()).toContain('T1');
  });
});

describe('rectangles', () => {
  it('are found from their corners in any order, and other shapes are none', () => {
    const rectangle = { middle: [10, -5] as const, width: 200, height: 80 };
    const [a, b, c, d] = makeRectangle(rectangle);
    expect(findRectangle([c!, d!, a!, b!])).toEqual(rectangle);
    expect(findRectangle([a!, b!, c!])).toBeNull();
    expect(findRectangle([a!, b!, c!, [d![0] + 1, d![1]]])).toBeNull();
  });

  it('leave the first free number', () => {
    expect(nextNumber(['1', '2', '4', 'x'])).toBe('3');
  });
});
