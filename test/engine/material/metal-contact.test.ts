import { describe, expect, it } from 'vitest';
import type { Finish } from '../../../src/engine/material/finish.ts';
import { judgeContact } from '../../../src/engine/material/metal-contact.ts';

const outdoors = { category: 'C4', exposure: 'XC4' } as const;
const contact = (
  insert: Finish,
  bolt: Finish,
  where: Parameters<typeof judgeContact>[2] = outdoors,
  ratio: number | null = null,
) => judgeContact({ name: 'inserts', finish: insert }, { name: 'bolts', finish: bolt }, where, ratio);

// Source of what is expected: common practice, as docs/choices.md tells it.
describe('two metals in contact', () => {
  it('outdoors the zinc beside stainless steel is eaten, whichever part has it', () => {
    expect(contact('galvanised', 'stainless')).toMatchObject({ kind: 'eaten', suffers: 'inserts' });
    expect(contact('stainless', 'zinc')).toMatchObject({ kind: 'eaten', suffers: 'bolts' });
    expect(contact('galvanised', 'stainless')!.text).toMatch(
      /^galvanised inserts against stainless bolts in C4: .*the zinc is eaten/,
    );
  });

  it('plain steel rusts beside stainless steel and eats the zinc beside it', () => {
    expect(contact('plain', 'stainless')).toMatchObject({ suffers: 'inserts', text: expect.stringContaining('rusts') });
    expect(contact('plain', 'galvanised')).toMatchObject({
      suffers: 'bolts',
      text: expect.stringContaining('the zinc is eaten'),
    });
  });

  it('two kinds of zinc, and any finish with itself, are one metal', () => {
    expect(contact('zinc', 'galvanised')).toBeNull();
    for (const finish of ['plain', 'zinc', 'galvanised', 'stainless'] as const)
      expect(contact(finish, finish)).toBeNull();
  });

  it('indoors nothing is said, from C3 on and in the wet it is', () => {
    expect(contact('galvanised', 'stainless', { category: 'C2', exposure: 'XC1' })).toBeNull();
    expect(contact('galvanised', 'stainless', { category: 'C3', exposure: 'XC1' })).not.toBeNull();
    expect(contact('galvanised', 'stainless', { category: 'C2', exposure: 'XC4' })).not.toBeNull();
    expect(contact('galvanised', 'stainless', { category: 'C1', exposure: 'XS1' })).not.toBeNull();
  });

  it('a small stainless bolt does a large zinc plate little harm', () => {
    expect(contact('galvanised', 'stainless', outdoors, 0.1)!.kind).toBe('slight');
    expect(contact('galvanised', 'stainless', outdoors, 0.11)!.kind).toBe('eaten');
    expect(contact('galvanised', 'stainless', outdoors, null)!.kind).toBe('eaten');
  });
});
