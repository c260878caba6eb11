import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { writeCanonical } from '../../src/job/canonical.ts';
import type { JobFile } from '../../src/job/documents/job-file.ts';
import type { Edit } from '../../src/job/edit/edit.ts';
import type { Recipe } from '../../src/job/edit/edit-job.ts';
import { turnBack } from '../../src/job/edit/edit-job.ts';
import type { Store } from '../../src/store/store.ts';
import { change, numberEdits, sampleFile } from './edits.ts';

/** Where a store keeps its data for a test; opening it again finds what was stored. */
export interface StorePlace {
  readonly open: (now?: () => Date) => Promise<Store>;
  readonly clear: () => void;
}

/** Numbers from `first` on as texts. */
const ids = (count: number, first = 1) => Array.from({ length: count }, (_, index) => `${first + index}`);

/** What a call gives when it is done; anything else is a fault of the store. */
export async function done<T>(
  answer: Promise<{ readonly kind: 'done'; readonly value: T } | { readonly kind: string }>,
): Promise<T> {
  const given = await answer;
  if (given.kind !== 'done' || !('value' in given)) throw new Error(`not done: ${JSON.stringify(given)}`);
  return given.value;
}

/** What every store must do, whichever database is behind it. */
export function describeJobStore(name: string, makePlace: () => StorePlace): void {
  describe(`${name}: jobs and edits`, () => {
    let place: StorePlace;
    let store: Store;
    beforeEach(async () => {
      place = makePlace();
      store = await place.open();
    });
    afterEach(async () => {
      await store.close();
      place.clear();
    });
    const reopen = async () => {
      await store.close();
      store = await place.open();
    };
    const save = (id: string, base: number, edits: readonly Edit[], editor = 'tab') =>
      store.saveEdits(id, { base, editor, edits });

    it('lists a job by what its file says', async () => {
      const head = await store.createJob(sampleFile());
      expect(head).toMatchObject({ name: 'Sample', number: null, version: 0, panels: 1, connections: 1 });
      expect(head).toMatchObject({ revision: null, issued: null });
      expect(await store.listJobs({ removed: false })).toEqual([head]);
      const { edits } = numberEdits(sampleFile(), ['1']);
      await save(head.id, 0, edits);
      expect(await store.listJobs({ removed: false })).toMatchObject([{ number: 'N1', version: 1 }]);
    });

    it('gives a job as it was stored, after the store was closed too', async () => {
      const { id } = await store.createJob(sampleFile());
      const { edits, file } = numberEdits(sampleFile(), ids(3));
      await save(id, 0, edits);
      expect(await done(store.openJob(id))).toMatchObject({ version: 3, file });
      await reopen();
      expect(await done(store.openJob(id))).toMatchObject({ version: 3, file });
    });

    it('gives the list of edits after a version, 500 at most', async () => {
      const { id } = await store.createJob(sampleFile());
      const { edits } = numberEdits(sampleFile(), ids(503));
      await save(id, 0, edits.slice(0, 2), 'first tab');
      await save(id, 2, edits.slice(2, 500), 'other tab');
      await save(id, 500, edits.slice(500));
      const all = await done(store.listEdits(id, 0));
      expect(all.version).toBe(503);
      expect(all.edits.map(({ edit }) => edit)).toEqual(edits.slice(0, 500));
      expect(all.edits.map(({ version }) => version)).toEqual(ids(500).map(Number));
      expect(all.edits.slice(1, 3).map(({ editor }) => editor)).toEqual(['first tab', 'other tab']);
      expect((await done(store.listEdits(id, 500))).edits.map(({ edit }) => edit)).toEqual(edits.slice(500));
      expect((await done(store.listEdits(id, 503))).edits).toEqual([]);
    });

    it('refuses edits made on an earlier version, and stores nothing of them', async () => {
      const { id } = await store.createJob(sampleFile());
      const mine = numberEdits(sampleFile(), ids(2));
      const theirs = numberEdits(sampleFile(), ids(2, 11));
      const { savedAt } = await done(save(id, 0, mine.edits));
      const answer = await save(id, 0, theirs.edits);
      expect(answer).toEqual({ kind: 'conflict', cause: 'behind', version: 2, savedAt });
      expect(await save(id, 1, theirs.edits)).toMatchObject({ kind: 'conflict', cause: 'behind', version: 2 });
      expect(await save(id, 3, theirs.edits)).toMatchObject({ kind: 'conflict', cause: 'ahead', version: 2 });
      expect(await done(store.openJob(id))).toMatchObject({ version: 2, file: mine.file });
      expect((await done(store.listEdits(id, 0))).edits).toHaveLength(2);
    });

    it('lets one of two win that save at the same time', async () => {
      const { id } = await store.createJob(sampleFile());
      const answers = await Promise.all(
        ids(8).map((number) => save(id, 0, numberEdits(sampleFile(), [`${number}0`]).edits)),
      );
      expect(answers.map(({ kind }) => kind).sort()).toEqual([...Array(7).fill('conflict'), 'done']);
      expect((await done(store.openJob(id))).version).toBe(1);
    });

    it('counts edits once that are sent again', async () => {
      const { id } = await store.createJob(sampleFile());
      const { edits, file } = numberEdits(sampleFile(), ids(5));
      const first = await done(save(id, 0, edits.slice(0, 3)));
      expect(await done(save(id, 0, edits.slice(0, 3)))).toEqual(first);
      expect((await done(save(id, 0, edits))).version).toBe(5);
      expect((await done(store.listEdits(id, 0))).edits.map(({ edit }) => edit)).toEqual(edits);
      expect(await done(store.openJob(id))).toMatchObject({ version: 5, file });
    });

    it('says how far the edits of the call are, not what others stored since', async () => {
      const { id } = await store.createJob(sampleFile());
      const { edits } = numberEdits(sampleFile(), ids(5));
      await save(id, 0, edits.slice(0, 2), 'mine');
      await save(id, 2, edits.slice(2), 'theirs');
      expect((await done(save(id, 0, edits.slice(0, 2), 'mine'))).version).toBe(2);
    });

    it('refuses an id that stands for another edit already', async () => {
      const { id } = await store.createJob(sampleFile());
      const { edits, file } = numberEdits(sampleFile(), ['1']);
      const other = change(sampleFile(), '1', ({ job }) => {
        job.project.number = 'other';
      });
      await save(id, 0, edits);
      expect(await save(id, 0, [other.edit])).toMatchObject({ kind: 'conflict' });
      const later = change(file, '1', ({ job }) => {
        job.project.number = 'later';
      });
      expect(await save(id, 1, [later.edit])).toMatchObject({ kind: 'conflict', cause: 'same-id' });
      const twice = numberEdits(file, ['2', '3']).edits.map((edit) => ({ ...edit, id: '2' }));
      expect(await save(id, 1, twice)).toMatchObject({ kind: 'conflict', cause: 'same-id' });
      expect(await done(store.openJob(id))).toMatchObject({ version: 1, file });
    });

    it('takes the same id in another job', async () => {
      const [one, two] = [await store.createJob(sampleFile()), await store.createJob(sampleFile())];
      const { edits } = numberEdits(sampleFile(), ['1']);
      await done(save(one.id, 0, edits));
      expect((await done(save(two.id, 0, edits))).version).toBe(1);
    });

    it('refuses edits that break the job, all of the call', async () => {
      const { id } = await store.createJob(sampleFile());
      const good = numberEdits(sampleFile(), ['1']);
      const bad = change(good.file, '2', ({ job }) => {
        job.panels[0]!.thickness_mm = -180;
      });
      const answer = await save(id, 0, [...good.edits, bad.edit]);
      expect(answer).toMatchObject({
        kind: 'faults',
        faults: [{ path: ['job', 'panels', 0, 'thickness_mm'], value: '-180' }],
      });
      expect(await done(store.openJob(id))).toMatchObject({ version: 0, file: sampleFile() });
    });

    it('gives every earlier state, across full copies', async () => {
      const { id } = await store.createJob(sampleFile());
      const states: JobFile[] = [sampleFile()];
      for (const number of ids(120)) {
        const { file, edit } = change(states.at(-1)!, number, ({ job }) => {
          job.panels[0]!.thickness_mm += 1;
        });
        states.push(file);
        await done(save(id, states.length - 2, [edit]));
      }
      await reopen();
      for (const version of [0, 1, 49, 50, 51, 99, 100, 101, 119, 120])
        expect(await done(store.jobAt(id, version))).toEqual({ id, version, file: states[version] });
      expect(await store.jobAt(id, 121)).toEqual({ kind: 'unknown' });
    }, 60_000);

    it('does not give a state that was never sound', async () => {
      const { id } = await store.createJob(sampleFile());
      const bad = change(sampleFile(), '1', ({ job }) => {
        job.panels[0]!.mark = 'P2';
      });
      const mended = turnBack(bad.edit, 'back', { id: '2', at: '2026-11-30T08:00:00Z' });
      expect((await done(save(id, 0, [bad.edit, mended]))).version).toBe(2);
      expect((await store.jobAt(id, 1)).kind).toBe('faults');
      expect(await done(store.jobAt(id, 2))).toMatchObject({ file: sampleFile() });
    });

    it('takes a job out of the list and puts it back, with all that it had', async () => {
      const { id } = await store.createJob(sampleFile());
      await save(id, 0, numberEdits(sampleFile(), ['1']).edits);
      await done(store.removeJob(id));
      expect(await store.listJobs({ removed: false })).toEqual([]);
      expect(await store.listJobs({ removed: true })).toMatchObject([{ id, version: 1 }]);
      const absent = { kind: 'absent', isRemoved: true };
      expect(await store.openJob(id)).toEqual(absent);
      expect(await store.removeJob(id)).toEqual(absent);
      expect(await save(id, 1, numberEdits(sampleFile(), ['2']).edits)).toEqual(absent);
      expect(await done(store.restoreJob(id))).toMatchObject({ id, version: 1 });
      expect((await done(store.openJob(id))).version).toBe(1);
    });

    it('knows no job of another id', async () => {
      const absent = { kind: 'absent', isRemoved: false };
      expect(await store.openJob('nnnnnnnnnnnn')).toEqual(absent);
      expect(await store.restoreJob('nnnnnnnnnnnn')).toEqual(absent);
      expect(await store.listEdits('nnnnnnnnnnnn', 0)).toEqual(absent);
      expect(await store.jobAt('nnnnnnnnnnnn', 0)).toEqual(absent);
      expect(await store.listRevisions('nnnnnnnnnnnn')).toEqual(absent);
      expect(await store.listKept('nnnnnnnnnnnn')).toEqual(absent);
    });

    it('keeps the other version of a conflict whole', async () => {
      const { id } = await store.createJob(sampleFile());
      const other = await store.createJob(sampleFile());
      const { file } = numberEdits(sampleFile(), ids(2));
      const head = await done(store.keepVersion(id, { base: 0, editor: 'tab', reason: 'two tabs', file }));
      expect(head).toMatchObject({ base: 0, editor: 'tab', reason: 'two tabs' });
      await reopen();
      expect(await done(store.listKept(id))).toEqual([head]);
      expect(await done(store.openKept(id, head.id))).toEqual({ ...head, file });
      expect(await store.openKept(other.id, head.id)).toEqual({ kind: 'unknown' });
      expect(await done(store.listKept(other.id))).toEqual([]);
    });

    it('gives in memory and after reading again the same for any edits', async () => {
      const recipe: fc.Arbitrary<Recipe> = fc.oneof(
        fc.string({ minLength: 1, maxLength: 8, unit: fc.constantFrom('a', 'Ø', '7', '"', '\\', '…') }).map(
          (number): Recipe =>
            ({ job }) => {
              job.project.number = number;
            },
        ),
        fc.integer({ min: 150, max: 400 }).map(
          (thickness): Recipe =>
            ({ job }) => {
              job.panels[0]!.thickness_mm = thickness;
            },
        ),
        fc.array(fc.constantFrom('one', 'two', 'three'), { maxLength: 4 }).map(
          (remarks): Recipe =>
            ({ job }) => {
              job.project.remarks = remarks;
            },
        ),
        fc.integer({ min: 0, max: 3 }).map(
          (place): Recipe =>
            ({ job }) => {
              job.project.remarks.splice(place, 1, `put at ${place}`, 'and after it');
            },
        ),
        fc.constant<Recipe>(({ job }) => {
          job.project.remarks.shift();
        }),
      );
      await fc.assert(
        fc.asyncProperty(
          fc.array(recipe, { minLength: 1, maxLength: 12 }),
          fc.integer({ min: 1, max: 4 }),
          async (recipes, atOnce) => {
            const { id } = await store.createJob(sampleFile());
            const states = [sampleFile()];
            const edits: Edit[] = [];
            for (const [index, step] of recipes.entries()) {
              // Many recipes change nothing where they land; a mark makes each an edit.
              const made = change(states.at(-1)!, `${index}`, (draft) => {
                step(draft);
                draft.job.project.designEngineer = `step ${index}`;
              });
              states.push(made.file);
              edits.push(made.edit);
            }
            for (let base = 0; base < edits.length; base += atOnce)
              await done(save(id, base, edits.slice(base, base + atOnce)));
            for (const [version, file] of states.entries())
              expect((await done(store.jobAt(id, version))).file).toEqual(file);
            expect((await done(store.openJob(id))).file).toEqual(states.at(-1));
          },
        ),
        { numRuns: 25 },
      );
    }, 60_000);
  });

  describe(`${name}: issued revisions`, () => {
    let place: StorePlace;
    let store: Store;
    let id: string;
    const call = {
      base: 0,
      letter: 'A',
      status: 'for approval',
      date: '2026-11-30',
      note: 'for comment',
      recipients: [{ name: 'N. Nobody', firm: 'Invented', how: 'by e-mail' }],
    } as const;
    beforeEach(async () => {
      place = makePlace();
      store = await place.open(() => new Date('2026-11-30T09:00:00Z'));
      ({ id } = await store.createJob(sampleFile()));
    });
    afterEach(async () => {
      await store.close();
      place.clear();
    });

    it('freezes the file with its letter and the hash of its canonical text', async () => {
      const issued = await done(store.issueRevision(id, call));
      const { base: _, ...transmittal } = call;
      const file = {
        ...sampleFile(),
        job: { ...sampleFile().job, revision: { letter: 'A', status: 'for approval', date: '2026-11-30' } },
      };
      const fingerprint = createHash('sha256').update(writeCanonical(file)).digest('hex');
      expect(issued).toEqual({ ...transmittal, version: 1, issuedAt: '2026-11-30T09:00:00.000Z', fingerprint });
      expect(await done(store.openJob(id))).toMatchObject({ version: 1, file });
      expect((await done(store.listEdits(id, 0))).edits).toMatchObject([
        { version: 1, edit: { label: 'Revision A issued' } },
      ]);
      expect(await store.listJobs({ removed: false })).toMatchObject([{ issued: 'A', revision: { letter: 'A' } }]);

      await save(1);
      expect(await done(store.openRevision(id, 'A'))).toEqual({ ...issued, file });
      expect(await store.openRevision(id, 'B')).toEqual({ kind: 'unknown' });
    });

    it('makes no edit where the file has the letter already', async () => {
      const { edit } = change(sampleFile(), '1', ({ job }) => {
        job.revision = { letter: 'A', status: 'for approval', date: '2026-11-30' };
      });
      await done(store.saveEdits(id, { base: 0, editor: 'tab', edits: [edit] }));
      expect(await done(store.issueRevision(id, { ...call, base: 1 }))).toMatchObject({ version: 1 });
      expect((await done(store.openJob(id))).version).toBe(1);
    });

    it('issues a letter once, and only the state that was looked at', async () => {
      await done(store.issueRevision(id, call));
      expect(await store.issueRevision(id, { ...call, base: 1 })).toEqual({
        kind: 'issued-before',
        issuedAt: '2026-11-30T09:00:00.000Z',
      });
      expect(await store.issueRevision(id, { ...call, letter: 'B' })).toMatchObject({ kind: 'conflict', version: 1 });
      await save(1);
      await done(store.issueRevision(id, { ...call, letter: 'B', base: 2 }));
      expect(await done(store.listRevisions(id))).toMatchObject([
        { letter: 'A', version: 1 },
        { letter: 'B', version: 3 },
      ]);
      expect(await store.listJobs({ removed: false })).toMatchObject([{ issued: 'B' }]);
    });

    /** One more edit, so that the draft goes on. */
    async function save(base: number): Promise<void> {
      const { file } = await done(store.openJob(id));
      const { edit } = change(file, `later ${base}`, ({ job }) => {
        job.project.number = 'later';
      });
      await done(store.saveEdits(id, { base, editor: 'tab', edits: [edit] }));
    }
  });
}
