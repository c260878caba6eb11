import { Link } from 'wouter-preact';
import type { AsCastConnection, AsCastReport } from '../../../../assess/as-cast/as-cast-report.ts';
import type { FitKind } from '../../../../say/fit-answer.ts';
import { nameFace, tellAsCast } from '../../../../say/fit-words.ts';
import { placesOf } from '../../../../say/number-runs.ts';
import { answerConnection } from '../../../pieces/as-cast/plate-subject.ts';
import { places } from '../../../pieces/places.ts';
import type { OpenPiece } from '../../../pieces/read-piece.ts';
import { Answer } from '../../parts/answer.tsx';
import { BigLink } from '../../parts/big-key.tsx';
import { YardFrame, type YardFrameProps } from '../../shell/yard-frame.tsx';
import styles from './fit.module.css';
import { FitSign } from './fit-sign.tsx';

export type FitFrame = Omit<YardFrameProps, 'children' | 'keys'>;

/** Those that somebody must do something about come first. */
const ORDER: Readonly<Record<FitKind, number>> = { wrong: 0, unsure: 1, move: 2, ask: 3, good: 4 };

function Row({
  piece,
  found,
  kind,
  words,
  doubt,
}: {
  readonly piece: OpenPiece;
  readonly found: AsCastConnection;
  readonly kind: FitKind;
  readonly words: string;
  /** Why it is no pass, or why somebody is asked first; null: it speaks for itself. */
  readonly doubt: string | null;
}) {
  const { connection, members } = found;
  return (
    <li>
      <Link href={places.fit(piece.id, connection.key)} class={`${styles.row} ${styles[kind]}`} data-main="">
        <FitSign kind={kind} />
        <span class={styles.mark}>{connection.mark}</span>
        <span class={styles.words}>
          <strong>{words}</strong>
          {doubt !== null && <small class={styles.doubt}>{doubt}</small>}
          <small>{`${nameFace(connection)}, ${placesOf(members.map(({ item }) => item.number))}`}</small>
        </span>
      </Link>
    </li>
  );
}

/** All connections of a piece, each with its answer. */
export function FitList({
  piece,
  report,
  frame,
}: {
  readonly piece: OpenPiece;
  readonly report: AsCastReport;
  readonly frame: FitFrame;
}) {
  const rows = report.connections
    .map((found) => ({ found, ...answerConnection(piece, found) }))
    .sort((a, b) => ORDER[a.kind] - ORDER[b.kind]);
  const isSurveyed = report.surveys.length > 0;
  const isSettled = report.connections.every(({ state }) => state === 'fine' || state === 'decided');
  return (
    <YardFrame
      {...frame}
      keys={
        <>
          <BigLink
            kind={isSurveyed ? 'plain' : 'main'}
            to={places.survey(piece.id)}
            more={isSurveyed ? 'inserts nobody taped, or once more' : 'tape the hard panel first'}
          >
            Measure inserts
          </BigLink>
          {isSurveyed && rows.length > 0 && (
            <BigLink
              kind={isSettled ? 'main' : 'plain'}
              to={places.bolts(piece.id)}
              more={isSettled ? 'delivery, cards, tightening' : 'only those that may be: see above'}
            >
              Bolt up
            </BigLink>
          )}
        </>
      }
    >
      <h2 class={styles.lead}>{tellAsCast(report)}</h2>
      {rows.length === 0 && (
        <Answer kind="plain" words="Nothing is bolted to this panel">
          <p>No connection of the job lies on it.</p>
        </Answer>
      )}
      <ol class={styles.rows}>
        {rows.map(({ found, kind, words, more }) => (
          <Row
            key={found.connection.key}
            piece={piece}
            found={found}
            kind={kind}
            words={words}
            doubt={kind === 'unsure' || kind === 'ask' ? (more[0] ?? null) : null}
          />
        ))}
      </ol>
    </YardFrame>
  );
}
