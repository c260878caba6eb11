import type { ClearanceChoice } from '../../../../assess/yard/clearance.ts';
import type { OpenPoint } from '../../../../assess/yard/piece-report.ts';
import { ENGINE_VERSION } from '../../../../engine/version.ts';
import { isDecidable, listDecidable, mayDecide } from '../../../pieces/decide.ts';
import type { OpenPiece } from '../../../pieces/read-piece.ts';
import { useYard } from '../../../pieces/yard.ts';
import { Answer } from '../../parts/answer.tsx';
import { BigKey } from '../../parts/big-key.tsx';
import styles from './clearance.module.css';
import { tellStanding } from './standing-words.ts';

const LIFTED_BY: Readonly<Record<OpenPoint['liftedBy'], string>> = {
  'checking it': 'whoever checks it',
  setter: 'the form setter',
  qa: 'QA, or putting it right',
  'design engineer': 'a design engineer, or putting it right',
};

export interface ClearanceSheetProps {
  readonly piece: OpenPiece;
  readonly choice: ClearanceChoice;
  readonly onDecide: (number: number) => void;
  readonly onDecideForm: () => void;
}

/** How the piece stands: what must not be overlooked, what is decided, what is open and who can lift it, what a clearance would rest on. */
export function ClearanceSheet({ piece, choice, onDecide, onDecideForm }: ClearanceSheetProps) {
  const { device } = useYard();
  const { report, context } = piece;
  const decidable = new Map(listDecidable(report.inserts).map((insert) => [insert.item.number, insert]));
  const open = new Set(choice.because.map(({ number }) => number));
  const decided = [...decidable.values()].filter(({ item, state }) => state === 'accepted' && !open.has(item.number));
  const { head } = device.sync.value;
  return (
    <>
      {tellStanding(report, context.people).map(({ kind, words, more }) => (
        <Answer key={`${words} ${more.join()}`} kind={kind} words={words}>
          {more.map((line) => (
            <p key={line}>{line}</p>
          ))}
        </Answer>
      ))}
      <section aria-labelledby="open-points">
        <h2 id="open-points">{choice.because.length === 0 ? 'Nothing is open' : `${choice.because.length} open`}</h2>
        <ol class={styles.points}>
          {choice.because.map((point) => (
            <li key={`${point.number} ${point.words}`} class={point.isHard ? styles.hard : ''}>
              <div>
                <p>{point.words}</p>
                <p class={styles.lifted}>
                  {point.isHard && <strong>NO CONDITION LIFTS THIS. </strong>}
                  Lifted by: {LIFTED_BY[point.liftedBy]}
                </p>
              </div>
              {point.number !== null && decidable.has(point.number) && (
                <BigKey
                  kind="quiet"
                  name={`Decide about insert ${point.number}`}
                  onPress={() => onDecide(point.number ?? 0)}
                >
                  Decide
                </BigKey>
              )}
            </li>
          ))}
          {isDecidable(report.form) && <AboutForm piece={piece} onDecide={onDecideForm} />}
          {decided.map(({ item, decision }) => (
            <li key={item.number} class={styles.decided}>
              <div>
                <p>no. {item.number}: accepted as placed</p>
                {decision !== null && (
                  <p class={styles.lifted}>
                    {decision.body.reason} ({decision.body.role})
                  </p>
                )}
              </div>
              <BigKey
                kind="quiet"
                name={`Decide about insert ${item.number} again`}
                onPress={() => onDecide(item.number)}
              >
                Decide
              </BigKey>
            </li>
          ))}
        </ol>
      </section>
      <p class={styles.frozen}>
        A clearance keeps what it is given on: revision {context.revision.letter} ·{' '}
        {context.revision.fingerprint.slice(0, 12)}, inputs {report.clearance.inputs.slice(0, 12)}, engine{' '}
        {ENGINE_VERSION},{' '}
        {head === null || head.hash === null
          ? 'the server’s log not heard yet'
          : `server’s log no. ${head.number} · ${head.hash.slice(0, 12)}`}
        .
      </p>
    </>
  );
}

/** A form that is out: it can be put right, or taken as it is by a design engineer. */
function AboutForm({ piece, onDecide }: { readonly piece: OpenPiece; readonly onDecide: () => void }) {
  const { device } = useYard();
  const { form } = piece.report;
  const permission = mayDecide(device.person.value, form, 'accepted');
  return (
    <li class={styles.decided}>
      <div>
        <p>
          {form.decision === null
            ? 'The form: put it right, or have it accepted'
            : `The form: ${form.decision.body.verdict}`}
        </p>
        {form.decision !== null && (
          <p class={styles.lifted}>
            {form.decision.body.reason} ({form.decision.body.role})
          </p>
        )}
      </div>
      <BigKey
        kind="quiet"
        name="Accept the form as it is"
        isDisabled={!permission.may}
        onPress={onDecide}
        more={permission.may ? undefined : permission.why}
      >
        Accept
      </BigKey>
    </li>
  );
}
