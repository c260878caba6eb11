import type { ClearanceChoice } from '../../../../assess/yard/clearance.ts';
import { mayDo } from '../../../../assess/yard/rights.ts';
import type { Person } from '../../../../records/person.ts';
import type { FactWriter } from '../../../pieces/facts.ts';
import type { OpenPiece } from '../../../pieces/read-piece.ts';
import { BigKey } from '../../parts/big-key.tsx';
import { TwoTaps } from '../../parts/two-taps.tsx';
import { UndoLast } from '../../parts/undo-last.tsx';
import type { ClearanceStep } from './clearance-step.ts';

export interface ClearanceKeysProps {
  readonly piece: OpenPiece;
  readonly choice: ClearanceChoice;
  readonly person: Person | null;
  readonly writer: FactWriter;
  readonly onStep: (step: ClearanceStep) => void;
  readonly onClear: () => void;
  readonly onPoured: () => void;
}

/** The keys that this person has here, in the order of what happens. One that somebody else has says who. */
export function ClearanceKeys(props: ClearanceKeysProps) {
  const { piece, person, writer, onStep, onPoured } = props;
  const { report } = piece;
  const isPoured = report.poured !== null;
  const isCleared = report.clearance.is === 'cleared' || report.clearance.is === 'cleared with a condition';
  const name = `${report.mark} no. ${report.serial}`;
  return (
    <>
      {person === null && <p>Say who you are first: on the screen of this device.</p>}
      {!isPoured && (
        <BigKey kind="stop" isDisabled={!mayDo(person, 'hold').may} onPress={() => onStep({ kind: 'hold' })}>
          Hold this piece
        </BigKey>
      )}
      {!isPoured && report.clearance.is !== 'cleared' && <ClearKeys {...props} />}
      {isPoured ? (
        <BigKey isDisabled={person === null} onPress={() => onStep({ kind: 'docket' })} more="number, mix, time">
          Docket of the concrete
        </BigKey>
      ) : isCleared ? (
        <TwoTaps
          kind="main"
          isDisabled={person === null}
          question={`Is ${name} poured?`}
          yes="Yes, it is poured"
          onYes={onPoured}
          says={<p>After this the check after screeding opens: level, plumb, cap.</p>}
        >
          It was poured
        </TwoTaps>
      ) : (
        <BigKey
          isDisabled={person === null}
          onPress={() => onStep({ kind: 'poured' })}
          more={report.clearance.is === 'override' ? 'on the override' : 'NOT CLEARED; asks why'}
        >
          It was poured
        </BigKey>
      )}
      <UndoLast piece={piece} writer={writer} />
    </>
  );
}

/** Clearing: without a condition, with one, on an override; one of them is the next step. */
function ClearKeys({ piece, choice, person, onStep, onClear }: ClearanceKeysProps) {
  const { report, context } = piece;
  const name = `${report.mark} no. ${report.serial}`;
  const right = mayDo(person, 'clear');
  const override = mayDo(person, 'override');
  const hard = choice.because.filter(({ isHard }) => isHard).length;
  // Whatever stands in the way of everybody is said before whose it is.
  const refusal = choice.may === 'refused' && choice.why !== null ? choice.why : !right.may ? right.why : null;
  return (
    <>
      {choice.because.length > 0 && (
        <BigKey
          kind="stop"
          isDisabled={!choice.mayOverride}
          onPress={() => onStep({ kind: 'override' })}
          more={
            choice.mayOverride
              ? `${choice.because.length} open; asks why`
              : override.may
                ? (choice.why ?? '')
                : override.why
          }
        >
          Pour on an override
        </BigKey>
      )}
      {choice.because.length > 0 && (
        <BigKey
          isDisabled={choice.may !== 'clear with a condition'}
          onPress={() => onStep({ kind: 'condition' })}
          more={
            !right.may ? right.why : hard > 0 ? `no condition lifts ${hard} of what is open` : 'names the condition'
          }
        >
          Clear on a condition
        </BigKey>
      )}
      <TwoTaps
        kind={report.clearance.is === 'none' || report.clearance.is === 'held' ? 'main' : 'plain'}
        isDisabled={choice.may !== 'clear'}
        more={refusal ?? (choice.because.length > 0 ? `${choice.because.length} open` : 'nothing is open')}
        question={`Clear ${name} to be poured?`}
        yes={`Clear ${name}`}
        onYes={onClear}
        says={
          <p>
            By revision {context.revision.letter}, in the name of {person?.name ?? 'nobody'}. What it is given on is
            kept with it.
          </p>
        }
      >
        Clear
      </TwoTaps>
    </>
  );
}
