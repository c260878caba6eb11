import { readFileSync } from 'node:fs';
import { beforeAll, expect, it } from 'vitest';
import { assessJob } from '../../../src/assess/assess-job.ts';
import type { JobFile } from '../../../src/job/documents/job-file.ts';
import type { Edit } from '../../../src/job/edit/edit.ts';
import { editJob, type Recipe } from '../../../src/job/edit/edit-job.ts';
import { readJobDocument } from '../../../src/job/read-job-document.ts';
import type { KeyedAnswer } from '../../../src/web/worker/assess-run.ts';
import { JobWorker } from '../../../src/web/worker/job-worker.ts';

let demo: JobFile;

beforeAll(() => {
  const read = readJobDocument(JSON.parse(readFileSync('demo/job.json', 'utf8')));
  if (!read.ok) throw new Error('the demo job cannot be read');
  demo = read.file;
});

/** A worker's page: its own copy of the job, and the answers that it was told. */
class Page {
  readonly worker = new JobWorker();
  readonly answers = new Map<string, KeyedAnswer['answer']>();
  file: JobFile;
  #edits = 0;

  constructor(file: JobFile) {
    this.file = file;
    // A copy, as a message carries it.
    this.worker.open(structuredClone(file));
  }

  edit(recipe: Recipe): void {
    this.#edits += 1;
    const made = editJob(this.file, 'edit', recipe, { id: `e${this.#edits}`, at: '2026-03-04T05:06:07Z' });
    if (made === null) throw new Error('nothing was edited');
    this.file = made.file;
    this.worker.apply(structuredClone(made.edit) as Edit);
  }

  /** Keys of the connections that were computed. */
  async assess(marks: readonly string[] | null = null): Promise<readonly string[]> {
    const keys: string[] = [];
    const outcome = await this.worker.assess(
      marks,
      (lot) => {
        for (const { key, answer } of lot) {
          keys.push(key);
          this.answers.set(key, answer);
        }
      },
      () => {},
    );
    expect(outcome).toEqual({ kind: 'done', computed: keys.length });
    return keys;
  }

  keysOf(isWanted: (panel: string) => boolean): readonly string[] {
    return this.file.job.connections.filter(({ panel }) => isWanted(panel)).map(({ key }) => key);
  }

  /** All answers are those of the whole job computed at once. */
  check(): void {
    const wanted = assessJob(this.file).connections;
    expect(this.file.job.connections.map(({ key }) => this.answers.get(key))).toEqual(wanted);
  }
}

it('answers a whole job once', async () => {
  const page = new Page(demo);
  expect(await page.assess()).toEqual(page.keysOf(() => true));
  page.check();
  expect(await page.assess()).toEqual([]);
});

it('computes the connections of the panels that an edit touched, and no other', async () => {
  const page = new Page(demo);
  await page.assess();
  const { panel } = demo.job.connections[0]!;
  page.edit(({ job }) => {
    job.castIns.find((castIn) => castIn.panel === panel)!.x_mm += 10;
  });
  expect(await page.assess()).toEqual(page.keysOf((mark) => mark === panel));
  page.check();
});

it('computes nothing else where entries only move up in their list', async () => {
  const page = new Page(demo);
  await page.assess();
  const { panel, key } = demo.job.connections[0]!;
  page.edit(({ job }) => {
    job.connections.shift();
  });
  expect(await page.assess()).toEqual(page.keysOf((mark) => mark === panel));
  page.answers.delete(key);
  page.check();
  page.edit(({ job }) => {
    job.project.name = 'Another name';
  });
  expect(await page.assess()).toEqual([]);
});

it('computes the connections of both panels where one moves from one to the other', async () => {
  const page = new Page(demo);
  await page.assess();
  const loose = demo.job.castIns.find(({ role }) => role !== 'fixing')!;
  const other = demo.job.panels.find(({ mark }) => mark !== loose.panel)!.mark;
  page.edit(({ job }) => {
    const moved = job.castIns.find(({ key }) => key === loose.key)!;
    moved.panel = other;
    moved.id = 'moved';
  });
  expect(await page.assess()).toEqual(page.keysOf((mark) => mark === other || mark === loose.panel));
  page.check();
});

