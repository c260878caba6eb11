import { judgeEarlyAge } from '../../../../assess/yard/early-age.ts';
import { Answer } from '../../parts/answer.tsx';
import type { OpenPiece } from '../../state/read-piece.ts';
import { tellEarlyAge } from './early-age-words.ts';

/** The strength of a piece at its age, big: what it may not be asked to carry yet. */
export function EarlyAgePart({ piece, now }: { readonly piece: OpenPiece; readonly now: number }) {
  const age = judgeEarlyAge(piece.context, piece.plan, piece.state, piece.head.pour, now);
  const { kind, words, more } = tellEarlyAge(age);
  return (
    <Answer kind={kind} words={words}>
      {more.map((line) => (
        <p key={line}>{line}</p>
      ))}
      {age.mayNot.length > 0 && (
        <ul>
          {age.mayNot.map((line) => (
            <li key={line}>
              {line.charAt(0).toUpperCase()}
              {line.slice(1)}.
            </li>
          ))}
        </ul>
      )}
    </Answer>
  );
}
