import { useMemo } from 'preact/hooks';
import { FactWriter } from '../../../pieces/facts.ts';
import { places } from '../../../pieces/places.ts';
import { itemsBefore } from '../../../pieces/survey/stand.ts';
import type { TapeAsk } from '../../../pieces/survey/tape-asks.ts';
import { useYard } from '../../../pieces/yard.ts';
import { BigKey, BigLink } from '../../parts/big-key.tsx';
import { DigitPad } from '../../parts/digit-pad.tsx';
import { UndoLast } from '../../parts/undo-last.tsx';
import { InsertPhotoKey } from '../walk/insert-photo-key.tsx';
import type { SurveyPartProps } from './survey-part.ts';
import styles from './survey-screen.module.css';
import { numberOf, tellAsk } from './tell-ask.ts';

/** So far beyond the panel a tape may show an insert that is off; no insert sits deeper; no rod is longer [mm]. */
const BEYOND = 100;
const DEEPEST = 200;
const LONGEST_ROD = 999;

const NEXT_TURN = { 0: 90, 90: 180, 180: 270, 270: 0 } as const;

/** The keys of the survey, for the step that it is in. What was typed last is taken back by the lowest. */
export function SurveyKeys(props: SurveyPartProps) {
  const step = props.tape.step.value;
  switch (step.kind) {
    case 'start':
      return <StartKeys {...props} />;
    case 'connections':
      return (
        <BigKey kind="main" onPress={() => props.tape.backToStart()}>
          Back
        </BigKey>
      );
    case 'tape':
      return <TapeKeys {...props} ask={step.ask} />;
    case 'answer':
      return <AnswerKeys {...props} item={step.item} />;
    case 'rod':
      return <RodKeys {...props} item={step.item} typed={step.typed} />;
    case 'end':
      // The tool is asked for first: its part brings the keys.
      return null;
    case 'written':
      return <WrittenKeys {...props} />;
  }
}

/** Numbers are taken back before records are. */
function UndoNumber({ tape }: Pick<SurveyPartProps, 'tape'>) {
  const isEmpty = tape.draft.value.entries.length === 0 && tape.step.value.kind !== 'rod';
  return (
    <BigKey
      kind="quiet"
      isDisabled={isEmpty}
      more={isEmpty ? 'nothing yet' : 'last number'}
      onPress={() => tape.undo()}
    >
      Undo
    </BigKey>
  );
}

function UndoRecord({ piece }: Pick<SurveyPartProps, 'piece'>) {
  const { device } = useYard();
  const writer = useMemo(() => new FactWriter(device), [device]);
  return <UndoLast piece={piece} writer={writer} />;
}

function StartKeys({ tape, piece }: SurveyPartProps) {
  const { face, turn } = tape.stand;
  const other = face === 'outside' ? 'inside' : 'outside';
  const count = (one: 'outside' | 'inside') => itemsBefore(piece.plan.setOut, { face: one, turn }).length;
  const here = count(face);
  const typed = tape.draft.value.entries.length;
  return (
    <>
      <div class={styles.pair}>
        <BigKey kind="quiet" onPress={() => tape.standAt({ turn: NEXT_TURN[turn] })}>
          Turn it
        </BigKey>
        <BigKey kind="quiet" onPress={() => tape.standAt({ face: other })}>
          {`See ${other}`}
        </BigKey>
      </div>
      <BigKey onPress={() => tape.askConnections()} more="a few numbers for one plate">
        From a scaffold
      </BigKey>
      <BigKey
        kind="main"
        isTall
        isDisabled={here === 0}
        more={here === 0 ? 'none in this face' : `${here} in the ${face} face`}
        onPress={() => tape.begin(null)}
      >
        {typed === 0 ? 'Tape the inserts' : 'Go on taping'}
      </BigKey>
      {typed > 0 ? <UndoNumber tape={tape} /> : <UndoRecord piece={piece} />}
    </>
  );
}

function TapeKeys({ tape, piece, ask }: SurveyPartProps & { readonly ask: TapeAsk }) {
  const { setOut } = piece.plan;
  const longest = ask.kind === 'depth' ? DEEPEST : Math.hypot(setOut.length, setOut.width) + BEYOND;
  return (
    <>
      <DigitPad
        key={`${ask.kind} ${ask.item} ${ask.kind === 'side' ? ask.edge : ask.kind === 'between' ? ask.other : ''}`}
        label={tellAsk(piece, tape.stand, ask)}
        longest={longest}
        hasMinus={ask.kind === 'depth'}
        onDone={(value) => tape.type(value)}
      />
      <div class={styles.pair}>
        <BigKey kind="quiet" onPress={() => tape.type(null)}>
          {ask.kind === 'depth' ? 'Not taken' : 'Out of reach'}
        </BigKey>
        {ask.kind === 'side' && (
          <BigKey kind="quiet" onPress={() => tape.changeSide()}>
            Other side
          </BigKey>
        )}
        {/* Below the longer pad there is room for two. */}
        {ask.kind !== 'depth' && (
          <BigKey kind="quiet" isDisabled={tape.draft.value.entries.length === 0} onPress={() => tape.finish()}>
            Enough
          </BigKey>
        )}
        <UndoNumber tape={tape} />
      </div>
    </>
  );
}

function AnswerKeys({ tape, piece, item }: SurveyPartProps & { readonly item: string }) {
  const found = piece.plan.setOut.items.find(({ castIn }) => castIn.key === item);
  return (
    <>
      {found !== undefined && <InsertPhotoKey piece={piece} item={found} />}
      <BigKey more="a rod screwed into it" onPress={() => tape.holdRod(item)}>
        How it leans
      </BigKey>
      <BigKey meaning={item} more="both distances and the depth" onPress={() => tape.again(item)}>
        Tape it again
      </BigKey>
      <BigKey kind="main" isTall meaning={item} onPress={() => tape.goOn()}>
        Go on
      </BigKey>
      <UndoNumber tape={tape} />
    </>
  );
}

const ROD_ASKS = [
  'rod: its length out of the face',
  'its end aside to the right (± to the left)',
  'its end aside upward (± downward)',
] as const;

function RodKeys({
  tape,
  piece,
  item,
  typed,
}: SurveyPartProps & { readonly item: string; readonly typed: readonly number[] }) {
  const asked = ROD_ASKS[typed.length] ?? '';
  return (
    <>
      <DigitPad
        key={asked}
        label={`${numberOf(piece, item)} · ${asked}`}
        longest={typed.length === 0 ? LONGEST_ROD : DEEPEST}
        hasMinus={typed.length > 0}
        onDone={(value) => tape.typeRod(value)}
      />
      <UndoNumber tape={tape} />
    </>
  );
}

function WrittenKeys({ tape, piece }: SurveyPartProps) {
  return (
    <>
      <BigKey onPress={() => tape.backToStart()} more="other inserts, or once more">
        Tape more
      </BigKey>
      <BigLink
        kind="main"
        isTall
        to={places.fit(piece.id, tape.written.value === 'scaffold' ? tape.draft.value.connection : null)}
        more="the plate on its inserts"
      >
        Does it go on?
      </BigLink>
      <UndoRecord piece={piece} />
    </>
  );
}
