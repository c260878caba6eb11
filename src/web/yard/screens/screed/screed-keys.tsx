import { placesOf } from '../../../../say/number-runs.ts';
import type { FactWriter } from '../../../pieces/facts.ts';
import { places } from '../../../pieces/places.ts';
import type { OpenPiece } from '../../../pieces/read-piece.ts';
import { BigKey, BigLink } from '../../parts/big-key.tsx';
import { DigitPad } from '../../parts/digit-pad.tsx';
import { UndoLast } from '../../parts/undo-last.tsx';
import { tellTape } from '../../state/tape-words.ts';
import type { ScreedSession, ScreedSight } from './screed-session.ts';
import type { ScreedStop } from './screed-stops.ts';

export interface ScreedKeysProps {
  readonly walk: ScreedSession;
  readonly piece: OpenPiece;
  readonly here: ScreedStop | null;
  readonly writer: FactWriter;
}

/** Of each of the three: what it is called when it is off. */
const OFF: readonly { readonly which: keyof ScreedSight; readonly words: string }[] = [
  { which: 'level', words: 'Not level' },
  { which: 'plumb', words: 'Not plumb' },
  { which: 'cap', words: 'No cap' },
];

/** The keys after screeding. */
export function ScreedKeys(props: ScreedKeysProps) {
  return (
    <>
      <StepKeys {...props} />
      <UndoLast piece={props.piece} writer={props.writer} onUndone={() => props.walk.goOn()} />
    </>
  );
}

function StepKeys({ walk, piece, here }: ScreedKeysProps) {
  const step = walk.step.value;
  const { setOut } = piece.plan;
  switch (step.kind) {
    case 'look': {
      if (here === null) return null;
      const isDone = here.unseen.length === 0;
      const numbers = (isDone ? here.members : here.unseen).map(({ number }) => number);
      return (
        <>
          <BigKey kind="stop" onPress={() => walk.off()}>
            Something is off
          </BigKey>
          {isDone && (
            <BigKey onPress={() => walk.goOn()} more="nothing is left at this one">
              Next
            </BigKey>
          )}
          <BigKey
            kind={isDone ? 'plain' : 'main'}
            isTall
            more={
              <>
                level · plumb · cap<span class="aloud">: {placesOf(numbers)}</span>
              </>
            }
            meaning={`${numbers.join()} ${isDone}`}
            onPress={() => void walk.allRight()}
          >
            {isDone ? 'All right now' : 'All right'}
          </BigKey>
        </>
      );
    }
    case 'which':
      return <BigKey onPress={() => walk.back()}>Back</BigKey>;
    case 'off':
      return (
        <>
          {OFF.map(({ which, words }) => (
            <BigKey key={which} kind="stop" isOn={!step.sight[which]} onPress={() => walk.turn(which)}>
              {words}
            </BigKey>
          ))}
          <BigKey onPress={() => walk.moved(step.number)} more="tape this one again">
            Moved along the face
          </BigKey>
          <BigKey kind="quiet" onPress={() => walk.back()}>
            Back
          </BigKey>
          <BigKey kind="main" onPress={() => void walk.say()}>
            Write it down
          </BigKey>
        </>
      );
    case 'level':
      return (
        <>
          <DigitPad
            label={`${step.number} · below the face`}
            mostDigits={3}
            hasMinus
            onDone={(value) => void walk.level(value)}
          />
          <BigKey onPress={() => void walk.level(null)}>Not taken</BigKey>
        </>
      );
    case 'moved': {
      const item = setOut.items.find(({ number }) => number === step.number);
      if (item === undefined) return null;
      const axis = step.x === null ? 'x' : 'y';
      return (
        <>
          <DigitPad
            key={axis}
            label={`${step.number} · ${tellTape(setOut, item, axis)}`}
            mostDigits={String(Math.ceil(Math.max(setOut.length, setOut.width))).length}
            goesOn
            onDone={(value) => void walk.tape(value)}
          />
          <BigKey kind="quiet" onPress={() => walk.back()}>
            Back
          </BigKey>
        </>
      );
    }
    case 'answer':
      return (
        <>
          <BigKey onPress={() => walk.pick(step.number)} more="put right, or something else">
            Look at it again
          </BigKey>
          <BigKey kind="main" isTall meaning={String(step.number)} onPress={() => walk.goOn()}>
            Go on
          </BigKey>
        </>
      );
    case 'end':
      return (
        <>
          {piece.plan.afterScreed.length > 0 && <BigKey onPress={() => walk.list()}>Look at one again</BigKey>}
          <BigLink kind="main" isTall to={places.piece(piece.id)}>
            To the piece
          </BigLink>
        </>
      );
  }
}
