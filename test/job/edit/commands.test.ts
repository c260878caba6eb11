import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { giveType } from '../../../src/job/details/give-type.ts';
import type { JobFile } from '../../../src/job/documents/job-file.ts';
import { checkEdit } from '../../../src/job/edit/check-edit.ts';
import {
  addConnection,
  addInsert,
  changeCastIns,
  changePanel,
  nextConnectionMark,
  removeCastIns,
} from '../../../src/job/edit/commands/edit-face.ts';
import { addCorner, findOnSides, removeCorner } from '../../../src/job/edit/commands/edit-outline.ts';
import { copyPanel, findHold, nextName, removePanel } from '../../../src/job/edit/commands/edit-panels.ts';
import { applyEdit, editJob, previewEdit, type Recipe, turnBack } from '../../../src/job/edit/edit-job.ts';
import { FollowError, withFollowing } from '../../../src/job/edit/follow.ts';
import { changeConnection, placeConnection } from '../../../src/job/edit/plate/change-connection.ts';
import { changeDetail } from '../../../src/job/edit/plate/change-detail.ts';
import { readJobDocument } from '../../../src/job/read-job-document.ts';
import { demo } from './demo.ts';

const stamp = { id: 'e1', at: '2031-01-01T00:00:00Z' };

/** What a person does next, made from the job as it stands. */
type Act = (file: JobFile, makeKey: () => string) => Recipe;

const nth = <T>(list: readonly T[], n: number): T => list[n % list.length]!;
const n = fc.nat({ max: 9999 });
const shift = fc.integer({ min: -40, max: 40 });

