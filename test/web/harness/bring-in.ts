import { dirname } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import type { Page } from 'playwright-core';

const ROOT = dirname(dirname(dirname(dirname(fileURLToPath(import.meta.url)))));

/**
 * Makes what a source file exports callable in a page, as `globalThis[name]`: for parts that no screen shows on their own.
 * @param file path within the project
 */
export async function bringIn(page: Page, file: string, name: string): Promise<void> {
  const { outputFiles } = await build({
    absWorkingDir: ROOT,
    entryPoints: [file],
    bundle: true,
    write: false,
    format: 'iife',
    globalName: 'brought',
    target: 'es2022',
    logLevel: 'warning',
  });
  await page.evaluate(`${outputFiles[0]!.text}\nglobalThis[${JSON.stringify(name)}] = brought;`);
}
