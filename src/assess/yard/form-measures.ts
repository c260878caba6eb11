import type { FormCheck } from '../set-out/set-out.ts';

/** One length of the form that is taped before anything is measured from it. */
export interface FormMeasure {
  /** As the set-out and the record name it: `length`, `corner 1 to corner 2`, `depth 3`. */
  readonly what: string;
  /** What it should be [mm]. */
  readonly nominal: number;
  readonly kind: 'length' | 'width' | 'side' | 'diagonal' | 'depth';
}

/** Places where the depth of a form is taken. */
const DEPTHS = [1, 2, 3, 4] as const;

/** The lengths that the check of a form asks for, in the order of the sheet. */
export function listFormMeasures(form: FormCheck): readonly FormMeasure[] {
  const line = (kind: 'side' | 'diagonal') => (one: FormCheck['sides'][number]) =>
    ({ what: `${one.from} to ${one.to}`, nominal: one.length, kind }) as const;
  return [
    { what: 'length', nominal: form.length, kind: 'length' },
    { what: 'width', nominal: form.width, kind: 'width' },
    ...form.sides.map(line('side')),
    ...form.diagonals.map(line('diagonal')),
    ...DEPTHS.map((k) => ({ what: `depth ${k}`, nominal: form.depth, kind: 'depth' }) as const),
  ];
}
