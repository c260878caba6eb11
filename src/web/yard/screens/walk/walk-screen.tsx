import { useMemo } from 'preact/hooks';
import { places } from '../../../pieces/places.ts';
import type { OpenPiece } from '../../../pieces/read-piece.ts';
import { useYard } from '../../../pieces/yard.ts';
import { FormPlan, type PlanArrow } from '../../parts/form-plan.tsx';
import { WithPiece } from '../../shell/with-piece.tsx';
import { headOfPiece, YardFrame } from '../../shell/yard-frame.tsx';
import { lookOfReport } from '../../state/look-of.ts';
import { STAGE_HEADS } from '../../state/stage-heads.ts';
import { WalkSession } from '../../state/walk/walk-session.ts';
import { WalkKeys } from './walk-keys.tsx';
import styles from './walk-screen.module.css';
import { WalkSheet } from './walk-sheet.tsx';

/** One walk round the form: looked at stop by stop, taped where it is asked for, answered at once. */
export function WalkScreen({ piece, stage }: { readonly piece: string; readonly stage: 1 | 2 }) {
  return <WithPiece id={piece}>{(open) => <Walk piece={open} stage={stage} />}</WithPiece>;
}

function Walk({ piece, stage }: { readonly piece: OpenPiece; readonly stage: 1 | 2 }) {
  const yard = useYard();
  const { id } = piece;
  const walk = useMemo(
    () =>
      new WalkSession({
        device: yard.device,
        stage,
        read: () => {
          const reading = yard.piece(id).peek();
          return reading.kind === 'open' ? reading.piece : null;
        },
      }),
    [yard, id, stage],
  );
  const step = walk.step.value;
  const stops = walk.stops();
  const here = stops[walk.at.value] ?? null;
  const { setOut } = piece.plan;
  const ofOne = step.kind === 'tape' || step.kind === 'answer' ? step.number : null;
  const lit =
    step.kind === 'end' ? [] : ofOne !== null ? [ofOne] : (here?.stop.members.map(({ number }) => number) ?? []);
  const isDone = stops.filter(({ isDone }) => isDone).length;
  return (
    <YardFrame
      {...headOfPiece(piece)}
      stage={
        stops.length === 0
          ? STAGE_HEADS[stage]
          : `${STAGE_HEADS[stage]} · stop ${Math.min(walk.at.value + 1, stops.length)} of ${stops.length}, ${isDone} done`
      }
      back={places.piece(id)}
      isFixed
      keys={<WalkKeys walk={walk} piece={piece} here={here} />}
    >
      <div class={styles.walk}>
        <FormPlan
          setOut={setOut}
          lookOf={lookOfReport(piece.report, stage)}
          lit={lit}
          arrows={step.kind === 'answer' ? listArrows(piece, step.number) : []}
          onPick={(number) => walk.goTo(number)}
          onList={() => walk.showNumbers('go')}
        />
        <WalkSheet walk={walk} piece={piece} here={here} />
      </div>
    </YardFrame>
  );
}

/** Which way an insert that is off must go, on the plan. */
function listArrows({ report }: OpenPiece, number: number): readonly PlanArrow[] {
  const answer = report.inserts.find(({ item }) => item.number === number)?.answer ?? null;
  if (answer === null || answer.advice === 'good' || answer.advice === 'nothing measured') return [];
  const { deviation, item } = answer;
  return (['x', 'y'] as const).flatMap((axis) => {
    const off = deviation[axis];
    return off === null || Math.abs(off) <= item.tolerance ? [] : [{ number, axis, deviation: off }];
  });
}
