import { dirname } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { expect, it } from 'vitest';
import { INSERT, load, makeGroup } from './checks/groups.ts';

const ROOT = dirname(dirname(dirname(fileURLToPath(import.meta.url))));

/** The engine as published, bundled for any runtime. */
async function bundleEngine(): Promise<string> {
  const { outputFiles } = await build({
    absWorkingDir: ROOT,
    entryPoints: ['src/engine/index.ts'],
    bundle: true,
    write: false,
    format: 'esm',
    platform: 'neutral',
    target: 'es2022',
    logLevel: 'silent',
  });
  return outputFiles[0]!.text;
}

it('runs alone: one file that imports nothing and needs neither Node nor a page', async () => {
  const code = await bundleEngine();
  expect(code).not.toMatch(/^import\s/m);
  for (const foreign of ['process.', 'require(', 'window.', 'new Date', 'Math.random', 'console.'])
    expect(code).not.toContain(foreign);
  const { anchorage } = await import(`data:text/javascript,${encodeURIComponent(code)}`);
  const result = anchorage(makeGroup(), load([20, 0, 0]));
  // 8.9 · √32 · 100^1.5 = 50 346 N; /1.5 = 33 564 N.
  const cone = result.rows.find(({ mode }: { mode: string }) => mode === 'concrete-cone');
  expect(cone.characteristic).toBeCloseTo(8.9 * Math.sqrt(32) * 1000, 6);
  expect(result.verdict).toBe('pass');
  expect(anchorage(makeGroup({ insert: { ...INSERT, qualification: null } }), null).verdict).toBe('not covered');
});
