import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['test/**/*.test.ts'],
    environment: 'node',
    pool: 'threads',
    testTimeout: 60_000,
    reporters: ['default', './scripts/count-reporter.mjs'],
  },
});
