import { useSignal } from '@preact/signals';
import { useMemo } from 'preact/hooks';
import type { BoltUpCard, BoltUpReport } from '../../../../assess/bolt-up/bolt-up-report.ts';
import { readSlots } from '../../../../assess/yard/piece-slots.ts';
import type { BodyOf } from '../../../../records/record.ts';
import { useNow } from '../../../parts/use-now.ts';
import { useBoltUp } from '../../../pieces/bolt-up/use-bolt-up.ts';
import { FactWriter, factOf } from '../../../pieces/facts.ts';
import { places } from '../../../pieces/places.ts';
import type { OpenPiece } from '../../../pieces/read-piece.ts';
import { useYard } from '../../../pieces/yard.ts';
import { Answer } from '../../parts/answer.tsx';
import { BigKey, BigLink } from '../../parts/big-key.tsx';
import { FrameKeys } from '../../parts/frame-keys.tsx';
import { NotWritten } from '../../parts/not-written.tsx';
import { PickInsert } from '../../parts/pick-insert.tsx';
import { UndoLast } from '../../parts/undo-last.tsx';
import { WithPiece } from '../../shell/with-piece.tsx';
import { headOfPiece, YardFrame } from '../../shell/yard-frame.tsx';
import { BoltsList } from './bolts-list.tsx';
import type { BoltsStep } from './bolts-step.ts';
import { CardSheet } from './card-sheet.tsx';
import { DoesNotGoOn } from './does-not-go-on.tsx';
import { SealForm } from './seal-form.tsx';
import { TightenForm } from './tighten-form.tsx';

/** Bolting up on site: a card a bracket, one tap where all is as it says, and what is filled and sealed at the end. */
export function BoltsScreen({ piece }: { readonly piece: string }) {
  return <WithPiece id={piece}>{(open) => <Bolts piece={open} />}</WithPiece>;
}

type WentOn = BodyOf<'offered'>['wentOn'];

function Bolts({ piece }: { readonly piece: OpenPiece }) {
  const { device } = useYard();
  const writer = useMemo(() => new FactWriter(device), [device]);
  const report = useBoltUp(piece);
  const step = useSignal<BoltsStep>({ kind: 'look' });
  const now = step.value;
  const card =
    'connection' in now ? report?.cards.find(({ connection }) => connection.key === now.connection) : undefined;
  const look = () => (step.value = { kind: 'look' });
  const back = () =>
    (step.value = card === undefined ? { kind: 'look' } : { kind: 'card', connection: card.connection.key });
  return (
    <YardFrame
      {...headOfPiece(piece)}
      stage={card === undefined ? 'bolting up' : `bolting up ${card.connection.mark}`}
      back={places.piece(piece.id)}
      keys={
        now.kind === 'look' ? (
          <ListKeys piece={piece} report={report} writer={writer} onSeal={() => (step.value = { kind: 'seal' })} />
        ) : undefined
      }
    >
      <NotWritten fault={writer.fault.value} />
      {report === null ? (
        <p aria-busy="true">Computing where the bolts are and how long they must be …</p>
      ) : (
        <Step
          piece={piece}
          report={report}
          card={card ?? null}
          writer={writer}
          step={now}
          onStep={(next) => (step.value = next)}
          onLook={look}
          onBack={back}
        />
      )}
    </YardFrame>
  );
}

function ListKeys({
  piece,
  report,
  writer,
  onSeal,
}: {
  readonly piece: OpenPiece;
  readonly report: BoltUpReport | null;
  readonly writer: FactWriter;
  readonly onSeal: () => void;
}) {
  const isNamed = useYard().device.person.value !== null;
  const open = report?.temporary.filter(({ state }) => state === 'fill and seal').length ?? 0;
  return (
    <>
      <BigLink to={places.delivery(piece.id)} more="caps, threads, where it stands">
        On delivery
      </BigLink>
      <BigLink to={places.fit(piece.id)} more="plates on their bolts">
        Does it go on?
      </BigLink>
      <BigKey
        kind={report?.isDone === true && open > 0 ? 'main' : 'plain'}
        isDisabled={!isNamed || open === 0}
        more={open === 0 ? 'nothing to be sealed now' : `${open} no longer needed`}
        onPress={onSeal}
      >
        Fill and seal
      </BigKey>
      {readSlots(piece.state).of(null, 'proof plan') !== null && (
        <BigLink to={places.pull(piece.id)} more="as they are planned">
          Pull tests
        </BigLink>
      )}
      <UndoLast piece={piece} writer={writer} />
    </>
  );
}

interface StepProps {
  readonly piece: OpenPiece;
  readonly report: BoltUpReport;
  /** The one that is looked at; null: none, or it is gone. */
  readonly card: BoltUpCard | null;
  readonly writer: FactWriter;
  readonly step: BoltsStep;
  readonly onStep: (step: BoltsStep) => void;
  readonly onLook: () => void;
  readonly onBack: () => void;
}

