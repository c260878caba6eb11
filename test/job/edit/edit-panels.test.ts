import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  addPanel,
  addPartner,
  copyPanel,
  findHold,
  makeRectangle,
  nextName,
  removePanel,
} from '../../../src/job/edit/commands/edit-panels.ts';
import { applyEdit, editJob, type Recipe } from '../../../src/job/edit/edit-job.ts';
import { takeState } from '../../../src/job/edit/take-state.ts';
import { makeNewJob } from '../../../src/job/make-new-job.ts';
import { readJobDocument } from '../../../src/job/read-job-document.ts';
import { demo } from './demo.ts';

const STAMP = { id: 'one', at: '2026-11-30T12:00:00.000Z' };

function edit(recipe: Recipe, file = demo) {
  const edited = editJob(file, 'a panel', recipe, STAMP);
  if (edited === null) throw new Error('nothing changed');
  return edited;
}

function makeKeys() {
  const state = { count: 0 };
  return () => {
    state.count += 1;
    return `new-${state.count}`;
  };
}

describe('panels as a whole', () => {
  it('are added as a rectangle that reads as it is', () => {
    const panel = makeRectangle({
      key: 'new',
      mark: 'P20',
      concrete: 'C40',
      length_mm: 4000,
      height_mm: 2500,
      thickness_mm: 160,
      drawnFace: 'outside',
      faceDown: 'inside',
    });
    const { file } = edit(addPanel(panel));
    expect(file.job.panels.at(-1)?.outline_mm).toEqual([
      [0, 0],
      [4000, 0],
      [4000, 2500],
      [0, 2500],
    ]);
    expect(readJobDocument(file)).toMatchObject({ ok: true, file });
  });

  it('are copied with all that they hold, under names and keys of their own', () => {
    const { file } = edit(copyPanel('P04', 'P04 east', makeKeys()));
    const of = (mark: string) => ({
      castIns: file.job.castIns.filter(({ panel }) => panel === mark),
      connections: file.job.connections.filter(({ panel }) => panel === mark),
    });
    const [one, copy] = [of('P04'), of('P04 east')];
    expect(copy.castIns.map(({ id, x_mm, y_mm }) => [id, x_mm, y_mm])).toEqual(
      one.castIns.map(({ id, x_mm, y_mm }) => [id, x_mm, y_mm]),
    );
    expect(copy.connections).toHaveLength(one.connections.length);
    expect(new Set(file.job.connections.map(({ mark }) => mark)).size).toBe(file.job.connections.length);
    expect(readJobDocument(file).ok).toBe(true);
  });

  it('that are a copy of a handed partner stand alone', () => {
    const { file } = edit(copyPanel('P13-H', 'P14', makeKeys()));
    expect(file.job.panels.find(({ mark }) => mark === 'P14')?.handedOf).toBeNull();
    expect(readJobDocument(file).ok).toBe(true);
  });

  it('are removed with all that they hold, out of the pours too', () => {
    for (const { mark } of demo.job.panels) {
      if (findHold(demo, mark) !== null) continue;
      const { file } = edit(removePanel(mark));
      expect(readJobDocument(file).ok, mark).toBe(true);
      expect(JSON.stringify(file.job.pours)).not.toContain(`"panel":"${mark}"`);
    }
  });

  it('stay where a handed partner hangs on them, or where they are the only one', () => {
    expect(findHold(demo, 'P13')).toBe('P13-H is its handed partner: remove that one first');
    const [first] = demo.job.panels;
    expect(findHold({ ...demo, job: { ...demo.job, panels: [first!] } }, 'P01')).toMatch(/only panel/);
  });

  it('get a handed partner as a small edit; a taken mark is refused with its reason', () => {
    const made = addPartner(demo, 'P05', 'P05-H');
    if (!made.ok) throw new Error(made.text);
    const { file, edit: done } = edit(made.recipe);
    expect(file.job.panels.find(({ mark }) => mark === 'P05-H')?.handedOf).toBe('P05');
    expect(JSON.stringify(done.changes).length).toBeLessThan(JSON.stringify(file).length / 4);
    expect(addPartner(demo, 'P05', 'P01')).toMatchObject({
      ok: false,
      text: expect.stringMatching(/P01 is there already/),
    });
  });

  it('are named on from the last', () => {
    expect(nextName('P09', new Set())).toBe('P10');
    expect(nextName('P09', new Set(['P10', 'P11']))).toBe('P12');
    expect(nextName('Gable', new Set(['Gable-2']))).toBe('Gable-3');
  });
});

describe('taking over another state', () => {
  it('gives that state exactly, and the way back, whatever was done in between', () => {
    const recipes: readonly Recipe[] = [
      removePanel('P01'),
      removePanel('P12'),
      copyPanel('P02', 'copy', makeKeys()),
      ({ job }) => {
        job.castIns[5]!.x_mm += 10;
      },
      ({ job }) => {
        job.pours.splice(0, 1);
      },
      ({ library }) => {
        library.rules.statements.push('one more');
      },
    ];
    fc.assert(
      fc.property(fc.subarray([...recipes]), (chosen) => {
        const state = chosen.reduce((file, recipe) => edit(recipe, file).file, demo);
        const taken = editJob(demo, 'taken', (draft) => takeState(draft, state), STAMP);
        if (taken === null) {
          expect(state).toEqual(demo);
          return;
        }
        expect(taken.file).toEqual(state);
        expect(applyEdit(taken.file, { ...taken.edit, changes: taken.edit.back })).toEqual(demo);
      }),
      { numRuns: 40 },
    );
  });
});

describe('a new job', () => {
  const panel = demo.job.panels[0]!;
  it.each([null, demo.library])('reads as it is, with or without a library', (library) => {
    for (const standard of ['EN 1992-4', 'ACI 318-19'] as const) {
      const file = makeNewJob({ name: 'Net loft', number: null, standard, library, strength_MPa: 37.5, panel });
      expect(readJobDocument(file)).toMatchObject({ ok: true, file });
      expect(file.job.concretes[0]?.id).toBe('C37-5');
      expect(file.library.rules.standard).toBe(standard);
    }
  });
});
