// Keeps one test runner warm in a copy of the project: gets { tests, changed }, forgets the changed files, runs the
// tests, and answers green, red (a test failed) or broken (nothing failed, but a file did not load).

import { join } from 'node:path';
import { createVitest } from 'vitest/node';

const root = process.cwd();
let vitest = null;

/** One red test is enough: the rest of the run is called off. */
const reporter = {
  onTestCaseResult(test) {
    if (test.result().state === 'failed') void vitest.cancelCurrentRun('test-failure');
  },
};

vitest = await createVitest(
  'test',
  { watch: false, root, reporters: [reporter], maxWorkers: 1, fileParallelism: false },
  { cacheDir: join(root, '.vite') },
);

process.on('message', async ({ tests, changed }) => {
  for (const file of changed) vitest.invalidateFile(join(root, file));
  try {
    const specifications = tests.map((test) => findProject(join(root, test)).createSpecification(join(root, test)));
    const { testModules, unhandledErrors } = await vitest.runTestSpecifications(specifications);
    // The runner hands back every file it ever ran: one left red by an earlier fault says nothing about this one.
    const asked = new Set(specifications.map(({ moduleId }) => moduleId));
    process.send(
      judge(
        testModules.filter(({ moduleId }) => asked.has(moduleId)),
        unhandledErrors,
      ),
    );
  } catch (error) {
    process.send({ kind: 'broken', note: String(error) });
  }
});

/** The project of vitest.config.ts that a test belongs to: only there a changed file is read again. */
function findProject(test) {
  const found = vitest.projects.find((project) => project.matchesTestGlob(test));
  if (found === undefined) throw new Error(`${test} belongs to no project of vitest.config.ts`);
  return found;
}

function judge(modules, unhandledErrors) {
  const tests = modules.flatMap((module) => [...module.children.allTests()]);
  const failed = tests.find((test) => test.result().state === 'failed');
  if (failed !== undefined) return { kind: 'red', note: failed.fullName };
  const suite = modules.flatMap((module) => [...module.children.allSuites()]).find((one) => one.errors().length > 0);
  if (suite !== undefined) return { kind: 'red', note: suite.fullName };
  const broken = [...modules.flatMap((module) => module.errors()), ...unhandledErrors][0];
  if (broken !== undefined) return { kind: 'broken', note: broken.message.split('\n')[0] };
  return tests.length === 0 ? { kind: 'broken', note: 'the files hold no test' } : { kind: 'green', note: '' };
}
