import { BigKey } from './big-key.tsx';
import { FrameKeys } from './frame-keys.tsx';
import { NumberPicker } from './number-picker.tsx';

/** Asks at which insert. */
export function PickInsert({
  question,
  numbers,
  onPick,
  onBack,
}: {
  readonly question: string;
  readonly numbers: readonly number[];
  readonly onPick: (number: number) => void;
  readonly onBack: () => void;
}) {
  return (
    <>
      <h2>{question}</h2>
      <NumberPicker label="Which insert" numbers={numbers} onPick={onPick} />
      <FrameKeys>
        <BigKey onPress={onBack}>Back</BigKey>
      </FrameKeys>
    </>
  );
}
