import { useSignal } from '@preact/signals';
import { useLocation } from 'wouter-preact';
import { mayDo } from '../../../../assess/yard/rights.ts';
import { places } from '../../../pieces/places.ts';
import type { OpenPiece } from '../../../pieces/read-piece.ts';
import { useYard } from '../../../pieces/yard.ts';
import { Answer } from '../../parts/answer.tsx';
import { BigKey, BigLink } from '../../parts/big-key.tsx';
import { ReasonPicker } from '../../parts/reason-picker.tsx';
import { Question, TwoTaps } from '../../parts/two-taps.tsx';
import { keepPicture } from '../../photo/keep-photo.ts';
import { PhotoKey } from '../../photo/photo-key.tsx';
import { headOfPiece, YardFrame } from '../../shell/yard-frame.tsx';
import { findNextSerial, listHeads } from '../../state/pieces/list-heads.ts';
import { PieceActs } from '../../state/pieces/piece-acts.ts';
import styles from './piece-screen.module.css';
import { ReMark } from './re-mark.tsx';

const SCRAP_REASONS = ['Inserts wrong after the pour', 'Cracked or honeycombed', 'Wrong panel', 'Dropped'];

/** What is seldom done with a piece. What cannot be taken lightly asks twice, and why. */
export function PieceMore({ piece, onBack }: { readonly piece: OpenPiece; readonly onBack: () => void }) {
  const yard = useYard();
  const [, go] = useLocation();
  const mode = useSignal<'keys' | 'comment' | 'scrap' | 're-mark'>('keys');
  const reason = useSignal<string | null>(null);
  const fault = useSignal<string | null>(null);
  const acts = new PieceActs(yard.device, piece);
  const person = yard.device.person.value;
  const { head, report } = piece;
  const scrap = mayDo(person, 'scrap');
  const mark = mayDo(person, 're-mark');
  const serial = findNextSerial(listHeads(yard), head.mark);
  /** Does it, says what went wrong, and goes back where it went well. */
  const run = async (act: () => Promise<unknown>) => {
    try {
      await act();
      mode.value = 'keys';
      fault.value = null;
    } catch (error) {
      fault.value = error instanceof Error ? error.message : String(error);
    }
  };
  const frame = {
    ...headOfPiece(piece),
    stage: 'more',
    back: places.piece(piece.id),
    onBack,
  };
  if (mode.value === 're-mark')
    return (
      <YardFrame {...frame}>
        <ReMark piece={piece} onTake={(to) => void run(() => acts.reMark(to))} onBack={() => (mode.value = 'keys')} />
      </YardFrame>
    );
  if (mode.value !== 'keys')
    return (
      <YardFrame {...frame}>
        {fault.value !== null && <Answer kind="wrong" words={fault.value} />}
        <ReasonPicker
          title={mode.value === 'scrap' ? `Why is ${head.mark} no. ${head.serial} scrapped?` : 'What is to be said?'}
          reasons={
            mode.value === 'scrap' ? SCRAP_REASONS : ['Photo taken', 'Waiting for the office', 'Form changed over']
          }
          take={mode.value === 'scrap' ? 'Scrap it' : 'Write it down'}
          kind={mode.value === 'scrap' ? 'stop' : 'main'}
          onReason={(words) => {
            if (mode.value === 'scrap') reason.value = words;
            else void run(() => acts.comment(words));
          }}
          onBack={() => (mode.value = 'keys')}
        />
        {reason.value !== null && (
          <Question
            question={`Scrap ${head.mark} no. ${head.serial}?`}
            yes="Yes, it is scrapped"
            kind="stop"
            onNo={() => (reason.value = null)}
            onYes={() => {
              const words = reason.value;
              reason.value = null;
              if (words !== null)
                void run(async () => {
                  await acts.scrap(words);
                  onBack();
                });
            }}
          >
            <p>{reason.value}. Its records stay; another casting of the mark gets a number of its own.</p>
          </Question>
        )}
      </YardFrame>
    );
  return (
    <YardFrame
      {...frame}
      keys={
        <BigKey kind="main" onPress={onBack}>
          Back to the piece
        </BigKey>
      }
    >
      {fault.value !== null && <Answer kind="wrong" words={fault.value} />}
      <div class={styles.keys}>
        <BigLink to={places.history(piece.id)} more="every record of this piece">
          History
        </BigLink>
        <BigLink to={places.sheet(piece.id)} more="filled in with pencil">
          Type in a sheet
        </BigLink>
        <BigLink to={places.conflict(piece.id)} more="two answers that differ">
          Conflicts
        </BigLink>
        <PhotoKey
          more="of the whole piece"
          onPicture={async (picture) => {
            await run(async () => acts.photo(await keepPicture(yard.device, picture, 'piece')));
          }}
          onFault={(words) => (fault.value = words)}
        >
          Photo
        </PhotoKey>
        <BigKey more="in words" onPress={() => (mode.value = 'comment')}>
          Comment
        </BigKey>
        <TwoTaps
          more={`would be no. ${serial}`}
          question={`Begin ${head.mark} no. ${serial}, another casting of this mark?`}
          yes={`Begin no. ${serial}`}
          says={
            <p>
              {report.phase === 'scrapped'
                ? `It is made in place of no. ${head.serial}, which is scrapped.`
                : `It is a piece of its own beside no. ${head.serial}; records never mix.`}
            </p>
          }
          onYes={() =>
            void run(async () => {
              const begun = await acts.castAgain(serial, report.phase === 'scrapped');
              go(places.piece(begun));
            })
          }
        >
          Another casting
        </TwoTaps>
        <BigKey
          isDisabled={!mark.may}
          more={mark.may ? 'it is another mark than was thought' : mark.why}
          onPress={() => (mode.value = 're-mark')}
        >
          Mark anew
        </BigKey>
        <BigKey
          kind="stop"
          isDisabled={!scrap.may}
          more={scrap.may ? 'with a reason' : scrap.why}
          onPress={() => (mode.value = 'scrap')}
        >
          Scrap it
        </BigKey>
      </div>
    </YardFrame>
  );
}
