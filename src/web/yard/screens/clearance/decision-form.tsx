import { useSignal } from '@preact/signals';
import type { SetOutItem } from '../../../../assess/set-out/set-out.ts';
import type { InsertReport } from '../../../../assess/yard/piece-report.ts';
import { ROLE_WORDS } from '../../../../assess/yard/rights.ts';
import type { Person } from '../../../../records/person.ts';
import type { BodyOf } from '../../../../records/record.ts';
import { makeDecision, mayDecide, type Verdict } from '../../../pieces/decide.ts';
import type { OpenPiece } from '../../../pieces/read-piece.ts';
import { Answer } from '../../parts/answer.tsx';
import { BigKey } from '../../parts/big-key.tsx';
import { FormPlan, type PlanArrow } from '../../parts/form-plan.tsx';
import { FrameKeys } from '../../parts/frame-keys.tsx';
import { ReasonPicker } from '../../parts/reason-picker.tsx';
import { lookOfReport } from '../../state/look-of.ts';
import { tellInsert } from '../../state/tell-insert.ts';
import styles from './clearance.module.css';

export interface DecisionFormProps {
  readonly piece: OpenPiece;
  readonly number: number;
  readonly person: Person | null;
  readonly onBack: () => void;
  readonly onDecide: (item: SetOutItem, body: BodyOf<'decision'>) => void;
}

const VERDICTS: readonly {
  readonly verdict: Verdict;
  readonly words: string;
  readonly reasons: readonly string[];
  readonly isStop: boolean;
}[] = [
  {
    verdict: 'to be moved',
    words: 'To be moved',
    reasons: ['Still movable', 'Meets a bar there', 'Too near the edge'],
    isStop: false,
  },
  {
    verdict: 'rejected',
    words: 'Reject',
    reasons: ['Does not work there', 'Wrong type', 'Not the maker’s part'],
    isStop: true,
  },
  {
    verdict: 'accepted',
    words: 'Accept as placed',
    reasons: ['Computed as placed: works', 'The plate goes on shifted', 'Load is less there'],
    isStop: false,
  },
];

/** What becomes of an insert that is off: what was computed first, then the three answers, each with its reason. */
export function DecisionForm({ piece, number, person, onBack, onDecide }: DecisionFormProps) {
  const chosen = useSignal<Verdict | null>(null);
  const insert = piece.report.inserts.find(({ item }) => item.number === number);
  if (insert === undefined) return null;
  const { kind, words, more } = tellInsert(insert);
  const picked = VERDICTS.find(({ verdict }) => verdict === chosen.value);
  return (
    <>
      <Answer kind={kind} words={`${number}: ${words}`}>
        {more.map((line) => (
          <p key={line}>{line}</p>
        ))}
      </Answer>
      {picked === undefined ? (
        <>
          <FrameKeys>
            <BigKey onPress={onBack}>Back</BigKey>
            {VERDICTS.map(({ verdict, words: name, isStop }) => {
              const permission = mayDecide(person, insert, verdict);
              return (
                <BigKey
                  key={verdict}
                  kind={isStop ? 'stop' : 'plain'}
                  isDisabled={!permission.may}
                  onPress={() => (chosen.value = verdict)}
                  more={
                    permission.may
                      ? permission.as === null
                        ? undefined
                        : `as ${ROLE_WORDS[permission.as]}`
                      : permission.why
                  }
                >
                  {name}
                </BigKey>
              );
            })}
          </FrameKeys>
          <div class={styles.plan}>
            <FormPlan
              setOut={piece.plan.setOut}
              lookOf={lookOfReport(piece.report)}
              lit={[number]}
              arrows={listArrows(insert)}
            />
          </div>
        </>
      ) : (
        <ReasonPicker
          key={picked.verdict}
          title={`${picked.words}: insert ${number}. Why?`}
          reasons={picked.reasons}
          take={picked.words}
          kind={picked.isStop ? 'stop' : 'main'}
          onBack={() => (chosen.value = null)}
          onReason={(reason) => {
            const body = person === null ? null : makeDecision(insert, person, picked.verdict, reason);
            if (body !== null) onDecide(insert.item, body);
          }}
        />
      )}
    </>
  );
}

/** Which way it would have to go. */
function listArrows({ answer, item }: InsertReport): readonly PlanArrow[] {
  if (answer === null) return [];
  return (['x', 'y'] as const).flatMap((axis) => {
    const deviation = answer.deviation[axis];
    const isOff = deviation !== null && Math.abs(deviation) > item.tolerance;
    return isOff ? [{ number: item.number, axis, deviation }] : [];
  });
}
