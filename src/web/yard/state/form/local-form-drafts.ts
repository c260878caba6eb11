import * as z from 'zod';
import type { FormDraftStore } from './form-session.ts';

const kept = z.array(z.number()).max(60);
const nameOf = (piece: string) => `onepour-form ${piece}`;

/** In the browser's own store: a handful of numbers, wanted at once. What cannot be read is as if nothing was typed. */
export const localFormDrafts: FormDraftStore = {
  read(piece) {
    const text = localStorage.getItem(nameOf(piece));
    if (text === null) return [];
    const read = kept.safeParse(JSON.parse(text));
    return read.success ? read.data : [];
  },
  keep(piece, values) {
    if (values.length === 0) localStorage.removeItem(nameOf(piece));
    else localStorage.setItem(nameOf(piece), JSON.stringify(values));
  },
};
