import type { StrippedReport } from '../../../../assess/yard/after-stripping.ts';
import type { FactWriter } from '../../../pieces/facts.ts';
import type { OpenPiece } from '../../../pieces/read-piece.ts';
import { useYard } from '../../../pieces/yard.ts';
import { BigKey } from '../../parts/big-key.tsx';
import { UndoLast } from '../../parts/undo-last.tsx';
import type { AfterStep } from './after-step.ts';

export interface AfterKeysProps {
  readonly piece: OpenPiece;
  readonly stripped: StrippedReport;
  readonly writer: FactWriter;
  readonly onStep: (step: AfterStep) => void;
  readonly onAllOpen: () => void;
}

/** Stripped, then opened up with one tap; what is seldom needed is smaller. */
export function AfterKeys({ piece, stripped, writer, onStep, onAllOpen }: AfterKeysProps) {
  const isNamed = useYard().device.person.value !== null;
  const { isStripped, isOpenedUp } = stripped;
  return (
    <>
      <BigKey kind="quiet" isDisabled={!isNamed} onPress={() => onStep({ kind: 'locate' })}>
        Where it stands
      </BigKey>
      <BigKey kind="quiet" isDisabled={!isNamed} onPress={() => onStep({ kind: 'comment' })}>
        Comment
      </BigKey>
      <BigKey kind="quiet" isDisabled={!isNamed} onPress={() => onStep({ kind: 'strength' })}>
        Strength result
      </BigKey>
      <BigKey
        kind={isStripped ? 'plain' : 'main'}
        isDisabled={!isNamed}
        onPress={() => onStep({ kind: 'strip' })}
        more={isStripped ? 'count the plates again' : 'count the plates back'}
      >
        {isStripped ? 'Stripped' : 'It is stripped'}
      </BigKey>
      <BigKey
        kind="stop"
        isDisabled={!isNamed}
        onPress={() => onStep({ kind: 'pick' })}
        more="plate, mortar, thread, cap"
      >
        Something is wrong
      </BigKey>
      <BigKey
        kind={isStripped && !isOpenedUp ? 'main' : 'plain'}
        isTall
        meaning={String(isOpenedUp)}
        isDisabled={!isNamed}
        onPress={onAllOpen}
        more="plates off · mortar out · threads by hand · caps back in"
      >
        {isOpenedUp ? 'All as it must be now' : 'All as it must be'}
      </BigKey>
      <UndoLast piece={piece} writer={writer} />
    </>
  );
}
