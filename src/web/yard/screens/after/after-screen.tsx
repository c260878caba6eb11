import { useSignal } from '@preact/signals';
import { useMemo } from 'preact/hooks';
import { reportStripped } from '../../../../assess/yard/after-stripping.ts';
import { useNow } from '../../../parts/use-now.ts';
import { FactWriter, factOf } from '../../../pieces/facts.ts';
import { places } from '../../../pieces/places.ts';
import type { OpenPiece } from '../../../pieces/read-piece.ts';
import { useYard } from '../../../pieces/yard.ts';
import { NotWritten } from '../../parts/not-written.tsx';
import { PickInsert } from '../../parts/pick-insert.tsx';
import { WithPiece } from '../../shell/with-piece.tsx';
import { headOfPiece, YardFrame } from '../../shell/yard-frame.tsx';
import { AfterKeys } from './after-keys.tsx';
import { AfterSheet } from './after-sheet.tsx';
import type { AfterStep } from './after-step.ts';
import { ExceptionForm } from './exception-form.tsx';
import { StrengthForm } from './strength-form.tsx';
import { StripForm } from './strip-form.tsx';
import { ALL_OPEN, findAgeHours } from './uncover.ts';
import { WordsForm } from './words-form.tsx';

/** After stripping: one tap for the piece, exceptions by insert, plates counted back; what may not be loaded or lifted yet. */
export function AfterScreen({ piece }: { readonly piece: string }) {
  return <WithPiece id={piece}>{(open) => <After piece={open} />}</WithPiece>;
}

function After({ piece }: { readonly piece: OpenPiece }) {
  const { device } = useYard();
  const now = useNow();
  const step = useSignal<AfterStep>({ kind: 'look' });
  const writer = useMemo(() => new FactWriter(device), [device]);
  const { plan, context, state, report } = piece;
  const stripped = useMemo(() => reportStripped(context, plan, state), [context, plan, state]);
  const look = () => (step.value = { kind: 'look' });
  const write = async (...drafts: Parameters<FactWriter['write']>[0][number][]) => {
    if (await writer.write(drafts)) look();
  };
  const of = factOf(piece, null);
  const asked = step.value;
  const item = asked.kind === 'exception' ? plan.setOut.items.find(({ number }) => number === asked.number) : undefined;
  return (
    <YardFrame
      {...headOfPiece(piece)}
      stage="after stripping"
      back={places.piece(piece.id)}
      keys={
        asked.kind === 'look' ? (
          <AfterKeys
            piece={piece}
            stripped={stripped}
            writer={writer}
            onStep={(next) => (step.value = next)}
            onAllOpen={() => void write({ ...of, kind: 'uncovered', body: ALL_OPEN })}
          />
        ) : undefined
      }
    >
      <NotWritten fault={writer.fault.value} />
      {asked.kind === 'look' && <AfterSheet piece={piece} stripped={stripped} now={now} />}
      {asked.kind === 'strip' && (
        <StripForm
          parts={stripped.parts}
          onBack={look}
          onStrip={(body) => void write({ ...of, kind: 'stripped', body })}
        />
      )}
      {asked.kind === 'pick' && (
        <PickInsert
          question="At which insert is something not as it must be?"
          numbers={stripped.inserts.map((insert) => insert.item.number)}
          onPick={(number) => (step.value = { kind: 'exception', number })}
          onBack={look}
        />
      )}
      {item !== undefined && (
        <ExceptionForm
          key={item.number}
          piece={piece}
          item={item}
          onBack={look}
          onSay={(body) => void write({ ...factOf(piece, item), kind: 'uncovered', body })}
          onPhoto={(body) => void writer.write([{ ...factOf(piece, item), kind: 'photo', body }])}
          onCap={() => void write({ ...factOf(piece, item), kind: 'cap', body: { is: 'back in' } })}
        />
      )}
      {asked.kind === 'strength' && (
        <StrengthForm
          ageHours={findAgeHours(report.poured?.poured[0]?.measuredAt ?? null, now)}
          onBack={look}
          onResult={(body) => void write({ ...of, kind: 'strength-result', body })}
        />
      )}
      {asked.kind === 'comment' && (
        <WordsForm
          title="What is to be said about this piece?"
          take="Write it down"
          onBack={look}
          onWords={(text) => void write({ ...of, kind: 'comment', body: { text } })}
        />
      )}
      {asked.kind === 'locate' && (
        <WordsForm
          title="Where does it stand? Stack, or grid and level in the building"
          take="It stands there"
          onBack={look}
          onWords={(place) => void write({ ...of, kind: 'located', body: { place } })}
        />
      )}
    </YardFrame>
  );
}
