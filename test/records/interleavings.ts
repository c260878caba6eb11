import fc from 'fast-check';
import type { FactRecord, KindAndBody } from '../../src/records/record.ts';
import {
  cleared,
  clearedIf,
  correctionOf,
  held,
  measured,
  meet,
  override,
  PIECE,
  placed,
  poured,
  Tablet,
} from './writing.ts';

const OTHER_PIECE = '2'.repeat(24);
const TABLETS = 4;

/** Whole pieces: what is written of them. */
const OF_PIECE: readonly KindAndBody[] = [
  cleared,
  clearedIf,
  held,
  override,
  poured,
  { kind: 'comment', body: { text: 'wet' } },
];
const OF_ITEM: readonly KindAndBody[] = [measured(100), measured(104), placed(true), placed(false)];

type Act =
  | { readonly act: 'write'; readonly tablet: number; readonly piece: string; readonly what: number }
  | { readonly act: 'measure'; readonly tablet: number; readonly item: string; readonly what: number }
  | { readonly act: 'correct'; readonly tablet: number; readonly which: number }
  | { readonly act: 'meet'; readonly tablet: number; readonly other: number };

const tablet = fc.nat(TABLETS - 1);
const act: fc.Arbitrary<Act> = fc.oneof(
  {
    weight: 3,
    arbitrary: fc.record({
      act: fc.constant('write' as const),
      tablet,
      piece: fc.constantFrom(PIECE, PIECE, PIECE, OTHER_PIECE),
      what: fc.nat(OF_PIECE.length - 1),
    }),
  },
  {
    weight: 4,
    arbitrary: fc.record({
      act: fc.constant('measure' as const),
      tablet,
      item: fc.constantFrom('k1', 'k2'),
      what: fc.nat(OF_ITEM.length - 1),
    }),
  },
  { weight: 2, arbitrary: fc.record({ act: fc.constant('correct' as const), tablet, which: fc.nat() }) },
  { weight: 4, arbitrary: fc.record({ act: fc.constant('meet' as const), tablet, other: tablet }) },
);

export interface Played {
  readonly tablets: readonly Tablet[];
  readonly records: readonly FactRecord[];
}

/** Corrects one of the records that a tablet knows, if it knows any. */
function correctOne(writer: Tablet, which: number, second: number): void {
  const known = [...writer.known.values()].sort((a, b) => (a.id < b.id ? -1 : 1));
  const target = known[which % Math.max(1, known.length)];
  if (target !== undefined) writer.write(correctionOf(target.id), second, { piece: target.piece, item: target.item });
}

function play(acts: readonly Act[], clocks: readonly number[]): Played {
  const tablets = clocks.map((clock_s, number) => new Tablet(number + 1, clock_s));
  for (const [second, step] of acts.entries()) {
    const writer = tablets[step.tablet]!;
    if (step.act === 'meet') meet(writer, tablets[step.other]!);
    else if (step.act === 'correct') correctOne(writer, step.which, second);
    else if (step.act === 'measure') writer.write(OF_ITEM[step.what]!, second, { item: step.item });
    else writer.write(OF_PIECE[step.what]!, second, { piece: step.piece });
  }
  return { tablets, records: tablets.flatMap(({ written }) => written.map(({ record }) => record)) };
}

/** Four tablets that write, correct and meet at random; some have a clock that is a day wrong. */
export const played: fc.Arbitrary<Played> = fc
  .tuple(
    fc.array(act, { maxLength: 36, size: '+1' }),
    fc.array(fc.constantFrom(0, 0, -86_400, 86_400, 7), { minLength: TABLETS, maxLength: TABLETS }),
  )
  .map(([acts, clocks]) => play(acts, clocks));
