import { useMemo } from 'preact/hooks';
import type { BoltUpCard, CardBolt } from '../../../../assess/bolt-up/bolt-up-report.ts';
import { drawPlateAsCast } from '../../../../drawing/as-cast/plate-picture.ts';
import {
  AFTER_WORDS,
  CARD_STATES,
  sayBoltKind,
  sayMayDo,
  sayRange,
  saySequence,
  sayStack,
  sayTightening,
  THREAD_WORDS,
} from '../../../../say/bolt-up-words.ts';
import { DrawingView } from '../../../parts/drawing-view.tsx';
import { findPlate } from '../../../pieces/as-cast/plate-subject.ts';
import type { OpenPiece } from '../../../pieces/read-piece.ts';
import { Answer } from '../../parts/answer.tsx';
import styles from './bolts.module.css';
import { CARD_KINDS, tellRecess } from './card-words.ts';

const ROOM = { width: 60, height: 50, text: 3.4 } as const;

function Bolt({ bolt, card }: { readonly bolt: CardBolt; readonly card: BoltUpCard }) {
  const { insert, hole, lengths, minTurns, faults, notes } = bolt;
  return (
    <li class={styles.bolt}>
      <span class={styles.number}>{insert.item.number}</span>
      <div>
        <p class={styles.large}>
          {insert.item.item?.thread ?? 'thread not known'}
          {hole === null ? '' : `, hole ${hole}`}
        </p>
        <ul class={styles.list}>
          {lengths.map(({ packers, choice, why }) => (
            <li key={packers.join(' ')}>
              {sayRange({ range: packers })}:{' '}
              <strong>{choice === null ? (why ?? 'no length serves') : `${choice.length} mm long`}</strong>
            </li>
          ))}
          <li>
            By hand first: at least <strong>{Math.ceil(minTurns)} turns</strong>. Fewer: stop, clean it, never tap it.
          </li>
          <li>{tellRecess(bolt)}</li>
          <li>{sayStack(bolt, card)}</li>
          {notes.map((note) => (
            <li key={note}>{note}</li>
          ))}
        </ul>
        {faults.map((fault) => (
          <p key={fault} class={styles.fault}>
            {fault}
          </p>
        ))}
      </div>
    </li>
  );
}

/** The card of one bracket: what stands against it first, then the picture as one stands before it, then every bolt. */
export function CardSheet({ piece, card }: { readonly piece: OpenPiece; readonly card: BoltUpCard }) {
  const drawing = useMemo(() => {
    const plate = findPlate(piece, card.asCast, card.asCast.decided);
    return plate === null ? null : drawPlateAsCast(plate, ROOM, (mm) => `${Number(mm.toFixed(1))} mm`);
  }, [piece, card]);
  const faulty = card.state === 'tightened' && card.tightenedFaults.length > 0;
  const seen = card.seenFrom === 'edge' ? 'in the edge of the panel' : `from the ${card.seenFrom}, top up`;
  return (
    <>
      <Answer
        kind={faulty ? 'wrong' : CARD_KINDS[card.state]}
        words={faulty ? 'Tightened, and not as it must be' : CARD_STATES[card.state]}
      >
        {[...(faulty ? card.tightenedFaults : []), ...card.stops].map((stop) => (
          <p key={stop}>{stop}</p>
        ))}
        {card.asCast.decision !== null && <p>Decided: {card.asCast.decision.body.words}</p>}
      </Answer>
      <div class={styles.card}>
        <div class={styles.picture}>
          {drawing === null ? (
            <p>No plate is drawn for it.</p>
          ) : (
            <DrawingView drawing={drawing} title={`Bracket ${card.connection.mark}, seen ${seen}`} />
          )}
        </div>
        <div class={styles.form}>
          <p class={styles.large}>Seen {seen}.</p>
          <p class={styles.large}>{sayBoltKind(card)}</p>
          {sayTightening(card).map((line) => (
            <p key={line}>{line}</p>
          ))}
          {card.lookAlikes.map((warning) => (
            <p key={warning} class={styles.fault}>
              {warning}
            </p>
          ))}
          {card.notes.map((note) => (
            <p key={note}>{note}</p>
          ))}
        </div>
      </div>
      <ul class={styles.bolts}>
        {card.bolts.map((bolt) => (
          <Bolt key={bolt.insert.item.number} bolt={bolt} card={card} />
        ))}
      </ul>
      {card.unused.length > 0 && (
        <p>
          No bolt in {card.unused.map(({ item }) => item.number).join(', ')}: fill and seal{' '}
          {card.unused.length === 1 ? 'it' : 'them'}.
        </p>
      )}
      {(
        [
          ['In this order', saySequence(card)],
          ['What you may do', sayMayDo(card)],
          ['Caps and threads', THREAD_WORDS],
          ['After', AFTER_WORDS],
        ] as const
      ).map(([title, lines]) => (
        <section key={title}>
          <h3>{title}</h3>
          <ul class={styles.list}>
            {lines.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        </section>
      ))}
      <Answer kind="wrong" isSmall words="NOT FOR LIFTING" />
    </>
  );
}
