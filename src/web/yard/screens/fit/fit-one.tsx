import { useMemo } from 'preact/hooks';
import type { AsCastConnection } from '../../../../assess/as-cast/as-cast-report.ts';
import { drawPlateAsCast } from '../../../../drawing/as-cast/plate-picture.ts';
import type { FitAnswer } from '../../../../say/fit-answer.ts';
import { ON_SITE, TO_MEASURE } from '../../../../say/fit-words.ts';
import { DrawingView } from '../../../parts/drawing-view.tsx';
import { answerConnection, findBestFit, findPlate } from '../../../pieces/as-cast/plate-subject.ts';
import { FactWriter } from '../../../pieces/facts.ts';
import type { OpenPiece } from '../../../pieces/read-piece.ts';
import { useYard } from '../../../pieces/yard.ts';
import { Answer } from '../../parts/answer.tsx';
import { LiftingWord } from '../../parts/lifting-word.tsx';
import { NotWritten } from '../../parts/not-written.tsx';
import { YardFrame } from '../../shell/yard-frame.tsx';
import styles from './fit.module.css';
import { FitKeys } from './fit-keys.tsx';
import type { FitFrame } from './fit-list.tsx';

const ROOM = { width: 150, height: 92, text: 5.4 } as const;

/** Where one stands who sees the picture. */
function tellStand(found: AsCastConnection, drawnFace: string): string {
  const { face, edge } = found.connection;
  return face === 'edge'
    ? `Looking at edge ${edge}, the ${drawnFace} face above`
    : `You stand before the ${face} face, top up`;
}

/** The bracket on its bolts: grey as it goes on, dashed as drawn. */
function Picture({
  piece,
  found,
  answer,
}: {
  readonly piece: OpenPiece;
  readonly found: AsCastConnection;
  readonly answer: FitAnswer;
}) {
  const remedy = answer.remedy ?? found.decided ?? findBestFit(found);
  const drawing = useMemo(() => {
    const plate = findPlate(piece, found, remedy);
    return plate === null ? null : drawPlateAsCast(plate, ROOM, (mm) => `${Number(mm.toFixed(1))} mm`);
  }, [piece.context, piece.plan, found, remedy]);
  const stand = tellStand(found, piece.plan.setOut.panel.drawnFace);
  return (
    <figure class={styles.picture}>
      <figcaption>
        <strong>{stand}</strong>
        <LiftingWord role={found.members[0]?.item.castIn.role ?? 'fixing'} />
      </figcaption>
      {drawing === null ? (
        <p>No bracket is drawn for this connection: nobody can say here whether it goes on.</p>
      ) : (
        <div class={styles.drawing}>
          <DrawingView drawing={drawing} title={`${stand}: bracket of ${found.connection.mark} on its bolts as cast`} />
        </div>
      )}
      {drawing !== null && (
        <p class={styles.legend}>
          {answer.kind === 'wrong' ? 'Grey: the bracket where it lies best.' : 'Grey: the bracket as it goes on.'}{' '}
          Dashed: as drawn. Solid: bolts. Crossed: does not go in.
        </p>
      )}
    </figure>
  );
}

/** What others may decide, in words. */
function Others({ found: { remedies } }: { readonly found: AsCastConnection }) {
  const others = remedies.filter(({ act, verdict }) => act === 'change the design' && verdict === 'works');
  if (others.length === 0) return null;
  return (
    <section class={styles.others}>
      <h2>Computed for the design engineer</h2>
      <ul>
        {others.map(({ kind, words }) => (
          <li key={kind + words}>
            <strong>{kind}</strong>: {words}
          </li>
        ))}
      </ul>
    </section>
  );
}

/** One bracket: the answer first, then the picture, then what is to be known. */
export function FitOne({
  piece,
  found,
  frame,
}: {
  readonly piece: OpenPiece;
  readonly found: AsCastConnection;
  readonly frame: FitFrame;
}) {
  const { device } = useYard();
  const writer = useMemo(() => new FactWriter(device), [device]);
  const answer = useMemo(() => answerConnection(piece, found), [found, piece.plan, piece.context]);
  const isOpen = found.state === 'fine as it is' || found.state === 'needs a remedy';
  return (
    <YardFrame
      {...frame}
      stage={`bracket ${found.connection.mark}`}
      keys={<FitKeys piece={piece} found={found} answer={answer} writer={writer} />}
    >
      <NotWritten fault={writer.fault.value} />
      <Answer kind={answer.kind} words={answer.words}>
        {found.state === 'decided' && <p>Decided; do it so.</p>}
        {answer.more.map((line) => (
          <p key={line}>{line}</p>
        ))}
      </Answer>
      {found.state === 'not surveyed' && (
        <section class={styles.others}>
          <h2>Measure and send</h2>
          <ol>
            {TO_MEASURE.map((words) => (
              <li key={words}>{words}</li>
            ))}
          </ol>
        </section>
      )}
      <Picture piece={piece} found={found} answer={answer} />
      {answer.remedy !== null && <p>{ON_SITE}</p>}
      {isOpen && answer.remedy === null && <Others found={found} />}
    </YardFrame>
  );
}
