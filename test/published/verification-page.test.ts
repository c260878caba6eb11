// docs/verification.md must be what the sources in test/published/ and the engine give today.

import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { writeVerificationPage } from './verification-page.ts';

it('docs/verification.md is in step ("npm run verification" writes it anew)', () => {
  const committed = readFileSync(new URL('../../docs/verification.md', import.meta.url), 'utf8');
  expect(committed).toBe(writeVerificationPage());
});
