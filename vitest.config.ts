import { defineConfig } from 'vitest/config';

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
          exclude: ['test/web/**'],
          pool: 'threads',
          sequence: { groupOrder: 0 },
        },
      },
      {
        // Browsers measure times: one file after another, and nothing beside them.
        extends: true,
        test: {
          name: 'screens',
          include: ['test/web/**/*.test.ts'],
          pool: 'forks',
          maxWorkers: 1,
          hookTimeout: 60_000,
          sequence: { groupOrder: 1 },
        },
      },
    ],
  },
});
