import { describe } from 'vitest';
import { refuseAll } from './wrong-inputs.ts';

const right = {
  calc: 'coating-life',
  category: 'C3',
  coating_um: 55,
  wanted_years: 50,
  galvanised: { kind: 'thread', size_mm: 16 },
};
const without = (key: keyof typeof right) => Object.fromEntries(Object.entries(right).filter(([name]) => name !== key));
const article = (changes: object) => ({ ...right, galvanised: { ...right.galvanised, ...changes } });

describe('wrong inputs of coating-life', () => {
  refuseAll(right, [
    ['no category', without('category'), 'category', /"C1", "C2", "C3", "C4", "C5", "CX"/],
    ['no coating', without('coating_um'), 'coating_um', /thickness of the zinc/],
    ['a category in small letters', { ...right, category: 'c3' }, 'category', /"C3"/],
    ['an old category', { ...right, category: 'C5-M' }, 'category', /"C5"/],
    ['a category that is none', { ...right, category: 'C6' }, 'category', /"CX"/],
    ['an exposure class', { ...right, category: 'XC3' }, 'category', /"C3"/],
    ['a category as number', { ...right, category: 3 }, 'category', /"C3"/],
    ['a category null', { ...right, category: null }, 'category', /"C3"/],
    ['a negative coating', { ...right, coating_um: -1 }, 'coating_um', /0 to 2000 µm/],
    ['a coating in metres', { ...right, coating_um: 55_000 }, 'coating_um', /0 to 2000 µm/],
    ['a coating as text', { ...right, coating_um: '55' }, 'coating_um', /µm/],
    ['a coating that is no number', { ...right, coating_um: Number.NaN }, 'coating_um', /µm/],
    ['an endless coating', { ...right, coating_um: Number.POSITIVE_INFINITY }, 'coating_um', /µm/],
    ['a coating as list', { ...right, coating_um: [45, 55] }, 'coating_um', /µm/],
    ['a coating in mm by its key', { ...without('coating_um'), coating_mm: 0.055 }, 'coating_um', /µm/],
    ['a wanted life of nothing', { ...right, wanted_years: 0 }, 'wanted_years', /above 0/],
    ['a wanted life as text', { ...right, wanted_years: '50' }, 'wanted_years', /wanted life/],
    ['an article as word', { ...right, galvanised: 'thread' }, 'galvanised', /\{ "kind"/],
    [
      'an article of another kind',
      article({ kind: 'plate' }),
      'galvanised.kind',
      /"thread", "centrifuged", "not centrifuged"/,
    ],
    ['an article without size', article({ size_mm: undefined }), 'galvanised.size_mm', /thread diameter/],
    ['an article of no size', article({ size_mm: 0 }), 'galvanised.size_mm', /above 0/],
    ['an unknown key in the article', article({ spun: true }), 'galvanised.spun', /is not a key/],
    ['an unknown key', { ...right, coating: 55 }, 'coating', /is not a key/],
  ]);
});
