import { useMemo } from 'preact/hooks';
import type { SetOutItem } from '../../../../assess/set-out/set-out.ts';
import { places } from '../../../pieces/places.ts';
import type { OpenPiece } from '../../../pieces/read-piece.ts';
import { lookFrom, seeSetOut } from '../../../pieces/survey/stand.ts';
import { listOpen } from '../../../pieces/survey/tape-asks.ts';
import { findTapeLine } from '../../../pieces/survey/tape-edges.ts';
import { useYard } from '../../../pieces/yard.ts';
import { FormPlan, type FormPlanProps, type SpotLook } from '../../parts/form-plan.tsx';
import { WithPiece } from '../../shell/with-piece.tsx';
import { headOfPiece, YardFrame } from '../../shell/yard-frame.tsx';
import { TapeSession } from '../../state/survey/tape-session.ts';
import { SurveyKeys } from './survey-keys.tsx';
import styles from './survey-screen.module.css';
import { SurveySheet } from './survey-sheet.tsx';

/** The inserts of the hard panel, taped as it lies or stands. */
export function SurveyScreen({ piece }: { readonly piece: string }) {
  return <WithPiece id={piece}>{(open) => <Survey key={open.context.revision.fingerprint} piece={open} />}</WithPiece>;
}

function Survey({ piece }: { readonly piece: OpenPiece }) {
  const yard = useYard();
  // Another revision may have other inserts: see the key above.
  const tape = useMemo(
    () =>
      new TapeSession({
        device: yard.device,
        storage: localStorage,
        piece,
        read: () => {
          const reading = yard.piece(piece.id).peek();
          return reading.kind === 'open' ? reading.piece : piece;
        },
      }),
    [yard, piece.id],
  );
  const { setOut } = piece.plan;
  const { face, turn, entries } = tape.draft.value;
  const seen = useMemo(() => seeSetOut(setOut, { face, turn }), [setOut, face, turn]);
  const step = tape.step.value;
  const done = tape.asks.length - tape.open.length;
  return (
    <YardFrame
      {...headOfPiece(piece)}
      stage={`survey of the hard panel · ${face} face · ${done} of ${tape.asks.length} numbers`}
      back={places.piece(piece.id)}
      isFixed
      keys={<SurveyKeys tape={tape} piece={piece} />}
    >
      <div class={`${styles.survey} ${step.kind === 'end' ? styles.ending : ''}`}>
        <FormPlan
          of="panel"
          setOut={seen}
          lookOf={lookOf(tape)}
          lit={litOf(tape, seen.items)}
          tape={findTape(tape, piece)}
          {...(step.kind === 'start' || step.kind === 'connections' || entries.length === 0
            ? {}
            : { onPick: (number: number) => tape.goTo(number) })}
        />
        <SurveySheet tape={tape} piece={piece} />
      </div>
    </YardFrame>
  );
}

/** Taped and within its tolerance, off, begun, or not asked for. */
function lookOf(tape: TapeSession): (item: SetOutItem) => SpotLook {
  const asked = new Set(tape.asks.map(({ item }) => item));
  const looks = new Map<string, SpotLook>(
    tape.items.map(({ castIn: { key } }) => {
      const isOpen = tape.asks.length === 0 || listOpen(tape.asks, tape.draft.value.entries, key).length > 0;
      const answer = isOpen ? null : tape.answerOf(key);
      return [key, answer === null ? 'open' : answer.isOff ? 'out' : 'good'];
    }),
  );
  return ({ castIn: { key } }) => (asked.size > 0 && !looks.has(key) ? 'other' : (looks.get(key) ?? 'open'));
}

function litOf(tape: TapeSession, items: readonly SetOutItem[]): readonly number[] {
  const step = tape.step.value;
  const keys =
    step.kind === 'tape'
      ? [step.ask.item, ...(step.ask.kind === 'between' ? [step.ask.other] : [])]
      : step.kind === 'answer' || step.kind === 'rod'
        ? [step.item]
        : [];
  return items.filter(({ castIn }) => keys.includes(castIn.key)).map(({ number }) => number);
}

/** Where the tape lies for what is asked, as the person sees it. */
function findTape(tape: TapeSession, { plan }: OpenPiece): NonNullable<FormPlanProps['tape']> | null {
  const step = tape.step.value;
  if (step.kind !== 'tape') return null;
  const { ask } = step;
  const { panel, items } = plan.setOut;
  const { toView } = lookFrom(panel, tape.stand);
  const placeOf = (key: string) => {
    const castIn = items.find((item) => item.castIn.key === key)?.castIn;
    return castIn === undefined ? null : ([castIn.x_mm, castIn.y_mm] as const);
  };
  const at = placeOf(ask.item);
  if (at === null) return null;
  if (ask.kind === 'depth') return [toView(at), toView(at)];
  const from = ask.kind === 'between' ? placeOf(ask.other) : findTapeLine(panel, ask.edge, at)[0];
  return from === null ? null : [toView(from), toView(at)];
}
