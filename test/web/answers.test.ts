import { beforeEach, expect, test, vi } from 'vitest';
import { assessConnection } from '../../src/assess/assess-connection.ts';
import type { Edit } from '../../src/job/edit/edit.ts';
import { resolveConnection } from '../../src/job/resolve/resolve-connection.ts';
import { Answers } from '../../src/web/office/state/answers.ts';
import type { Follower, JobSession } from '../../src/web/office/state/session.ts';
import { HeldJob } from '../../src/web/worker/held-job.ts';
import { change, sampleFile } from '../store/edits.ts';

/** The worker of the test, in this thread; null: it broke off. */
const worker = vi.hoisted(() => ({ held: null as unknown as HeldJob | null, opened: 0, isFailing: false }));

vi.mock('../../src/web/parts/worker-client.ts', () => ({
  askJobWorker: async (ask: (remote: object) => unknown) =>
    ask({
      open: (file: ConstructorParameters<typeof HeldJob>[0]) => {
        worker.opened += 1;
        worker.held = new HeldJob(file);
      },
      apply: (edit: Edit) => {
        if (worker.held === null) throw new Error('no job is open');
        worker.held.apply(edit);
      },
    }),
  assessInWorker: async (_marks: null, onAnswers: (lot: object[]) => void) => {
    const { held } = worker;
    if (held === null || worker.isFailing) throw new Error('broke off');
    for (const connection of held.listStale(null)) {
      onAnswers([{ key: connection.key, answer: assessConnection(resolveConnection(held.index, connection)) }]);
      held.settle(connection.key);
    }
    return { kind: 'done', computed: 0 };
  },
}));

/** As much of a session as answers follow. */
function follow() {
  const session = { file: sampleFile(), followers: [] as Follower[] };
  const answers = new Answers({
    get file() {
      return session.file;
    },
    follow: (follower: Follower) => {
      session.followers.push(follower);
      follower.onFile(session.file);
      return () => {};
    },
  } as unknown as JobSession);
  const make = (id: string) => {
    const { file, edit } = change(session.file, id, ({ job }) => {
      job.project.number = id;
    });
    session.file = file;
    for (const follower of session.followers) follower.onEdit(edit, file);
  };
  return { answers, session, make };
}

const isComplete = ({ answers, session }: ReturnType<typeof follow>) =>
  expect.poll(() => answers.byKey.value.size).toBe(session.file.job.connections.length);

beforeEach(() => {
  Object.assign(worker, { held: null, opened: 0, isFailing: false });
});

test('a worker that broke off gets the job as it is now, and every answer comes anew', async () => {
  const following = follow();
  await isComplete(following);
  worker.held = null;
  following.make('one');
  following.make('two');
  await expect.poll(() => (worker.held as HeldJob | null)?.file).toEqual(following.session.file);
  await isComplete(following);
  following.answers.close();
});

test('when a job cannot be computed no earlier answer is left standing', async () => {
  const following = follow();
  await isComplete(following);
  expect(following.answers.byKey.value.size).toBeGreaterThan(0);
  worker.isFailing = true;
  following.make('one');
  await expect.poll(() => following.answers.byKey.value.size).toBe(0);
  following.answers.close();
});