function Step({ piece, report, card, writer, step, onStep, onLook, onBack }: StepProps) {
  const now = useNow();
  const of = factOf(piece, null);
  if (step.kind === 'seal' || step.kind === 'seal one') {
    const open = report.temporary.filter(({ state }) => state === 'fill and seal');
    const chosen = step.kind === 'seal one' ? open.find(({ item }) => item.number === step.number) : undefined;
    if (chosen === undefined)
      return (
        <PickInsert
          question="Which one is filled and sealed?"
          numbers={open.map(({ item }) => item.number)}
          onPick={(number) => onStep({ kind: 'seal one', number })}
          onBack={onLook}
        />
      );
    return (
      <SealForm
        key={chosen.item.number}
        insert={chosen}
        onPhoto={(body) => void writer.write([{ ...factOf(piece, chosen.item), kind: 'photo', body }])}
        onSealed={async (filling) => {
          if (await writer.write([{ ...factOf(piece, chosen.item), kind: 'sealed', body: { with: filling } }]))
            onLook();
        }}
        onBack={onLook}
      />
    );
  }
  if (card === null) return <BoltsList report={report} onCard={(connection) => onStep({ kind: 'card', connection })} />;
  const { key, mark } = card.connection;
  const offer = (wentOn: WentOn) =>
    writer.write([{ ...of, kind: 'offered', body: { connection: key, connectionMark: mark, wentOn, note: null } }]);
  if (step.kind === 'does not go on')
    return (
      <DoesNotGoOn
        piece={piece}
        card={card}
        onBack={onBack}
        onSay={async () => {
          if (await offer('no')) onBack();
        }}
      />
    );
  if (step.kind === 'tighten')
    return (
      <TightenForm
        card={card}
        today={new Date(now).toISOString().slice(0, 10)}
        onBack={onBack}
        onDone={async (body) => {
          if (await writer.write([{ ...of, kind: 'tightened', body }])) onBack();
        }}
      />
    );
  return (
    <>
      {card.offered !== null && (
        <Answer
          kind={card.offered.body.wentOn === 'no' ? 'wrong' : 'good'}
          isSmall
          words={
            card.offered.body.wentOn === 'no'
              ? 'Offered up: it did not go on'
              : `Offered up: it went on, ${card.offered.body.wentOn}`
          }
        />
      )}
      <CardSheet piece={piece} card={card} />
      <FrameKeys>
        <CardKeys
          piece={piece}
          card={card}
          onAll={onLook}
          onOffer={(wentOn) => void offer(wentOn)}
          onNo={() => onStep({ kind: 'does not go on', connection: key })}
          onTighten={() => onStep({ kind: 'tighten', connection: key })}
        />
        <UndoLast piece={piece} writer={writer} />
      </FrameKeys>
    </>
  );
}

function CardKeys({
  piece,
  card,
  onAll,
  onOffer,
  onNo,
  onTighten,
}: {
  readonly piece: OpenPiece;
  readonly card: BoltUpCard;
  readonly onAll: () => void;
  readonly onOffer: (wentOn: WentOn) => void;
  readonly onNo: () => void;
  readonly onTighten: () => void;
}) {
  const isNamed = useYard().device.person.value !== null;
  const isReady = card.state === 'ready';
  return (
    <>
      <BigKey kind="quiet" onPress={onAll}>
        All brackets
      </BigKey>
      {card.state === 'decide first' && (
        <BigLink kind="main" to={places.fit(piece.id, card.connection.key)} more="what is computed, who decides">
          What may be done
        </BigLink>
      )}
      {card.state === 'survey first' && (
        <BigLink kind="main" to={places.survey(piece.id)} more="from the edges, by tape">
          Measure inserts
        </BigLink>
      )}
      <BigKey
        isDisabled={!isNamed}
        meaning={`as designed ${card.offered?.id ?? ''}`}
        onPress={() => onOffer('as designed')}
      >
        It goes on as drawn
      </BigKey>
      <BigKey
        isDisabled={!isNamed}
        meaning={`moved ${card.offered?.id ?? ''}`}
        onPress={() => onOffer('shifted or turned')}
      >
        It goes on, shifted or turned
      </BigKey>
      <BigKey kind="stop" isDisabled={!isNamed} onPress={onNo}>
        It does not go on
      </BigKey>
      <BigKey
        kind={isReady ? 'main' : 'quiet'}
        isTall={isReady}
        isDisabled={!isNamed}
        more={
          isReady
            ? 'caps come out only now'
            : card.state === 'tightened'
              ? 'once more, otherwise'
              : 'it happened though it is not ready: it is flagged'
        }
        onPress={onTighten}
      >
        {card.state === 'tightened' ? 'Tightened anew' : 'Tightened'}
      </BigKey>
    </>
  );
}
