import type { OpenPiece } from './read-piece.ts';

/** Where a piece lies, in words: `pour T13`, `Bed 2` as the yard calls it; empty: neither is known. */
export function namePlace({ head, context }: Pick<OpenPiece, 'head' | 'context'>): readonly string[] {
  const { pour, bed } = head;
  const { beds } = context.index.file.library.yard;
  return [
    ...(pour === null ? [] : [`pour ${pour}`]),
    ...(bed === null ? [] : [beds.find(({ id }) => id === bed)?.name ?? `bed ${bed}`]),
  ];
}
