import { useSignal } from '@preact/signals';
import { useMemo } from 'preact/hooks';
import { findDelivery } from '../../../../assess/bolt-up/delivery.ts';
import { ofKind, readSlots } from '../../../../assess/yard/piece-slots.ts';
import type { BodyOf } from '../../../../records/record.ts';
import { FactWriter, factOf } from '../../../pieces/facts.ts';
import { places } from '../../../pieces/places.ts';
import type { OpenPiece } from '../../../pieces/read-piece.ts';
import { useYard } from '../../../pieces/yard.ts';
import { Answer } from '../../parts/answer.tsx';
import { BigKey } from '../../parts/big-key.tsx';
import { FrameKeys } from '../../parts/frame-keys.tsx';
import { NotWritten } from '../../parts/not-written.tsx';
import { PickInsert } from '../../parts/pick-insert.tsx';
import { UndoLast } from '../../parts/undo-last.tsx';
import { WithPiece } from '../../shell/with-piece.tsx';
import { headOfPiece, YardFrame } from '../../shell/yard-frame.tsx';
import { WordsForm } from '../after/words-form.tsx';
import bolts from '../bolts/bolts.module.css';

/** On site: one tap for caps and threads of the whole piece, what is not so insert by insert, and where it stands. */
export function DeliveryScreen({ piece }: { readonly piece: string }) {
  return <WithPiece id={piece}>{(open) => <Delivery piece={open} />}</WithPiece>;
}

type Step = { readonly kind: 'look' | 'pick' | 'locate' } | { readonly kind: 'exception'; readonly number: number };

const ALL_GOOD: BodyOf<'delivered'> = { caps: true, threads: true, note: null };

function Delivery({ piece }: { readonly piece: OpenPiece }) {
  const { device } = useYard();
  const writer = useMemo(() => new FactWriter(device), [device]);
  const step = useSignal<Step>({ kind: 'look' });
  const isNamed = device.person.value !== null;
  const { plan, state } = piece;
  const threaded = plan.setOut.items.filter(({ item }) => item !== null);
  const slots = useMemo(() => readSlots(state), [state]);
  const whole = slots.of(null, 'delivery') !== null;
  const found = threaded.map((item) => ({ item, delivery: findDelivery(slots, item.castIn.key) }));
  const faulty = found.filter(({ delivery }) => delivery !== null && !(delivery.caps && delivery.threads));
  const place = ofKind(slots.of(null, 'location')?.latest ?? [], 'located')[0]?.body.place ?? null;
  const look = () => (step.value = { kind: 'look' });
  const write = async (...drafts: Parameters<FactWriter['write']>[0][number][]) => {
    if (await writer.write(drafts)) look();
  };
  const now = step.value;
  const item = now.kind === 'exception' ? threaded.find(({ number }) => number === now.number) : undefined;
  return (
    <YardFrame
      {...headOfPiece(piece)}
      stage="on delivery"
      back={places.bolts(piece.id)}
      keys={
        now.kind === 'look' ? (
          <>
            <BigKey isDisabled={!isNamed} onPress={() => (step.value = { kind: 'locate' })} more="grid and level">
              Where it stands
            </BigKey>
            <BigKey
              kind="stop"
              isDisabled={!isNamed}
              onPress={() => (step.value = { kind: 'pick' })}
              more="cap missing, thread dirty"
            >
              Something is wrong
            </BigKey>
            <BigKey
              kind={whole ? 'plain' : 'main'}
              isTall
              meaning={String(whole)}
              isDisabled={!isNamed}
              more="all caps in · all threads clean"
              onPress={() => void write({ ...factOf(piece, null), kind: 'delivered', body: ALL_GOOD })}
            >
              {whole ? 'All as it must be now' : 'All as it must be'}
            </BigKey>
            <UndoLast piece={piece} writer={writer} />
          </>
        ) : undefined
      }
    >
      <NotWritten fault={writer.fault.value} />
      {now.kind === 'look' && (
        <>
          <Answer kind="wrong" isSmall words="NOT FOR LIFTING: no fixing or brace insert of this panel">
            <p>No eye, no tag line, no turning by one of them. Only what is marked LIFTING, with its maker’s clutch.</p>
          </Answer>
          <Answer
            kind={!whole ? 'ask' : faulty.length === 0 ? 'good' : 'wrong'}
            words={
              !whole
                ? 'Nobody has looked at its caps and threads on site'
                : faulty.length === 0
                  ? `All ${threaded.length} caps in, threads clean`
                  : `${faulty.length} of ${threaded.length} not as they must be`
            }
          >
            <p>{place === null ? 'Where it stands is not recorded.' : `Stands at ${place}.`}</p>
          </Answer>
          {faulty.length > 0 && (
            <ul class={bolts.list}>
              {faulty.map(({ item: { number }, delivery }) => (
                <li key={number}>
                  No. {number}:{' '}
                  {[
                    ...(delivery?.caps === false ? ['no cap: look into the thread before anything goes in'] : []),
                    ...(delivery?.threads === false
                      ? ['thread not clean: blow it out, a bolt by hand; never tap a galvanised thread']
                      : []),
                  ].join('; ')}
                </li>
              ))}
            </ul>
          )}
        </>
      )}
      {now.kind === 'pick' && (
        <PickInsert
          question="At which insert is something not as it must be?"
          numbers={threaded.map(({ number }) => number)}
          onPick={(number) => (step.value = { kind: 'exception', number })}
          onBack={look}
        />
      )}
      {item !== undefined && (
        <Exception
          key={item.number}
          number={item.number}
          onBack={look}
          onSay={(body) => void write({ ...factOf(piece, item), kind: 'delivered', body })}
        />
      )}
      {now.kind === 'locate' && (
        <WordsForm
          title="Where does it stand? Grid and level"
          take="It stands there"
          onBack={look}
          onWords={(words) => void write({ ...factOf(piece, null), kind: 'located', body: { place: words } })}
        />
      )}
    </YardFrame>
  );
}

function Exception({
  number,
  onSay,
  onBack,
}: {
  readonly number: number;
  readonly onSay: (body: BodyOf<'delivered'>) => void;
  readonly onBack: () => void;
}) {
  const hasCap = useSignal(true);
  const isClean = useSignal(true);
  return (
    <>
      <h2>Insert {number}: tap what is not as it must be</h2>
      <div class={bolts.keys}>
        <BigKey
          kind="stop"
          isOn={!hasCap.value}
          onPress={() => (hasCap.value = !hasCap.value)}
          more="nothing keeps dirt out"
        >
          No cap
        </BigKey>
        <BigKey
          kind="stop"
          isOn={!isClean.value}
          onPress={() => (isClean.value = !isClean.value)}
          more="mortar, water, rust, a nest"
        >
          Thread not clean
        </BigKey>
      </div>
      <FrameKeys>
        <BigKey onPress={onBack}>Back</BigKey>
        <BigKey
          kind="main"
          meaning="delivered"
          onPress={() => onSay({ caps: hasCap.value, threads: isClean.value, note: null })}
        >
          Write it down
        </BigKey>
      </FrameKeys>
    </>
  );
}
