import type { OpenPiece } from '../../../pieces/read-piece.ts';
import { Answer } from '../../parts/answer.tsx';
import { isSetWrong } from '../../parts/recognised-answer.tsx';
import { tellInsert } from '../../state/tell-insert.ts';
import { TapedValues } from './taped-values.tsx';
import styles from './walk-screen.module.css';

/** A set that is mirrored or taped from another corner is put right as a whole: the way back of one insert alone would mislead. */
const SET_WRONG = {
  kind: 'wrong',
  words: 'Do not move it by itself.',
  more: ['The whole set looks wrong, as said above. Find out which it is, put that right, then tape again.'],
} as const;

/** What was found of an insert that is not good, and what to do: words first, then the numbers. */
export function InsertAnswer({ piece, number }: { readonly piece: OpenPiece; readonly number: number }) {
  const insert = piece.report.inserts.find(({ item }) => item.number === number);
  if (insert === undefined) return null;
  const { kind, words, more } = isSetWrong(piece.report.recognised) ? SET_WRONG : tellInsert(insert);
  return (
    <div class={styles.stack}>
      <Answer kind={kind} words={`${number}: ${words}`}>
        {more.map((line) => (
          <p key={line}>{line}</p>
        ))}
      </Answer>
      <TapedValues insert={insert} />
    </div>
  );
}