const act: fc.Arbitrary<Act> = fc.oneof(
  fc.tuple(n, shift, shift).map(
    ([i, dx, dy]): Act =>
      ({ job }) => {
        const { mark, origin_mm, turn_deg } = nth(job.connections, i);
        return placeConnection(mark, [origin_mm[0] + dx, origin_mm[1] + dy], turn_deg);
      },
  ),
  fc.tuple(n, n).map(
    ([i, k]): Act =>
      ({ job, library }) => {
        const { panel, id } = nth(job.castIns, i);
        return changeCastIns(panel, new Set([id]), (castIn) => {
          Object.assign(castIn, giveType({ ...castIn }, nth(library.catalogue.items, k), library.holding.ways));
        });
      },
  ),
  fc.tuple(n, n).map(
    ([i, k]): Act =>
      ({ job, library }) => {
        const { panel, id } = nth(job.castIns, i);
        const way = k % 5 === 0 ? null : nth(library.holding.ways, k);
        return changeCastIns(panel, new Set([id]), (castIn) => {
          castIn.holding = way?.id ?? null;
          castIn.recess_mm = way?.recess_mm ?? castIn.recess_mm;
        });
      },
  ),
  fc.tuple(n, fc.integer({ min: 300, max: 2500 }), fc.integer({ min: 300, max: 2500 }), n).map(
    ([i, x, y, k]): Act =>
      (file, makeKey) => {
        const panel = nth(file.job.panels, i);
        const place = { face: panel.drawnFace, edge: null, at: [x, y] as const };
        const item = nth(file.library.catalogue.items, k).id;
        const detail = nth(file.library.details.details, k);
        const plate = k % 2 === 0 ? ({ kind: 'none' } as const) : ({ kind: 'detail', id: detail.id } as const);
        const type = k % 2 === 0 ? item : (detail.item ?? item);
        return addConnection(panel, nextConnectionMark(file), { ...place, item: type, plate }, makeKey);
      },
  ),
  fc.tuple(n, fc.integer({ min: 300, max: 2500 }), fc.integer({ min: 300, max: 2500 })).map(
    ([i, x, y]): Act =>
      ({ job, library }, makeKey) => {
        const panel = nth(job.panels, i);
        const place = { face: panel.drawnFace, edge: null, at: [x, y] as const };
        return addInsert(panel.mark, library.catalogue.items[0]!.id, place, makeKey());
      },
  ),
  n.map(
    (i): Act =>
      ({ job }) => {
        const { panel, id } = nth(job.castIns, i);
        return removeCastIns(panel, new Set([id]));
      },
  ),
  n.map(
    (i): Act =>
      ({ job }) => {
        const { panel, inserts } = nth(job.connections, i);
        return removeCastIns(panel, new Set(inserts.map(({ insert }) => insert)));
      },
  ),
  fc.tuple(n, n, shift, shift).map(
    ([i, k, dx, dy]): Act =>
      ({ job }) => {
        const { mark, outline_mm } = nth(job.panels, i);
        const corner = k % outline_mm.length;
        const [x, y] = outline_mm[corner]!;
        return changePanel(mark, (panel) => {
          panel.outline_mm = outline_mm.map((at, k) => (k === corner ? [x + dx, y + dy] : at));
        });
      },
  ),
  fc.tuple(n, n, fc.double({ min: 0.1, max: 0.9, noNaN: true })).map(
    ([i, k, share]): Act =>
      ({ job }) => {
        const { mark, outline_mm } = nth(job.panels, i);
        const edge = k % outline_mm.length;
        const [[x0, y0], [x1, y1]] = [outline_mm[edge]!, outline_mm[(edge + 1) % outline_mm.length]!];
        return addCorner(mark, edge, [x0 + share * (x1 - x0), y0 + share * (y1 - y0)]);
      },
  ),
  fc.tuple(n, n).map(
    ([i, k]): Act =>
      ({ job }) => {
        const { mark, outline_mm } = nth(job.panels, i);
        return removeCorner(mark, k % outline_mm.length);
      },
  ),
  fc.tuple(n, fc.integer({ min: 100, max: 4000 }), fc.integer({ min: 100, max: 2500 })).map(
    ([i, x, y]): Act =>
      ({ job }) => {
        const { mark, openings_mm } = nth(job.panels, i);
        return changePanel(mark, (panel) => {
          panel.openings_mm =
            openings_mm.length > 0 && x % 2 === 0
              ? openings_mm.slice(1)
              : [
                  ...openings_mm,
                  [
                    [x, y],
                    [x + 300, y],
                    [x + 300, y + 200],
                    [x, y + 200],
                  ],
                ];
        });
      },
  ),
  fc.tuple(n, n, fc.constantFrom(0, 5, -5)).map(
    ([i, k, batter]): Act =>
      ({ job }) => {
        const { mark, outline_mm } = nth(job.panels, i);
        return changePanel(mark, (panel) => {
          panel.edges = [{ edge: k % outline_mm.length, batter_deg: batter }];
        });
      },
  ),
  n.map(
    (i): Act =>
      ({ job }, makeKey) => {
        const { mark } = nth(job.panels, i);
        return copyPanel(mark, nextName(mark, new Set(job.panels.map((panel) => panel.mark))), makeKey);
      },
  ),
  n.map(
    (i): Act =>
      (file) => {
        const { mark } = nth(file.job.panels, i);
        return findHold(file, mark) === null ? removePanel(mark) : () => {};
      },
  ),
  fc.tuple(n, fc.integer({ min: 0, max: 30 })).map(
    ([i, packers]): Act =>
      ({ job }) =>
        changeConnection(nth(job.connections, i).mark, (connection) => {
          connection.packers_mm = packers;
        }),
  ),
  fc.tuple(n, shift).map(
    ([i, by]): Act =>
      ({ library }) =>
        changeDetail(nth(library.details.details, i).id, ({ fixture }) => {
          const hole = fixture.holes[0]!;
          hole.at_mm = [hole.at_mm[0] + by / 10, hole.at_mm[1]];
        }),
  ),
  fc.tuple(n, fc.constantFrom(0, 5, 10)).map(
    ([i, recess]): Act =>
      ({ job }) => {
        const { panel, id } = nth(job.castIns, i);
        return changeCastIns(panel, new Set([id]), (castIn) => {
          castIn.recess_mm = recess;
        });
      },
  ),
);

/** Makes an edit with what follows it; null where nothing changed, or where what follows cannot be made. */
function make(file: JobFile, recipe: Recipe) {
  try {
    return editJob(file, 'edit', withFollowing(recipe), stamp);
  } catch (error) {
    if (error instanceof FollowError) return null;
    throw error;
  }
}

