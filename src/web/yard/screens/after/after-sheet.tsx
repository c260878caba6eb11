import type { StrippedReport } from '../../../../assess/yard/after-stripping.ts';
import { tellPartBack } from '../../../../say/piece-words.ts';
import type { OpenPiece } from '../../../pieces/read-piece.ts';
import { Answer } from '../../parts/answer.tsx';
import styles from './after.module.css';
import { EarlyAgePart } from './early-age-part.tsx';

/** How the piece stands after stripping: its age first, then what came back, what is open, what is not as it must be. */
export function AfterSheet({
  piece,
  stripped,
  now,
}: {
  readonly piece: OpenPiece;
  readonly stripped: StrippedReport;
  readonly now: number;
}) {
  const { isStripped, isOpenedUp, parts, inserts } = stripped;
  const missing = parts.filter(({ out, back }) => back !== null && back < out);
  const faulty = inserts.filter(({ faults }) => faults.length > 0);
  return (
    <>
      <EarlyAgePart piece={piece} now={now} />
      {!isStripped && <Answer kind="plain" words="Not stripped yet" />}
      {isStripped &&
        (missing.length === 0 ? (
          <Answer kind="good" isSmall words="Stripped; everything that is used again is back" />
        ) : (
          <Answer kind="wrong" words="Stripped; not everything is back">
            <ul>
              {missing.map((part) => (
                <li key={part.part}>
                  {tellPartBack(part)}. Look for it now: what stays in the panel blocks an insert.
                </li>
              ))}
            </ul>
          </Answer>
        ))}
      {isOpenedUp ? (
        <Answer
          kind={faulty.length === 0 ? 'good' : 'wrong'}
          words={
            faulty.length === 0
              ? `All ${inserts.length} inserts opened up`
              : `Opened up; ${faulty.length} of ${inserts.length} not as they must be`
          }
        />
      ) : (
        isStripped && (
          <Answer kind="move" words="Open the inserts up">
            <p>
              Plates off, mortar out, a bolt of the final finish turned in by hand, the cap back in. Never tap a
              galvanised thread, never cut a bolt to suit.
            </p>
          </Answer>
        )
      )}
      {faulty.length > 0 && (
        <ul class={styles.faults}>
          {faulty.map(({ item, faults }) => (
            <li key={item.number}>
              <strong>No. {item.number}</strong>: {faults.join('; ')}
            </li>
          ))}
        </ul>
      )}
    </>
  );
}
