import { placesOf } from '../../../../say/number-runs.ts';
import { WET_SETTING_CAUTION } from '../../../../say/placing-words.ts';
import type { OpenPiece } from '../../../pieces/read-piece.ts';
import { Answer } from '../../parts/answer.tsx';
import { tellInsert } from '../../state/tell-insert.ts';
import { findScreed, isRight } from './screed-stops.ts';

/** What was found of one insert after screeding, and what to do about it. */
export function ScreedAnswer({ piece, number }: { readonly piece: OpenPiece; readonly number: number }) {
  const insert = piece.report.inserts.find(({ item }) => item.number === number);
  if (insert === undefined) return null;
  const record = findScreed(piece.state, piece.plan, insert.item);
  const off =
    record === null || isRight(record)
      ? []
      : [
          ...(record.body.level ? [] : [tellOff(record.body.level_mm)]),
          ...(record.body.plumb ? [] : ['not plumb: set it upright, tamp the concrete round it']),
          ...(record.body.cap ? [] : ['no cap: clean the thread now, put a cap on']),
        ];
  const { kind, words, more } = tellInsert(insert);
  return (
    <>
      {off.length > 0 && (
        <Answer kind="move" words={`Put it right while it moves: ${placesOf([number])}`}>
          <ul>
            {off.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
          <p>Then look again. {WET_SETTING_CAUTION}</p>
        </Answer>
      )}
      {(off.length === 0 || insert.state === 'out') && (
        <Answer kind={kind} words={`${number}: ${words}`} isSmall={off.length > 0}>
          {more.map((line) => (
            <p key={line}>{line}</p>
          ))}
        </Answer>
      )}
    </>
  );
}

function tellOff(level_mm: number | null): string {
  if (level_mm === null) return 'not level; by how much was not taken';
  if (level_mm === 0) return 'flush: the screed hits it; press it down to its recess';
  return level_mm > 0 ? `${level_mm} mm below the face` : `${-level_mm} mm PROUD of the face: press it down`;
}