it('computes all anew after a change of the concrete, the rules or the catalogue', async () => {
  const page = new Page(demo);
  await page.assess();
  const recipes: readonly Recipe[] = [
    ({ job }) => {
      job.project.name = 'Harder';
      const [first] = job.concretes;
      first!.id = `${first!.id}x`;
      for (const panel of job.panels) if (panel.concrete === demo.job.concretes[0]!.id) panel.concrete = first!.id;
    },
    ({ library }) => {
      library.rules.defaults.cracked = !library.rules.defaults.cracked;
    },
    ({ library }) => {
      library.catalogue.items[0]!.name = 'Another name';
    },
  ];
  for (const recipe of recipes) {
    page.edit(recipe);
    expect(await page.assess()).toEqual(page.keysOf(() => true));
    page.check();
  }
});

it('computes the panels that are asked for, and the rest when it is asked', async () => {
  const page = new Page(demo);
  const mark = demo.job.connections.at(-1)!.panel;
  expect(await page.assess([mark])).toEqual(page.keysOf((panel) => panel === mark));
  expect(await page.assess()).toEqual(page.keysOf((panel) => panel !== mark));
  page.check();
});

it('is taken over by a newer question, and loses no answer', async () => {
  const page = new Page(demo);
  const keys: string[] = [];
  const tell = (lot: readonly KeyedAnswer[]) => {
    for (const { key, answer } of lot) {
      keys.push(key);
      page.answers.set(key, answer);
    }
  };
  const older = page.worker.assess(null, tell, () => {});
  const newer = page.worker.assess(null, tell, () => {});
  expect((await older).kind).toBe('replaced');
  expect((await newer).kind).toBe('done');
  expect([...keys].sort()).toEqual([...page.keysOf(() => true)].sort());
  page.check();
});

it('takes an edit in that comes while it computes', async () => {
  const page = new Page(demo);
  const last = demo.job.connections.at(-1)!.panel;
  const answered: string[] = [];
  let isEdited = false;
  const outcome = await page.worker.assess(
    null,
    (lot) => {
      for (const { key, answer } of lot) {
        answered.push(key);
        page.answers.set(key, answer);
      }
      if (isEdited) return;
      isEdited = true;
      page.edit(({ job }) => {
        for (const castIn of job.castIns) if (castIn.panel === last) castIn.y_mm += 5;
      });
    },
    () => {},
  );
  expect(outcome.kind).toBe('done');
  page.check();
});

it('tells how far it is, up to the end', async () => {
  const page = new Page(demo);
  const told: (readonly [number, number])[] = [];
  await page.worker.assess(
    null,
    () => {},
    (done, total) => {
      told.push([done, total]);
    },
  );
  const total = demo.job.connections.length;
  expect(told.at(-1)).toEqual([total, total]);
  expect(told.every(([done, of], k) => of === total && done >= (told[k - 1]?.[0] ?? 0))).toBe(true);
});

it('says that no job is open', async () => {
  const worker = new JobWorker();
  await expect(
    worker.assess(
      null,
      () => {},
      () => {},
    ),
  ).rejects.toThrow('no job is open in the worker; expected `open` first');
  expect(() => worker.apply({ id: 'e', label: 'x', at: '2026-03-04T05:06:07Z', changes: [], back: [] })).toThrow(
    'no job is open',
  );
});

it('keeps the job as it was when an edit does not fit', async () => {
  const page = new Page(demo);
  await page.assess();
  const wrong: Edit = {
    id: 'wrong',
    label: 'wrong',
    at: '2026-03-04T05:06:07Z',
    changes: [{ op: 'replace', path: ['job', 'nothing', 'there'], value: 1 }],
    back: [{ op: 'replace', path: ['job', 'nothing', 'there'], value: 1 }],
  };
  expect(() => page.worker.apply(wrong)).toThrow();
  expect(await page.assess()).toEqual([]);
  page.check();
});
