import { countOf } from '../../../../say/part-words.ts';
import { lookFrom } from '../../../pieces/survey/stand.ts';
import { Answer } from '../../parts/answer.tsx';
import { LiftingWord } from '../../parts/lifting-word.tsx';
import { NotWritten } from '../../parts/not-written.tsx';
import { ConnectionPicker } from './connection-picker.tsx';
import { EndForm } from './end-form.tsx';
import type { SurveyPartProps } from './survey-part.ts';
import styles from './survey-screen.module.css';
import { numberOf, tellHow, tellTaped } from './tell-ask.ts';

/** Under the picture: what is asked, what came out, and who is asked for the tool at the end. Where an insert should be is not said before it is taped. */
export function SurveySheet(props: SurveyPartProps) {
  return (
    <div class={styles.sheet}>
      <NotWritten fault={props.tape.fault.value} />
      <StepSheet {...props} />
    </div>
  );
}

function StepSheet(props: SurveyPartProps) {
  const { tape, piece } = props;
  const step = tape.step.value;
  switch (step.kind) {
    case 'start':
      return <StartSheet {...props} />;
    case 'connections':
      return <ConnectionPicker {...props} />;
    case 'tape': {
      const item = piece.plan.setOut.items.find(({ castIn }) => castIn.key === step.ask.item);
      return (
        <>
          <p class={styles.number}>
            {step.ask.kind === 'between'
              ? `${numberOf(piece, step.ask.item)} to ${numberOf(piece, step.ask.other)}`
              : `Insert ${item?.number}`}
          </p>
          <p class={styles.how}>{tellHow(step.ask)}</p>
          {item !== undefined && <LiftingWord role={item.castIn.role} />}
          <LastAnswer {...props} />
        </>
      );
    }
    case 'answer': {
      const answer = tape.answerOf(step.item);
      if (answer === null)
        return (
          <Answer kind="unsure" words={`${numberOf(piece, step.item)}: not taped`}>
            <p>Two distances from sides that cross are needed to say where it is.</p>
          </Answer>
        );
      return (
        <Answer kind={answer.isOff ? 'wrong' : 'good'} words={tellTaped(answer, tape.stand)}>
          {answer.isOff && <p>Was the tape read right? Tape it again before anybody decides about it.</p>}
          <Lean {...props} item={step.item} />
        </Answer>
      );
    }
    case 'rod':
      return (
        <p class={styles.how}>
          Screw a straight rod or long bolt into insert {numberOf(piece, step.item)}, as far as it goes. Where its end
          stands aside of its foot is read with a square on the face.
        </p>
      );
    case 'end':
      return <EndForm {...props} />;
    case 'written':
      return (
        <Answer kind="good" words="The survey is written down">
          <p>
            {tape.written.value === 'scaffold'
              ? 'Whether the plate goes on is answered at once, without a connection too.'
              : 'What is off is computed as it is; nothing is decided yet.'}
          </p>
        </Answer>
      );
  }
}

/** What the insert before came to, beside the next. */
function LastAnswer({ tape }: SurveyPartProps) {
  const step = tape.step.value;
  const last = tape.draft.value.entries.at(-1);
  if (last === undefined || step.kind !== 'tape' || last.item === step.ask.item) return null;
  const answer = tape.answerOf(last.item);
  if (answer === null) return null;
  return <Answer kind={answer.isOff ? 'wrong' : 'good'} isSmall words={tellTaped(answer, tape.stand)} />;
}

function Lean({ tape, piece, item }: SurveyPartProps & { readonly item: string }) {
  const entry = tape.draft.value.entries.findLast((one) => one.kind === 'tilt' && one.item === item);
  if (entry?.kind !== 'tilt') return null;
  const [right, up] = lookFrom(piece.plan.setOut.panel, tape.stand).turnToView([entry.x, entry.y]);
  return (
    <p>
      {`Leans ${Math.abs(Math.round(right))} mm to the ${right < 0 ? 'left' : 'right'} and ${Math.abs(Math.round(up))} mm ${up < 0 ? 'down' : 'up'} over ${entry.over} mm.`}
    </p>
  );
}

function StartSheet({ tape, piece }: SurveyPartProps) {
  const { face, turn } = tape.stand;
  const { items } = piece.plan.setOut;
  const onEdges = items.filter(({ castIn }) => castIn.face === 'edge').map(({ number }) => number);
  const before = (piece.state.beside.get('surveyed') ?? []).filter(({ id }) => !piece.state.withdrawn.has(id)).length;
  return (
    <Answer
      kind="plain"
      words={`You look at the ${face} face${turn === 0 ? ', its drawn top up' : `, turned by ${turn}°`}`}
    >
      <p>
        Turn the picture until it is as the panel lies or stands before you. Numbers are the inserts’ numbers on the
        check sheet.
      </p>
      {before > 0 && <p>{`${countOf(before, 'survey')} of this piece written down before.`}</p>}
      {onEdges.length > 0 && (
        <p>
          {`In the panel’s edges, not taped here: ${onEdges.join(', ')}. An instrument takes them; the office reads its file.`}
        </p>
      )}
    </Answer>
  );
}
