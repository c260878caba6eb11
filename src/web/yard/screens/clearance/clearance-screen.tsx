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

/** What is asked before something is written that needs words: ready-made ones, own ones can be typed. */
const QUESTIONS = {
  condition: {
    title: 'Cleared on which condition? Somebody must be able to say that it is met',
    reasons: [
      'Photo of what is open before the pour',
      'Put right and looked at before the pour',
      'Design engineer told before the pour',
    ],
    take: 'Clear on this condition',
  },
  hold: {
    title: 'Why is it held?',
    reasons: ['Insert missing or wrong', 'Waiting for the design engineer', 'Form out', 'Revision to come'],
    take: 'Hold this piece',
    kind: 'stop',
  },
  override: {
    title: 'Why shall it be poured with this open? It stays a non-conformance with your name',
    reasons: [
      'Truck at the gate',
      'Design engineer told by telephone',
      'Put right later, as agreed with the design engineer',
    ],
    take: 'Let it be poured',
    kind: 'stop',
  },
  poured: {
    title: 'It was poured, and it was not cleared. Why? It is taken down as it happened',
    reasons: ['Truck at the gate', 'Nobody knew that it was not cleared', 'Poured by mistake'],
    take: 'It was poured',
    kind: 'stop',
  },
  'decide about form': {
    title: 'The form stays as it is. Why? The concrete will have its shape',
    reasons: ['The joint takes it up', 'Fits its place so', 'Agreed with the builder'],
    take: 'Accept the form',
  },
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
  const take: Readonly<Record<keyof typeof QUESTIONS, (reason: string) => void>> = {
    condition: clear,
    hold: (reason) => void write({ ...of, kind: 'held', body: { reason } }),
    override: (reason) => {
      if (person === null) return;
      const role = person.roles.includes('foreman') ? 'foreman' : roleOf(person, null);
      void write({ ...of, kind: 'override', body: { role, reason, frozen: frozen() } });
    },
    poured: (reason) => void write({ ...of, kind: 'poured', body: { reason } }),
    'decide about form': (reason) => {
      const body = person === null ? null : makeDecision({ ...report.form, answer: null }, person, 'accepted', reason);
      if (body !== null) void write({ ...of, checkKey: piece.plan.formKey, kind: 'decision', body });
    },
  };
  const now = step.value;
  const asked = now.kind === 'look' || now.kind === 'docket' || now.kind === 'decide' ? null : now.kind;
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
      {asked !== null && (
        <ReasonPicker key={asked} {...QUESTIONS[asked]} onBack={look} onReason={(words) => take[asked](words)} />
      )}
      {now.kind === 'docket' && (
        <DocketForm onBack={look} onDocket={(body) => void write({ ...of, kind: 'docket', body })} />
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
