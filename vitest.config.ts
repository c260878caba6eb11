import { defineConfig } from 'vitest/config';

/** These measure times, or need a browser's own timing: nothing runs beside them. */
const SPEED = [
  ...['drag-speed', 'first-drawing', 'harness', 'large-job', 'job-worker', 'yard-cold-start'].map(
    (name) => `test/web/${name}.test.ts`,
  ),
  'test/server/load.test.ts',
];

export default defineConfig({
  test: {
    environment: 'node',
    testTimeout: 60_000,
    reporters: ['default', './scripts/count-reporter.mjs'],
    projects: [
      {
        extends: true,
        test: {
          name: 'rooms',
          include: ['test/**/*.test.ts'],
          exclude: ['test/web/**', ...SPEED],
          pool: 'threads',
          // Else one processor is left idle.
          maxWorkers: 2,
          // What these import keeps no state that a test could leave behind; read anew for each file it would take a third of the time.
          isolate: false,
          sequence: { groupOrder: 0 },
        },
      },
      {
        extends: true,
        test: {
          name: 'screens',
          include: ['test/web/**/*.test.ts'],
          exclude: SPEED,
          pool: 'forks',
          // Each has a server and a browser of its own: more at once only wait for each other.
          maxWorkers: 2,
          hookTimeout: 60_000,
          sequence: { groupOrder: 1 },
        },
      },
      {
        extends: true,
        test: {
          name: 'speed',
          include: SPEED,
          pool: 'forks',
          maxWorkers: 1,
          hookTimeout: 60_000,
          sequence: { groupOrder: 2 },
        },
      },
    ],
  },
});
