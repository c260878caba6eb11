import { places } from '../../../pieces/places.ts';
import type { OpenPiece } from '../../../pieces/read-piece.ts';
import { BigKey, BigLink } from '../../parts/big-key.tsx';
import { DigitPad } from '../../parts/digit-pad.tsx';
import { UndoKey } from '../../parts/undo-key.tsx';
import { type FormSession, findLongestMeasure } from '../../state/form/form-session.ts';

/** Digits while lengths are typed; afterwards, where to go. */
export function FormKeys({ form, piece }: { readonly form: FormSession; readonly piece: OpenPiece }) {
  const { next, before } = form;
  const isChecked = piece.report.form.state !== 'open' && piece.report.form.state !== 'open again';
  const isGood = piece.report.form.state === 'good' || piece.report.form.state === 'accepted';
  if (form.isWritten.value || (isChecked && form.values.value.length === 0 && !form.isAnew.value))
    return (
      <>
        <BigLink kind={isGood ? 'main' : 'plain'} isTall to={places.walk(piece.id, 1)} more="mould face and edges">
          Before the cage
        </BigLink>
        <BigKey
          kind={isGood ? 'plain' : 'main'}
          onPress={() => form.again()}
          more={isGood ? 'all lengths once more' : 'once it is put right'}
        >
          Measure the form again
        </BigKey>
        <UndoKey piece={piece} onUndo={() => void form.undo()} />
      </>
    );
  if (next === null)
    return (
      <BigKey kind="main" isTall onPress={() => void form.write()}>
        Write it down
      </BigKey>
    );
  return (
    <>
      {before !== null && (
        <BigKey meaning={next.what} onPress={() => void form.type(before)} more="the same depth">
          As before: {before}
        </BigKey>
      )}
      <DigitPad
        key={next.what}
        label={next.what}
        longest={findLongestMeasure(next)}
        goesOn
        onDone={(value) => void form.type(value)}
      />
      <BigKey
        kind="quiet"
        isDisabled={form.values.value.length === 0}
        more={form.values.value.length === 0 ? 'nothing to take back' : 'the length before'}
        onPress={() => form.back()}
      >
        Undo
      </BigKey>
    </>
  );
}
