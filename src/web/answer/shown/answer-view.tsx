import { useMemo } from 'preact/hooks';
import type { ComputedAnswer } from '../../../assess/out-of-place/answer.ts';
import { drawOutOfPlaceSketch } from '../../../drawing/out-of-place-sketch.ts';
import { CAUTIONS } from '../../../say/cautions.ts';
import { sayLoad } from '../../../say/out-of-place-text.ts';
import { CONDITIONS, listTold, sayAssumption, saySteps } from '../../../say/out-of-place-words.ts';
import { writerOf } from '../../../say/quantities.ts';
import { nameMode } from '../../../say/words.ts';
import { DrawingView } from '../../parts/drawing-view.tsx';
import { Notice } from '../../parts/notice.tsx';
import { StateMark } from '../../parts/state-mark.tsx';
import { units } from '../../parts/units.ts';
import { goToField, idOf } from '../state/go-to-field.ts';
import { AnswerActions } from './answer-actions.tsx';
import styles from './shown.module.css';

/** Large enough that its letters are read on a phone held at arm's length [mm of the drawing]. */
const SKETCH = { width: 90, height: 62, text: 4.2 };

function Sketch({ answer }: { readonly answer: ComputedAnswer }) {
  const { filled } = answer;
  const { length } = writerOf(units.value);
  const words = {
    nearest: length(filled.nearest),
    second: length(filled.second),
    spacing: length(filled.spacing),
    asDrawn: 'as drawn',
  };
  const drawing = useMemo(() => drawOutOfPlaceSketch(filled, words, SKETCH), [filled, units.value]);
  const beside = filled.neighbours === 0 ? '' : `, the next insert at ${words.spacing}`;
  const drawn = filled.drawn === null ? '' : ' Dashed: where it is drawn.';
  return (
    <figure class={styles.sketch}>
      <DrawingView
        drawing={drawing}
        title={`The insert to scale: ${words.nearest} from the edge below, ${words.second} from the edge to the left${beside}`}
      />
      <figcaption class={styles.caption}>
        Seen from the front, to scale: the body filled, its foot around it.{' '}
        {filled.neighbours > 0 && 'On which side others stand is not known.'}
        {drawn}
      </figcaption>
    </figure>
  );
}

function Limits({ answer }: { readonly answer: ComputedAnswer }) {
  const writer = writerOf(units.value);
  return (
    <dl class={styles.limits}>
      {listTold(answer, writer).map(({ words, limit: { force, mode } }) => (
        <div key={words} class={styles.limit}>
          <dt>{words}</dt>
          <dd>
            <strong class={styles.figure}>{force === null ? 'no limit' : writer.limit(force)}</strong>
            <span class={styles.mode}>
              {mode === null
                ? force === null
                  ? 'nothing computed here limits it'
                  : 'nothing resists it'
                : nameMode(mode)}
            </span>
          </dd>
        </div>
      ))}
    </dl>
  );
}

function Points({
  title,
  items,
  id,
}: {
  readonly title: string;
  readonly items: readonly string[];
  readonly id: string;
}) {
  return (
    <section aria-labelledby={id} class={styles.points}>
      <h3 id={id}>{title}</h3>
      <ul>
        {items.map((item) => (
          <li key={item}>{item}</li>
        ))}
      </ul>
    </section>
  );
}

/** Every value that nobody gave; one that has a field leads there. */
function Assumed({ answer }: { readonly answer: ComputedAnswer }) {
  const writer = writerOf(units.value);
  return (
    <section aria-labelledby="assumed" class={styles.part}>
      <h2 id="assumed">Assumed, on the safe side</h2>
      <p class={styles.caption}>Do you know one of these better? Press it: the insert may carry more.</p>
      <ul class={styles.assumed}>
        {answer.filled.assumptions.map((one) => {
          const { sentence } = sayAssumption(one, writer);
          const { field } = one;
          // Two of them are known only to whoever computes: no field asks for these.
          return (
            <li key={one.what}>
              {field === null || field === 'neighboursCarry' ? (
                <span class={styles.fixed}>{sentence}</span>
              ) : (
                <button type="button" class={styles.open} aria-controls={idOf(field)} onClick={() => goToField(field)}>
                  {sentence}
                </button>
              )}
            </li>
          );
        })}
      </ul>
    </section>
  );
}

/** The answer, what follows from it, and what it rests on. */
export function AnswerView({ answer }: { readonly answer: ComputedAnswer }) {
  const { may, ask, never } = saySteps(answer);
  return (
    <>
      <section class={styles.verdict} aria-live="polite">
        <StateMark state={answer.state} />
        <p class={styles.sentence}>{sayLoad(answer, writerOf(units.value))}</p>
      </section>
      <div class={styles.two}>
        {answer.limits.length > 0 && (
          <section aria-labelledby="carries" class={styles.part}>
            <h2 id="carries">Carries at most</h2>
            <p class={styles.caption}>Design (factored) loads, one at a time, nothing else acting.</p>
            <Limits answer={answer} />
          </section>
        )}
        <Sketch answer={answer} />
      </div>
      <AnswerActions answer={answer} />
      {answer.reasons.length > 0 && <Points id="reasons" title="It can be no pass, because" items={answer.reasons} />}
      <div class={styles.three}>
        <Points id="may" title="May be done now" items={may} />
        <Points id="ask" title="Needs the design engineer" items={ask} />
        <Points id="never" title="Never" items={never} />
      </div>
      <Assumed answer={answer} />
      <Points id="holds" title="Holds only if" items={CONDITIONS} />
      <Notice kind="caution">
        <ul>
          {CAUTIONS.map((caution) => (
            <li key={caution}>{caution}</li>
          ))}
        </ul>
      </Notice>
      <p class={styles.caption}>
        By {answer.document}, Onepour {answer.version}. Not covered here: lifting, bracing, earthquake, fire, fatigue,
        inserts set after the pour, packers and recesses.
      </p>
    </>
  );
}
