import { useSignal } from '@preact/signals';
import type { SetOutItem } from '../../../../assess/set-out/set-out.ts';
import { findNeededEngagement, proveThread } from '../../../../assess/yard/after-stripping.ts';
import type { BodyOf } from '../../../../records/record.ts';
import type { OpenPiece } from '../../../pieces/read-piece.ts';
import { useYard } from '../../../pieces/yard.ts';
import { Answer } from '../../parts/answer.tsx';
import { BigKey } from '../../parts/big-key.tsx';
import { DigitPad } from '../../parts/digit-pad.tsx';
import { FrameKeys } from '../../parts/frame-keys.tsx';
import { InsertPicture } from '../../parts/insert-picture.tsx';
import { keepPicture } from '../../photo/keep-photo.ts';
import { PhotoKey } from '../../photo/photo-key.tsx';
import styles from './after.module.css';
import { startException, UNCOVER_ANSWERS } from './uncover.ts';

export interface ExceptionFormProps {
  readonly piece: OpenPiece;
  readonly item: SetOutItem;
  readonly onSay: (body: BodyOf<'uncovered'>) => void;
  readonly onPhoto: (body: BodyOf<'photo'>) => void;
  readonly onCap: () => void;
  readonly onBack: () => void;
}

/** What is not as it must be at one insert, and how many turns a bolt goes in by hand. */
export function ExceptionForm({ piece, item, onSay, onPhoto, onCap, onBack }: ExceptionFormProps) {
  const { device } = useYard();
  const insert = piece.report.inserts.find((one) => one.item.number === item.number);
  const [before] = (insert?.uncovered?.latest ?? []).flatMap((record) =>
    record.kind === 'uncovered' ? [record.body] : [],
  );
  const said = useSignal(startException(before ?? null));
  const note = useSignal(said.value.note ?? '');
  const isCounting = useSignal(false);
  const fault = useSignal<string | null>(null);
  const needed = findNeededEngagement(piece.context.index, piece.plan.setOut.panel.mark, item);
  const { turns } = said.value;
  const proof =
    item.item === null || needed === null || turns === null ? null : proveThread(item.item.thread, turns, needed);
  if (isCounting.value)
    return (
      <section class={styles.form}>
        <p>
          Insert {item.number}: turn a bolt of the final finish in by hand, no spanner, until it stops. Count whole
          turns.
        </p>
        <FrameKeys>
          <DigitPad
            label={`${item.number} · turns by hand`}
            unit="turns"
            mostDigits={2}
            doneWords="Take it"
            onDone={(value) => {
              said.value = { ...said.value, turns: value };
              isCounting.value = false;
            }}
          />
          <BigKey kind="quiet" onPress={() => (isCounting.value = false)}>
            Back
          </BigKey>
        </FrameKeys>
      </section>
    );
  return (
    <section class={styles.form} aria-labelledby="exception">
      <h2 id="exception">Insert {item.number}: tap what is not as it must be</h2>
      {fault.value !== null && <Answer kind="unsure" isSmall words={fault.value} />}
      <div class={styles.exception}>
        <InsertPicture setOut={piece.plan.setOut} item={item} />
        <div class={styles.keys}>
          {UNCOVER_ANSWERS.map(({ which, wrong, more }) => (
            <BigKey
              key={which}
              kind="stop"
              isOn={!said.value[which]}
              more={more}
              onPress={() => (said.value = { ...said.value, [which]: !said.value[which] })}
            >
              {wrong}
            </BigKey>
          ))}
          <BigKey onPress={() => (isCounting.value = true)} more={turns === null ? 'not counted yet' : 'count again'}>
            {turns === null ? 'Count the turns' : `${turns} turns by hand`}
          </BigKey>
          <PhotoKey
            more="of the defect"
            onFault={(words) => (fault.value = words)}
            onPicture={async (picture) => onPhoto(await keepPicture(device, picture, 'defect'))}
          >
            Photo
          </PhotoKey>
          {insert?.uncovered !== null && (
            <BigKey onPress={onCap} more="put in now">
              Cap is back in
            </BigKey>
          )}
        </div>
      </div>
      {proof !== null && (
        <Answer
          kind={proof.isEnough ? 'good' : 'wrong'}
          isSmall
          words={`${turns} turns of ${proof.thread} are ${Number(proof.engagement.toFixed(1))} mm in the thread; ${Number(proof.needed.toFixed(1))} mm needed`}
        >
          {!proof.isEnough && (
            <p>Clean it by hand and try again. Never tap a galvanised thread. Else the design engineer decides.</p>
          )}
        </Answer>
      )}
      <label class={styles.field}>
        In words (not needed)
        <input
          type="text"
          maxLength={500}
          autocomplete="off"
          value={note.value}
          onInput={({ currentTarget }) => (note.value = currentTarget.value)}
        />
      </label>
      <FrameKeys>
        <BigKey onPress={onBack}>Back</BigKey>
        <BigKey
          kind="main"
          meaning="exception"
          onPress={() => onSay({ ...said.value, note: note.value.trim() === '' ? null : note.value.trim() })}
        >
          Write it down
        </BigKey>
      </FrameKeys>
    </section>
  );
}
