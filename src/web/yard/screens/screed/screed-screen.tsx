import { useMemo } from 'preact/hooks';
import type { SetOutItem } from '../../../../assess/set-out/set-out.ts';
import { placesOf } from '../../../../say/number-runs.ts';
import { useNow } from '../../../parts/use-now.ts';
import { FactWriter } from '../../../pieces/facts.ts';
import { places } from '../../../pieces/places.ts';
import type { OpenPiece } from '../../../pieces/read-piece.ts';
import { useYard } from '../../../pieces/yard.ts';
import { Answer } from '../../parts/answer.tsx';
import { FormPlan, type SpotLook } from '../../parts/form-plan.tsx';
import { NotWritten } from '../../parts/not-written.tsx';
import { NumberPicker } from '../../parts/number-picker.tsx';
import { WithPiece } from '../../shell/with-piece.tsx';
import { headOfPiece, YardFrame } from '../../shell/yard-frame.tsx';
import styles from './screed.module.css';
import { ScreedAnswer } from './screed-answer.tsx';
import { ScreedKeys } from './screed-keys.tsx';
import { ScreedSession } from './screed-session.ts';
import { findScreed, isRight, tellSetting } from './screed-stops.ts';

/** After screeding, while it can still be put right: level, plumb, cap, a tap a stop. */
export function ScreedScreen({ piece }: { readonly piece: string }) {
  return <WithPiece id={piece}>{(open) => <Screed piece={open} />}</WithPiece>;
}

/** One that is off, by sight or by what was taped since, is off whatever was said of it before. */
function lookOf({ state, plan, report }: OpenPiece): (item: SetOutItem) => SpotLook {
  const wanted = new Set(plan.afterScreed.map(({ castIn }) => castIn.key));
  const off = new Set(
    report.inserts.flatMap((insert) =>
      insert.state === 'out' || insert.state === 'conflict' ? [insert.item.number] : [],
    ),
  );
  return (item) => {
    if (!wanted.has(item.castIn.key)) return 'other';
    const record = findScreed(state, plan, item);
    if (record === null) return 'open';
    return isRight(record) && !off.has(item.number) ? 'good' : 'out';
  };
}

function Screed({ piece }: { readonly piece: OpenPiece }) {
  const yard = useYard();
  const { id, plan, report } = piece;
  const now = useNow();
  const { walk, writer } = useMemo(() => {
    const writer = new FactWriter(yard.device);
    const read = () => {
      const reading = yard.piece(id).peek();
      return reading.kind === 'open' ? reading.piece : null;
    };
    return { writer, walk: new ScreedSession(read, writer) };
  }, [yard, id]);
  const step = walk.step.value;
  const stops = walk.stops();
  const here = stops[walk.at.value] ?? null;
  const ofOne = 'number' in step ? step.number : null;
  const lit = step.kind === 'end' ? [] : ofOne !== null ? [ofOne] : (here?.members.map(({ number }) => number) ?? []);
  const poured = report.poured?.poured[0]?.measuredAt ?? null;
  const setting = tellSetting(poured, now);
  const done = stops.filter(({ unseen }) => unseen.length === 0).length;
  return (
    <YardFrame
      {...headOfPiece(piece)}
      stage={`3 · after screeding · ${done} of ${stops.length} stops done`}
      back={places.piece(id)}
      isFixed
      keys={<ScreedKeys walk={walk} piece={piece} here={here} writer={writer} />}
    >
      <div class={styles.screed}>
        <FormPlan
          setOut={plan.setOut}
          lookOf={lookOf(piece)}
          lit={lit}
          onPick={(number) => walk.goTo(number)}
          onList={() => walk.list()}
        />
        <div class={styles.sheet}>
          <NotWritten fault={writer.fault.value} />
          <Answer isSmall kind={setting.isLate ? 'move' : 'plain'} words={setting.words} />
          {step.kind === 'end' && <ScreedEnd piece={piece} />}
          {step.kind === 'answer' && <ScreedAnswer piece={piece} number={step.number} />}
          {step.kind === 'which' && (
            <>
              <h2>Which one?</h2>
              <NumberPicker label="Which one is off" numbers={step.numbers} onPick={(number) => walk.pick(number)} />
            </>
          )}
          {step.kind === 'look' && here !== null && (
            <>
              <p class={styles.numbers}>{placesOf(here.members.map(({ number }) => number))}</p>
              <p>
                Level: the straightedge over it. Plumb: the square at its plate. Cap: on and sealed. One look each; say
                what is off.
              </p>
              {here.wrong.length > 0 && (
                <Answer
                  isSmall
                  kind="wrong"
                  words={`Off when last looked at: ${placesOf(here.wrong.map(({ number }) => number))}`}
                />
              )}
            </>
          )}
          {step.kind === 'off' && (
            <>
              <p class={styles.numbers}>{placesOf([step.number])}</p>
              <p>Tap what is off; then write it down. Where it moved along the face, tape this one again.</p>
            </>
          )}
          {step.kind === 'level' && (
            <p>How far is {placesOf([step.number])} below the face? Above it: ±. An insert must never stand proud.</p>
          )}
          {step.kind === 'moved' && <p>Tape {placesOf([step.number])} again. The others keep what was measured.</p>}
        </div>
      </div>
    </YardFrame>
  );
}

function ScreedEnd({ piece }: { readonly piece: OpenPiece }) {
  const { plan } = piece;
  const look = lookOf(piece);
  if (plan.afterScreed.length === 0)
    return <Answer kind="plain" words="Nothing stands in the trowelled face of this piece" />;
  const off = plan.afterScreed.filter((item) => look(item) === 'out');
  return off.length === 0 ? (
    <Answer kind="good" words="All level, plumb and capped" />
  ) : (
    <Answer kind="wrong" words={`All looked at. Off: ${placesOf(off.map(({ number }) => number))}`}>
      <p>Put right what still moves and look again; what does not, stays written down as it is.</p>
    </Answer>
  );
}
