import { useSignal } from '@preact/signals';
import { useMemo } from 'preact/hooks';
import { freeze, judgeClearance } from '../../../../assess/yard/clearance.ts';
import { makeDecision, roleOf } from '../../../pieces/decide.ts';
import { FactWriter, factOf } from '../../../pieces/facts.ts';
import { places } from '../../../pieces/places.ts';
import type { OpenPiece } from '../../../pieces/read-piece.ts';
import { useYard } from '../../../pieces/yard.ts';
import { NotWritten } from '../../parts/not-written.tsx';
import { ReasonPicker } from '../../parts/reason-picker.tsx';
import { WithPiece } from '../../shell/with-piece.tsx';
import { headOfPiece, YardFrame } from '../../shell/yard-frame.tsx';
import { ClearanceKeys } from './clearance-keys.tsx';
import { ClearanceSheet } from './clearance-sheet.tsx';
import type { ClearanceStep } from './clearance-step.ts';
import { DecisionForm } from './decision-form.tsx';
import { DocketForm } from './docket-form.tsx';

/** Whether a piece may be poured, who can lift what stands against it, and that it was poured. */
export function ClearanceScreen({ piece }: { readonly piece: string }) {
  return <WithPiece id={piece}>{(open) => <Clearance piece={open} />}</WithPiece>;
}

/** Ready-made words; own ones can be typed. */
const REASONS = {
  condition: [
    'Photo of what is open before the pour',
    'Put right and looked at before the pour',
    'Design engineer told before the pour',
  ],
  hold: ['Insert missing or wrong', 'Waiting for the design engineer', 'Form out', 'Revision to come'],
  override: [
    'Truck at the gate',
    'Design engineer told by telephone',
    'Put right later, as agreed with the design engineer',
  ],
  form: ['The joint takes it up', 'Fits its place so', 'Agreed with the builder'],
  poured: ['Truck at the gate', 'Nobody knew that it was not cleared', 'Poured by mistake'],
} as const;

function Clearance({ piece }: { readonly piece: OpenPiece }) {
  const { device } = useYard();
  const step = useSignal<ClearanceStep>({ kind: 'look' });
  const writer = useMemo(() => new FactWriter(device), [device]);
  const { report, context } = piece;
  const person = device.person.value;
  const choice = judgeClearance(context, report, person);
  const frozen = () => {
    const head = device.sync.value.head;
    return freeze(
      context,
      report,
      head === null || head.hash === null ? null : { number: head.number, hash: head.hash },
    );
  };
  const look = () => (step.value = { kind: 'look' });
  const write = async (...drafts: Parameters<FactWriter['write']>[0][number][]) => {
    if (await writer.write(drafts)) look();
  };
  const of = factOf(piece, null);
  const clear = (condition: string | null) => {
    if (person !== null) void write({ ...of, kind: 'cleared', body: { role: 'qa', condition, frozen: frozen() } });
  };
  const now = step.value;
  return (
    <YardFrame
      {...headOfPiece(piece)}
      stage="clearance"
      back={places.piece(piece.id)}
      keys={
        now.kind === 'look' ? (
          <ClearanceKeys
            piece={piece}
            choice={choice}
            person={person}
            onStep={(next) => (step.value = next)}
            onClear={() => clear(null)}
            onPoured={() => void write({ ...of, kind: 'poured', body: { reason: null } })}
            writer={writer}
          />
        ) : undefined
      }
    >
      <NotWritten fault={writer.fault.value} />
      {now.kind === 'look' && (
        <ClearanceSheet
          piece={piece}
          choice={choice}
          onDecide={(number) => (step.value = { kind: 'decide', number })}
          onDecideForm={() => (step.value = { kind: 'decide about form' })}
        />
      )}
      {now.kind === 'condition' && (
        <ReasonPicker
          title="Cleared on which condition? Somebody must be able to say that it is met"
          reasons={REASONS.condition}
          take="Clear on this condition"
          onBack={look}
          onReason={clear}
        />
      )}
      {now.kind === 'hold' && (
        <ReasonPicker
          title="Why is it held?"
          reasons={REASONS.hold}
          take="Hold this piece"
          kind="stop"
          onBack={look}
          onReason={(reason) => void write({ ...of, kind: 'held', body: { reason } })}
        />
      )}
      {now.kind === 'override' && (
        <ReasonPicker
          title="Why shall it be poured with this open? It stays a non-conformance with your name"
          reasons={REASONS.override}
          take="Let it be poured"
          kind="stop"
          onBack={look}
          onReason={(reason) => {
            if (person === null) return;
            const role = person.roles.includes('foreman') ? 'foreman' : roleOf(person, null);
            void write({ ...of, kind: 'override', body: { role, reason, frozen: frozen() } });
          }}
        />
      )}
      {now.kind === 'poured' && (
        <ReasonPicker
          title="It was poured, and it was not cleared. Why? It is taken down as it happened"
          reasons={REASONS.poured}
          take="It was poured"
          kind="stop"
          onBack={look}
          onReason={(reason) => void write({ ...of, kind: 'poured', body: { reason } })}
        />
      )}
      {now.kind === 'docket' && (
        <DocketForm onBack={look} onDocket={(body) => void write({ ...of, kind: 'docket', body })} />
      )}
      {now.kind === 'decide about form' && (
        <ReasonPicker
          title="The form stays as it is. Why? The concrete will have its shape"
          reasons={REASONS.form}
          take="Accept the form"
          onBack={look}
          onReason={(reason) => {
            const body =
              person === null ? null : makeDecision({ ...report.form, answer: null }, person, 'accepted', reason);
            if (body !== null) void write({ ...of, checkKey: piece.plan.formKey, kind: 'decision', body });
          }}
        />
      )}
      {now.kind === 'decide' && (
        <DecisionForm
          piece={piece}
          number={now.number}
          person={person}
          onBack={look}
          onDecide={(item, body) => void write({ ...factOf(piece, item), kind: 'decision', body })}
        />
      )}
    </YardFrame>
  );
}
