import { findLongest } from '../../../../assess/yard/digit-asks.ts';
import { placesOf } from '../../../../say/number-runs.ts';
import { places } from '../../../pieces/places.ts';
import { BigKey, BigLink } from '../../parts/big-key.tsx';
import { DigitPad } from '../../parts/digit-pad.tsx';
import { UndoKey } from '../../parts/undo-key.tsx';
import { tellTape } from '../../state/tape-words.ts';
import { findSight } from '../../state/walk/stop-state.ts';
import type { WalkStep } from '../../state/walk/walk-session.ts';
import { CageKey } from './cage-key.tsx';
import { InsertPhotoKey } from './insert-photo-key.tsx';
import type { WalkPartProps } from './walk-part.ts';

/** No level is more [mm], and so far beyond the form a tape may show an insert that is off. */
const DEEPEST = 300;
const BEYOND = 100;

/** The keys of a walk, for the step that it is in; the last entry can always be taken back. */
export function WalkKeys(props: WalkPartProps) {
  return (
    <>
      <StepKeys {...props} />
      <UndoKey piece={props.piece} onUndo={() => void props.walk.undo()} />
    </>
  );
}

function StepKeys(props: WalkPartProps) {
  const { walk, piece } = props;
  const step = walk.step.value;
  switch (step.kind) {
    case 'look':
      return <LookKeys {...props} />;
    case 'tape':
      return <TapeKeys {...props} step={step} />;
    case 'differs':
    case 'numbers':
      return (
        <BigKey kind="main" onPress={() => walk.look()}>
          Back to the stop
        </BigKey>
      );
    case 'answer':
      return <AnswerKeys {...props} number={step.number} />;
    case 'end':
      return (
        <>
          {walk.stops().length > 0 && (
            <>
              <BigKey onPress={() => walk.showNumbers('go')}>Go to an insert</BigKey>
              <BigKey onPress={() => walk.showNumbers('measure')}>Measure one more</BigKey>
            </>
          )}
          {walk.stage === 1 ? (
            <CageKey piece={piece} />
          ) : (
            <BigLink kind="main" to={places.piece(piece.id)}>
              To the piece
            </BigLink>
          )}
        </>
      );
  }
}

function LookKeys({ walk, here }: WalkPartProps) {
  if (here === null) return null;
  const isDone = here.unseen.length === 0;
  const numbers = (isDone ? here.stop.members : here.unseen).map(({ number }) => number);
  return (
    <>
      <BigKey kind="quiet" onPress={() => walk.showNumbers('go')}>
        Go to …
      </BigKey>
      <BigKey
        onPress={() =>
          here.stop.members.length === 1 ? walk.measure(here.stop.members[0]!.number) : walk.showNumbers('measure')
        }
        more="anything doubtful"
      >
        Measure this one too
      </BigKey>
      <BigKey kind="stop" onPress={() => walk.differ()}>
        Something differs
      </BigKey>
      {isDone && (
        <BigKey onPress={() => walk.skip()} more="nothing is left at this one">
          Next stop
        </BigKey>
      )}
      <BigKey
        kind={isDone ? 'plain' : 'main'}
        isTall
        more="type · face · firm"
        name={`All as shown: type, face, firm: ${placesOf(numbers)}`}
        meaning={`${numbers.join()} ${isDone}`}
        onPress={() => void walk.seeAll()}
      >
        {isDone ? 'As shown now' : 'All as shown'}
      </BigKey>
    </>
  );
}

function TapeKeys({
  walk,
  piece,
  step,
}: WalkPartProps & { readonly step: Extract<WalkStep, { readonly kind: 'tape' }> }) {
  const { setOut } = piece.plan;
  const item = setOut.items.find(({ number }) => number === step.number);
  const axis = step.axes[step.typed.length];
  if (item === undefined || axis === undefined) return null;
  const longest = axis === 'level' ? DEEPEST : findLongest(setOut, item, axis) + BEYOND;
  return (
    <>
      <DigitPad
        key={`${step.number} ${axis}`}
        label={`${step.number} · ${tellTape(setOut, item, axis)}`}
        longest={longest}
        goesOn={axis !== 'level'}
        hasMinus={axis === 'level'}
        onDone={(value) => void walk.type(value)}
      />
      {step.isFree && (
        <BigKey kind="quiet" onPress={() => void walk.type(null)}>
          Not taken
        </BigKey>
      )}
      {step.typed.length > 0 ? (
        <BigKey kind="quiet" onPress={() => walk.typeAgain()}>
          The one before again
        </BigKey>
      ) : (
        <BigKey kind="quiet" onPress={() => walk.look()}>
          Back to the stop
        </BigKey>
      )}
    </>
  );
}

function AnswerKeys({ walk, piece, number }: WalkPartProps & { readonly number: number }) {
  const insert = piece.report.inserts.find(({ item }) => item.number === number);
  if (insert === undefined) return null;
  const isWrong = findSight(piece.state, piece.plan, insert.item) === 'wrong';
  const meaning = String(number);
  return (
    <>
      <InsertPhotoKey piece={piece} item={insert.item} />
      <BigKey meaning={meaning} onPress={() => walk.goOn()} more="it stays on the list of what is open">
        Leave it, go on
      </BigKey>
      {isWrong ? (
        <>
          <BigKey meaning={meaning} onPress={() => walk.measure(number)} more="where it stands now">
            Measure it
          </BigKey>
          <BigKey kind="main" isTall meaning={meaning} more="look at it once more" onPress={() => walk.goTo(number)}>
            Put right
          </BigKey>
        </>
      ) : (
        <BigKey kind="main" isTall meaning={meaning} onPress={() => walk.measure(number)}>
          Moved: measure again
        </BigKey>
      )}
    </>
  );
}
