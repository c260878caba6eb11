import type { SetOutItem } from '../../../../assess/set-out/set-out.ts';
import { placesOf } from '../../../../say/number-runs.ts';
import type { OpenPiece } from '../../../pieces/read-piece.ts';
import { Answer } from '../../parts/answer.tsx';
import { InsertPicture } from '../../parts/insert-picture.tsx';
import { InsertWords } from '../../parts/insert-words.tsx';
import { NumberPicker } from '../../parts/number-picker.tsx';
import { RecognisedAnswer } from '../../parts/recognised-answer.tsx';
import { DifferencePicker } from './difference-picker.tsx';
import { InsertAnswer } from './insert-answer.tsx';
import { SaidBefore } from './said-before.tsx';
import { WalkEnd } from './walk-end.tsx';
import type { WalkPartProps } from './walk-part.ts';
import styles from './walk-screen.module.css';

/** Below the plan: what it must look like, what differs, or what to do about it. */
export function WalkSheet({ walk, piece, here }: WalkPartProps) {
  const fault = walk.fault.value;
  return (
    <div class={styles.sheet}>
      <div class={styles.stack}>
        {fault !== null && (
          <Answer kind="wrong" words="Not written down">
            <p>{fault} What you typed is still here; try again.</p>
          </Answer>
        )}
        <RecognisedAnswer recognised={piece.report.recognised} />
        <SaidBefore walk={walk} piece={piece} />
        <Sheet walk={walk} piece={piece} here={here} />
      </div>
    </div>
  );
}

function Sheet({ walk, piece, here }: WalkPartProps) {
  const step = walk.step.value;
  const { setOut } = piece.plan;
  const find = (number: number) => setOut.items.find((item) => item.number === number) ?? null;
  switch (step.kind) {
    case 'end':
      return <WalkEnd walk={walk} piece={piece} />;
    case 'answer':
      return <InsertAnswer piece={piece} number={step.number} />;
    case 'differs':
      return here === null ? null : <DifferencePicker walk={walk} here={here} number={step.number} />;
    case 'numbers': {
      const items = setOut.items.filter(({ stage }) => stage === walk.stage);
      return (
        <>
          <p>{step.to === 'go' ? 'Go to which insert?' : 'Measure which insert?'}</p>
          <NumberPicker
            label={step.to === 'go' ? 'Go to' : 'Measure'}
            numbers={items.map(({ number }) => number)}
            onPick={(number) => (step.to === 'go' ? walk.goTo(number) : walk.measure(number))}
          />
        </>
      );
    }
    case 'tape': {
      const item = find(step.number);
      return item === null ? null : <Stop piece={piece} items={[item]} />;
    }
    case 'look':
      return here === null ? null : (
        <Stop piece={piece} items={here.unseen.length > 0 ? here.unseen : here.stop.members} />
      );
  }
}

function Stop({ piece, items }: { readonly piece: OpenPiece; readonly items: readonly SetOutItem[] }) {
  const [first] = items;
  if (first === undefined) return null;
  const { setOut } = piece.plan;
  return (
    <div class={styles.stop}>
      <InsertPicture setOut={setOut} item={first} />
      <div>
        <p class={styles.numbers}>{placesOf(items.map(({ number }) => number))}</p>
        <InsertWords setOut={setOut} item={first} />
      </div>
    </div>
  );
}
