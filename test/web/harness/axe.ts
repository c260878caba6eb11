import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type axe from 'axe-core';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';

const SOURCE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const SERIOUS = new Set(['serious', 'critical']);
const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

/** Fails with each serious or critical fault of access that axe finds on the page as it is now, and where. */
export async function checkAccess(page: Page): Promise<void> {
  await page.evaluate(SOURCE);
  const { violations } = await page.evaluate(async (tags) => {
    // axe puts itself there.
    const { axe } = globalThis as unknown as { axe: typeof import('axe-core') };
    return axe.run(document, { runOnly: { type: 'tag', values: tags }, resultTypes: ['violations'] });
  }, TAGS);
  const found = violations.filter(({ impact }) => SERIOUS.has(impact ?? '')).flatMap(describe);
  expect(found, `faults that axe finds:\n${found.join('\n')}`).toEqual([]);
}

function describe({ id, help, nodes }: axe.Result): string[] {
  return nodes.map(({ target, failureSummary }) => `${id} (${help}): ${target.join(' ')}: ${failureSummary ?? ''}`);
}
