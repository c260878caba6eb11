import type { OpenPiece } from '../../../pieces/read-piece.ts';
import { Answer } from '../../parts/answer.tsx';
import { tellInsert } from '../../state/tell-insert.ts';
import { TapedValues } from './taped-values.tsx';
import styles from './walk-screen.module.css';

/** What was found of an insert that is not good, and what to do: words first, then the numbers. */
export function InsertAnswer({ piece, number }: { readonly piece: OpenPiece; readonly number: number }) {
  const insert = piece.report.inserts.find(({ item }) => item.number === number);
  if (insert === undefined) return null;
  const { kind, words, more } = tellInsert(insert);
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
