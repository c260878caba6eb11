import { useSignal } from '@preact/signals';
import { findHead } from '../../../../assess/yard/piece-head.ts';
import { listHistory } from '../../../../say/history-lines.ts';
import { writerOf } from '../../../../say/quantities.ts';
import { PrintSheets } from '../../../parts/print-sheets.tsx';
import { places } from '../../../pieces/places.ts';
import type { OpenPiece } from '../../../pieces/read-piece.ts';
import { useYard, type Yard } from '../../../pieces/yard.ts';
import { nameRecords } from '../../../records/record-names.ts';
import { Answer } from '../../parts/answer.tsx';
import { BigKey, BigLink } from '../../parts/big-key.tsx';
import { WithPiece } from '../../shell/with-piece.tsx';
import { headOfPiece, YardFrame } from '../../shell/yard-frame.tsx';
import { sayMoment } from '../../state/say-moment.ts';
import styles from './history.module.css';
import { HistoryList } from './history-list.tsx';

/** Everything that was recorded of a piece, in words. */
export function HistoryScreen({ piece }: { readonly piece: string }) {
  return <WithPiece id={piece}>{(open) => <History piece={open} />}</WithPiece>;
}

function listLines({ device, planned }: Yard, { context, plan, state }: OpenPiece) {
  const names = nameRecords({
    people: context.people,
    plan,
    state,
    pieceOf: (id) => findHead(device.piece(id).value, planned.value.get(id) ?? null),
    write: writerOf('metric'),
  });
  return listHistory(state, names);
}

function History({ piece }: { readonly piece: OpenPiece }) {
  const yard = useYard();
  const isPrinting = useSignal(false);
  const lines = listLines(yard, piece);
  const { report, context, head } = piece;
  const logHead = yard.device.sync.value.head;
  const list = (
    <>
      {report.flags.map((flag) => (
        <Answer key={`${flag.kind} ${flag.records.join()}`} kind="wrong" words={flag.kind.toUpperCase()}>
          <p>{flag.words}</p>
        </Answer>
      ))}
      <HistoryList lines={lines} hasPhotos={!isPrinting.value} />
      <p class={styles.foot}>
        In the order of what each record knew of, not of clocks. By revision {context.revision.letter} ·{' '}
        {context.revision.fingerprint.slice(0, 12)}.{' '}
        {logHead === null || logHead.hash === null
          ? 'The server’s log was not heard yet.'
          : `Server’s log as last heard: no. ${logHead.number} · ${logHead.hash.slice(0, 12)}.`}
      </p>
    </>
  );
  return (
    <YardFrame
      {...headOfPiece(piece)}
      stage={`history · ${lines.length} ${lines.length === 1 ? 'entry' : 'entries'}`}
      back={places.piece(piece.id)}
      keys={
        <>
          <BigKey onPress={() => (isPrinting.value = true)}>Print</BigKey>
          <BigLink kind="main" to={places.piece(piece.id)}>
            To the piece
          </BigLink>
        </>
      }
    >
      {lines.length === 0 ? <p>Nothing is recorded of this piece yet. Begin with the form.</p> : list}
      {isPrinting.value && (
        <PrintSheets
          paper="standing"
          onDone={() => (isPrinting.value = false)}
          sheets={[
            <div class={styles.printed}>
              <h1>
                History of {head.mark} no. {head.serial}
              </h1>
              <p>Printed {sayMoment(new Date().toISOString())}</p>
              {list}
            </div>,
          ]}
        />
      )}
    </YardFrame>
  );
}