describe('what a person does to a job', () => {
  it('leaves it readable each time that the check of the edit accepts it, and can be taken back', () => {
    let [accepted, refused] = [0, 0];
    fc.assert(
      fc.property(fc.array(act, { minLength: 1, maxLength: 8 }), (acts) => {
        let file = demo;
        let count = 0;
        const makeKey = () => `new ${count++}`;
        for (const one of acts) {
          const made = make(file, one(file, makeKey));
          if (made === null) continue;
          const { file: next, edit } = made;
          expect(applyEdit(file, edit)).toEqual(next);
          expect(applyEdit(next, turnBack(edit, 'back', stamp))).toEqual(file);
          const reading = readJobDocument(JSON.parse(JSON.stringify(next)));
          expect(checkEdit(file, next).length === 0).toBe(reading.ok);
          if (!reading.ok) {
            refused += 1;
            continue;
          }
          accepted += 1;
          expect(next).toEqual(reading.file);
          file = next;
        }
      }),
      { numRuns: 30 },
    );
    expect(accepted).toBeGreaterThan(30);
    expect(refused).toBeGreaterThan(3);
  }, 120_000);

  it('is written as what it did, not as the lists that it did it to', () => {
    const { panel, id, key } = demo.job.castIns[3]!;
    const removed = editJob(demo, 'x', removeCastIns(panel, new Set([id])), stamp)!;
    const ofList = removed.edit.changes.filter(({ path }) => path[1] === 'castIns');
    expect(ofList).toEqual([{ op: 'remove', path: ['job', 'castIns', 3] }]);
    expect(removed.edit.back.filter(({ path }) => path[1] === 'castIns')).toEqual([
      { op: 'add', path: ['job', 'castIns', 3], value: demo.job.castIns[3] },
    ]);
    expect(applyEdit(removed.file, turnBack(removed.edit, 'x', stamp)).job.castIns[3]!.key).toBe(key);
    const copied: Recipe = ({ job }) => {
      job.castIns = [...job.castIns];
    };
    expect(editJob(demo, 'x', copied, stamp)).toBeNull();
    const turned = editJob(demo, 'x', ({ job }) => void job.castIns.reverse(), stamp)!;
    expect(applyEdit(demo, turned.edit)).toEqual(turned.file);
  });
});

describe('corners of an outline', () => {
  const edged = demo.job.castIns.find(({ edge, panel }) => edge !== null && edge > 0 && panel !== 'P13-H')!;
  const panelOf = ({ job }: JobFile) => job.panels.find(({ mark }) => mark === edged.panel)!;
  const edgeOf = ({ job }: JobFile) => job.castIns.find(({ key }) => key === edged.key)!.edge;

  it('put into a side before it give a side another number, and what is on it goes with it', () => {
    const { outline_mm } = panelOf(demo);
    const [[x0, y0], [x1, y1]] = [outline_mm[0]!, outline_mm[1]!];
    const after = previewEdit(demo, withFollowing(addCorner(edged.panel, 0, [(x0 + x1) / 2, (y0 + y1) / 2])));
    expect(edgeOf(after)).toBe(edged.edge! + 1);
    expect(readJobDocument(after).ok).toBe(true);
    const back = previewEdit(after, withFollowing(removeCorner(edged.panel, 1)));
    expect(back.job).toEqual(demo.job);
  });

  it('put into a side keep what is on it on the first part, and the slope on both', () => {
    const sloped = previewEdit(
      demo,
      changePanel(edged.panel, (panel) => {
        panel.edges = [...panel.edges, { edge: 0, batter_deg: 5 }];
      }),
    );
    expect(panelOf(sloped).edges).toContainEqual({ edge: 0, batter_deg: 5 });
    const [[x0, y0], [x1, y1]] = [panelOf(demo).outline_mm[0]!, panelOf(demo).outline_mm[1]!];
    const after = previewEdit(sloped, addCorner(edged.panel, 0, [(x0 + x1) / 2, (y0 + y1) / 2]));
    expect(
      panelOf(after)
        .edges.filter(({ batter_deg }) => batter_deg === 5)
        .map(({ edge }) => edge),
    ).toEqual([0, 1]);
  });

  it('are kept where something is in a side that would go, and three at least', () => {
    expect(findOnSides(demo, edged.panel, edged.edge!)).toContain(`insert ${edged.id}`);
    expect(findOnSides(demo, 'no such', 0)).toBeNull();
    const triangle = previewEdit(demo, ({ job }) => {
      job.panels[0]!.outline_mm = [
        [0, 0],
        [1000, 0],
        [0, 1000],
      ];
    });
    const { mark } = triangle.job.panels[0]!;
    expect(previewEdit(triangle, removeCorner(mark, 0))).toEqual(triangle);
  });
});

describe('another type', () => {
  it('takes a way of holding for another thread off, and keeps one for the same thread', () => {
    const { items } = demo.library.catalogue;
    const { ways } = demo.library.holding;
    const way = ways.find(({ thread }) => thread === 'M16')!;
    const held = { ...demo.job.castIns[0]!, holding: way.id };
    const typeOf = (thread: string) => items.find((item) => item.thread === thread)!;
    expect(giveType(held, typeOf('M20'), ways)).toMatchObject({ item: typeOf('M20').id, holding: null });
    expect(giveType(held, typeOf('M16'), ways).holding).toBe(way.id);
  });
});
