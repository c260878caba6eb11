import type { BoltUpCard } from '../../../../assess/bolt-up/bolt-up-report.ts';
import { sayMeasures } from '../../../../say/bolt-up-words.ts';
import { NEVER_ALONE, ON_SITE } from '../../../../say/fit-words.ts';
import { places } from '../../../pieces/places.ts';
import type { OpenPiece } from '../../../pieces/read-piece.ts';
import { Answer } from '../../parts/answer.tsx';
import { BigKey, BigLink } from '../../parts/big-key.tsx';
import { FrameKeys } from '../../parts/frame-keys.tsx';
import styles from './bolts.module.css';

/** The bracket does not go on: what may be done, what not, what to measure and send. */
export function DoesNotGoOn({
  piece,
  card,
  onSay,
  onBack,
}: {
  readonly piece: OpenPiece;
  readonly card: BoltUpCard;
  readonly onSay: () => void;
  readonly onBack: () => void;
}) {
  return (
    <>
      <Answer kind="wrong" words={`${card.connection.mark} does not go on`}>
        <p>{NEVER_ALONE}</p>
        <p>{ON_SITE}</p>
      </Answer>
      <h2>Measure and send</h2>
      <ul class={styles.list}>
        {sayMeasures(card).map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
      <FrameKeys>
        <BigKey onPress={onBack}>Back</BigKey>
        <BigLink to={places.survey(piece.id)} more="four numbers, then the answer">
          Measure it now
        </BigLink>
        <BigKey kind="stop" isTall meaning="no" onPress={onSay}>
          Write down: it does not go on
        </BigKey>
      </FrameKeys>
    </>
  );
}
