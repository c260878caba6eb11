import { expect, it } from 'vitest';
import { tellRefusal } from '../../src/say/refusal-words.ts';

it('tells the first reasons once each, and how many more there are', () => {
  expect(tellRefusal(['too long'])).toBe('too long');
  expect(tellRefusal(['too long', 'too long', 'no cover', 'too long'])).toBe('too long · no cover');
  expect(tellRefusal(['too long', 'no cover', 'no hole', 'no hole', 'no way'])).toBe(
    'too long · no cover · and 2 more',
  );
});
