import { expect, test } from 'vitest';
import { drawUuid } from '../../src/web/parts/draw-uuid.ts';

test('a name by chance is a UUID of version 4, and never the same', () => {
  const names = Array.from({ length: 500 }, drawUuid);
  for (const name of names)
    expect(name).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-4[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
  expect(new Set(names).size).toBe(names.length);
});
