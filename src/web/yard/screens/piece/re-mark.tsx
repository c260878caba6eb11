import { useSignal } from '@preact/signals';
import type { BodyOf } from '../../../../records/record.ts';
import type { OpenPiece } from '../../../pieces/read-piece.ts';
import { useYard } from '../../../pieces/yard.ts';
import { BigKey, KeyRow } from '../../parts/big-key.tsx';
import { FrameKeys } from '../../parts/frame-keys.tsx';
import { ReasonPicker } from '../../parts/reason-picker.tsx';
import { compareMarks, findNextSerial, listHeads } from '../../state/pieces/list-heads.ts';
import { spellMark } from '../../state/pieces/spell-mark.ts';

const REASONS = ['Another mark was painted on it', 'The wrong form was set', 'Serial was given twice'];

/** Which mark it really is, then why. It gets the next free number of that mark; its records stay with it. */
export function ReMark({
  piece,
  onTake,
  onBack,
}: {
  readonly piece: OpenPiece;
  readonly onTake: (body: BodyOf<'re-marked'>) => void;
  readonly onBack: () => void;
}) {
  const yard = useYard();
  const spelled = useSignal('');
  const chosen = useSignal<string | null>(null);
  const marks = [...piece.context.index.panels.keys()].sort(compareMarks);
  const mark = chosen.value;
  const panel = mark === null ? undefined : piece.context.index.panels.get(mark);
  if (mark !== null && panel !== undefined) {
    const serial = findNextSerial(listHeads(yard), mark);
    return (
      <ReasonPicker
        title={`${piece.head.mark} no. ${piece.head.serial} becomes ${mark} no. ${serial}. Why?`}
        reasons={REASONS}
        take={`Mark it ${mark} no. ${serial}`}
        kind="stop"
        onReason={(reason) => onTake({ panelKey: panel.key, mark, serial, reason })}
        onBack={() => (chosen.value = null)}
      />
    );
  }
  const { found, next } = spellMark(marks, spelled.value);
  const isSpelled = next.length === 0;
  return (
    <>
      <h2>Which mark is it really?</h2>
      <KeyRow>
        {(isSpelled ? found : next).map((word) => (
          <BigKey
            key={word}
            onPress={() => {
              if (isSpelled) chosen.value = word;
              else spelled.value = word;
            }}
          >
            {isSpelled ? word : `${word}…`}
          </BigKey>
        ))}
      </KeyRow>
      <FrameKeys>
        <BigKey isDisabled={spelled.value === ''} onPress={() => (spelled.value = '')}>
          From the start
        </BigKey>
        <BigKey onPress={onBack}>Back</BigKey>
      </FrameKeys>
    </>
  );
}
