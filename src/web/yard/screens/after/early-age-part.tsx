import { type EarlyAge, judgeEarlyAge } from '../../../../assess/yard/early-age.ts';
import { tellEarlyAge, tellMayNot } from '../../../../say/piece-words.ts';
import type { OpenPiece } from '../../../pieces/read-piece.ts';
import { Answer, type AnswerKind } from '../../parts/answer.tsx';

/** Words that are read from across the shed; never green: that it may be lifted is for the lifting design to say. */
const HEADS: Readonly<Record<EarlyAge['kind'], { readonly kind: AnswerKind; readonly words: string }>> = {
  'not poured': { kind: 'plain', words: 'Not recorded as poured' },
  'no strength asked': { kind: 'unsure', words: 'NO LIFTING, NO LOADING YET' },
  'by model only': { kind: 'unsure', words: 'NO LIFTING, NO LOADING YET' },
  'not reached': { kind: 'wrong', words: 'NO LIFTING, NO LOADING' },
  reached: { kind: 'ask', words: 'Lifting: as the lifting design says, not before' },
};

/** The strength of a piece at its age: what may not be done to it yet. */
export function EarlyAgePart({ piece, now }: { readonly piece: OpenPiece; readonly now: number }) {
  const age = judgeEarlyAge(piece.context, piece.plan, piece.state, piece.head.pour, now);
  const { kind, words } = HEADS[age.kind];
  const lines = age.kind === 'not poured' ? [] : tellEarlyAge(age);
  return (
    <Answer kind={kind} words={words}>
      {lines.map((line) => (
        <p key={line}>{line}</p>
      ))}
      {age.mayNot.length > 0 && (
        <ul>
          {tellMayNot(age).map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      )}
    </Answer>
  );
}
