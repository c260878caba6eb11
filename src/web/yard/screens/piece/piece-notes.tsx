import { useSignal } from '@preact/signals';
import { findBlindMirrors } from '../../../../assess/yard/blind-mirrors.ts';
import { callPerson } from '../../../../assess/yard/rights.ts';
import { slotKey } from '../../../../records/fold/fold-piece.ts';
import type { OpenPiece } from '../../../pieces/read-piece.ts';
import { Answer } from '../../parts/answer.tsx';
import { BigKey } from '../../parts/big-key.tsx';
import { RecognisedAnswer } from '../../parts/recognised-answer.tsx';
import { sortPoints } from '../../state/pieces/sort-points.ts';
import { nameLifter } from '../pour/piece-row.tsx';
import styles from './piece-screen.module.css';

/** Points shown at once. */
const AT_ONCE = 4;

/** That it is scrapped, why and by whom; nothing of it is to be checked any more. */
function Scrapped({ piece: { state, context } }: { readonly piece: OpenPiece }) {
  const latest = state.slots.get(slotKey(null, 'scrapped'))?.latest ?? [];
  return (
    <Answer kind="wrong" words="SCRAPPED">
      {latest.map(
        ({ id, kind, body, person }) =>
          kind === 'scrapped' && (
            <p key={id}>
              {body.reason}, {callPerson(context.people, person)}
            </p>
          ),
      )}
    </Answer>
  );
}

/** What must not be overlooked, what measuring cannot show, and what is open with who can lift it. */
export function PieceNotes({ piece }: { readonly piece: OpenPiece }) {
  const { report, plan, context } = piece;
  const from = useSignal(0);
  const { flags, recognised } = report;
  const { wrong, unchecked } = sortPoints(report);
  const shown = wrong.slice(from.value, from.value + AT_ONCE);
  const blind = findBlindMirrors(plan);
  const flagged = flags.map((flag) => (
    <p key={flag.kind + flag.words} class={styles.flag}>
      {flag.words}
    </p>
  ));
  if (report.phase === 'scrapped')
    return (
      <div class={styles.notes}>
        <Scrapped piece={piece} />
        {flagged}
      </div>
    );
  return (
    <div class={styles.notes}>
      {flagged}
      <RecognisedAnswer recognised={recognised} />
      {blind.map(({ words }) => (
        <Answer key={words} kind="unsure" words="Measuring cannot show a mirror here" isSmall>
          <p>{words}</p>
        </Answer>
      ))}
      {wrong.length === 0 && unchecked === null && <Answer kind="good" words="Nothing is open" isSmall />}
      {wrong.length > 0 && (
        <>
          <h2>Wrong or to be decided: {wrong.length}</h2>
          <ul class={styles.points}>
            {shown.map((point) => (
              <li key={point.words}>
                <span>{point.words}</span>
                <span class={styles.lifts}>{nameLifter(point, context)}</span>
              </li>
            ))}
          </ul>
          {wrong.length > AT_ONCE && (
            <div class={styles.pages}>
              <BigKey kind="quiet" isDisabled={from.value === 0} onPress={() => (from.value -= AT_ONCE)}>
                Back
              </BigKey>
              <BigKey
                kind="quiet"
                isDisabled={from.value + AT_ONCE >= wrong.length}
                onPress={() => (from.value += AT_ONCE)}
              >
                Further
              </BigKey>
              <span>
                {from.value + 1}–{Math.min(from.value + AT_ONCE, wrong.length)} of {wrong.length}
              </span>
            </div>
          )}
        </>
      )}
      {unchecked !== null && (
        <p class={styles.left}>
          Still to be checked: <strong>{unchecked}</strong>
        </p>
      )}
    </div>
  );
}
