import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { describeCoverage } from '../../src/engine/checks/coverage.ts';
import { onepour } from './run-command.ts';

const page = readFileSync(new URL('../../docs/editions.md', import.meta.url), 'utf8');

describe('onepour editions', () => {
  it('prints the table of docs/editions.md', () => {
    const { status, stdout } = onepour(['editions']);
    expect(status).toBe(0);
    expect(page).toContain(`\`\`\`text\n${stdout.trimEnd()}\n\`\`\``);
  });

  it('gives the same as JSON', () => {
    const { stdout } = onepour(['editions', '--json']);
    expect(JSON.parse(stdout)).toEqual(describeCoverage());
  });
});

// Common practice and the contract: these never pass until a rule covers them.
describe('what never passes', () => {
  it.each([
    'seismic action',
    'fire',
    'fatigue',
    'lifting',
    'bracing',
    'two insert types in one group',
    'post-installed repair',
    'insert set into wet concrete',
    'no qualification document',
    'foot not a full head, no test',
  ])('%s', (subject) => {
    const row = describeCoverage().find((one) => one.subject === subject)!;
    expect(new Set(Object.values(row.answers))).toEqual(new Set(['not covered']));
  });
});
