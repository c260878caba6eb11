import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { assessJob } from '../../src/assess/assess-job.ts';
import type { ConnectionAnswer } from '../../src/assess/connection-answer.ts';
import type { JobFile } from '../../src/job/documents/job-file.ts';
import { readJobDocument } from '../../src/job/read-job-document.ts';
import { bringIn } from './harness/bring-in.ts';
import type { Screen } from './harness/screen.ts';
import { useOffice } from './harness.ts';

const office = useOffice();
const CLIENT = 'src/web/parts/worker-client.ts';

interface Brought {
  readonly client: typeof import('../../src/web/parts/worker-client.ts');
}

function readDemo(): JobFile {
  const read = readJobDocument(JSON.parse(readFileSync('demo/job.json', 'utf8')));
  if (!read.ok) throw new Error('the demo job cannot be read');
  return read.file;
}

/** The demo so many times over, each with names of its own. */
function multiply(file: JobFile, times: number): JobFile {
  const copies = Array.from({ length: times }, (_, k) => k);
  const { job } = file;
  const rename = <T extends { readonly key: string }>(entry: T, k: number): T => ({
    ...entry,
    key: `${entry.key}-${k}`,
  });
  return {
    ...file,
    job: {
      ...job,
      pours: [],
      panels: copies.flatMap((k) => job.panels.map((one) => ({ ...rename(one, k), mark: `${one.mark}-${k}` }))),
      castIns: copies.flatMap((k) => job.castIns.map((one) => ({ ...rename(one, k), panel: `${one.panel}-${k}` }))),
      connections: copies.flatMap((k) =>
        job.connections.map((one) => ({ ...rename(one, k), mark: `${one.mark}-${k}`, panel: `${one.panel}-${k}` })),
      ),
    },
  };
}

async function openClient(): Promise<Screen> {
  const screen = await office.open('/');
  await bringIn(screen.page, CLIENT, 'client');
  return screen;
}

/** Runs in the page. */
async function assessAll(file: JobFile): Promise<{ readonly answers: ConnectionAnswer[]; readonly told: number[] }> {
  // Put there by `bringIn`.
  const { client } = globalThis as unknown as Brought;
  await client.askJobWorker((worker) => worker.open(file));
  const answers: ConnectionAnswer[] = [];
  const told: number[] = [];
  const outcome = await client.assessInWorker(
    null,
    (lot) => {
      answers.push(...lot.map(({ answer }) => answer));
    },
    (done) => {
      told.push(done);
    },
  );
  if (outcome.kind !== 'done' || outcome.computed !== answers.length) throw new Error('some answers were not told');
  return { answers, told };
}

it('answers a whole job as the shell does', async () => {
  const screen = await openClient();
  const demo = readDemo();
  const { answers, told } = await screen.page.evaluate(assessAll, demo);
  expect(answers).toEqual(assessJob(demo).connections);
  expect(told.at(-1)).toBe(demo.job.connections.length);
});

it('hears an edit and a newer question while it computes a large job', async () => {
  const screen = await openClient();
  const large = multiply(readDemo(), 20);
  const seen = await screen.page.evaluate(async (file) => {
    // Put there by `bringIn`.
    const { client } = globalThis as unknown as Brought;
    await client.askJobWorker((worker) => worker.open(file));
    const count = { older: 0, newer: 0 };
    const older = client.assessInWorker(
      null,
      (lot) => {
        count.older += lot.length;
      },
      () => {},
    );
    while (count.older === 0) await new Promise((resolve) => setTimeout(resolve, 1));
    const start = performance.now();
    const path = ['job', 'castIns', 0, 'x_mm'];
    const change = { op: 'replace' as const, path, value: file.job.castIns[0]!.x_mm + 1 };
    const edit = { id: 'e1', label: 'moved', at: '2026-03-04T05:06:07Z', changes: [change], back: [change] };
    await client.askJobWorker((worker) => worker.apply(edit));
    const heardAfter = performance.now() - start;
    const newer = await client.assessInWorker(
      null,
      (lot) => {
        count.newer += lot.length;
      },
      () => {},
    );
    return { ...count, heardAfter, ends: [await older, newer] };
  }, large);
  expect(seen.ends).toEqual([{ kind: 'replaced' }, { kind: 'done', computed: seen.newer }]);
  const { length } = large.job.connections;
  expect(seen.older).toBeLessThan(length);
  expect(seen.older + seen.newer).toBeGreaterThanOrEqual(length);
  // A lot takes 12 ms; what is more is the machine's.
  expect(seen.heardAfter).toBeLessThan(250);
});

it('says what is wrong when its script does not come, and starts once it does', async () => {
  const screen = await office.open('/', { context: { serviceWorkers: 'block' } });
  await bringIn(screen.page, CLIENT, 'client');
  await screen.context.route('**/assets/worker-*.js', (route) => route.abort());
  await expect(screen.page.evaluate(assessAll, readDemo())).rejects.toThrow(
    'the part "onepour-worker" of the page did not start or broke off',
  );
  await screen.context.unroute('**/assets/worker-*.js');
  const { answers } = await screen.page.evaluate(assessAll, readDemo());
  expect(answers.length).toBeGreaterThan(0);
  screen.faults.allow(/worker-/);
});
