import { useSignal } from '@preact/signals';
import { useMemo } from 'preact/hooks';
import { type PulledInsert, type PullReport, reportPullTests } from '../../../../assess/proof-load/pull-tests.ts';
import { PROOF_LOAD_CAUTION, tellProofLoadAnswer, tellProofLoadPlan } from '../../../../say/proof-load-words.ts';
import { PULL_STATES, tellAgainstPlan, tellPull, tellPullsDone } from '../../../../say/pull-words.ts';
import { FactWriter, factOf } from '../../../pieces/facts.ts';
import { places } from '../../../pieces/places.ts';
import type { OpenPiece } from '../../../pieces/read-piece.ts';
import { NO_TOOL } from '../../../pieces/survey/read-tool.ts';
import { useYard } from '../../../pieces/yard.ts';
import { Answer, type AnswerKind } from '../../parts/answer.tsx';
import { BigKey, BigLink } from '../../parts/big-key.tsx';
import { NotWritten } from '../../parts/not-written.tsx';
import { UndoLast } from '../../parts/undo-last.tsx';
import { WithPiece } from '../../shell/with-piece.tsx';
import { headOfPiece, YardFrame } from '../../shell/yard-frame.tsx';
import styles from '../bolts/bolts.module.css';
import { PullForm } from './pull-form.tsx';

/** Pull tests as they are planned: insert by insert what was read, and what it comes to at once. */
export function PullScreen({ piece }: { readonly piece: string }) {
  return <WithPiece id={piece}>{(open) => <Pull piece={open} />}</WithPiece>;
}

const KINDS: Readonly<Record<PulledInsert['state'], AnswerKind>> = {
  passes: 'good',
  fails: 'wrong',
  'not shown': 'unsure',
  'not pulled': 'ask',
};

const TOGETHER: Readonly<Record<'passes' | 'fails' | 'not shown', AnswerKind>> = {
  passes: 'good',
  fails: 'wrong',
  'not shown': 'unsure',
};

function Pull({ piece }: { readonly piece: OpenPiece }) {
  const { device } = useYard();
  const { context, plan, state } = piece;
  const writer = useMemo(() => new FactWriter(device), [device]);
  const report = useMemo(() => reportPullTests(context, plan, state), [context, plan, state]);
  const pulling = useSignal<string | null>(null);
  const gauge = useSignal(NO_TOOL);
  const insert = report.inserts.find(({ item }) => item.castIn.key === pulling.value);
  const look = () => {
    pulling.value = null;
  };
  const { plan: planned } = report;
  return (
    <YardFrame
      {...headOfPiece(piece)}
      stage={insert === undefined ? 'pull tests' : `pulling insert ${insert.item.number}`}
      back={places.bolts(piece.id)}
      keys={
        insert === undefined ? (
          <>
            <BigLink to={places.bolts(piece.id)} more="cards, tightening">
              Bolt up
            </BigLink>
            <UndoLast piece={piece} writer={writer} />
          </>
        ) : undefined
      }
    >
      <NotWritten fault={writer.fault.value} />
      {insert !== undefined && planned !== null ? (
        <PullForm
          key={insert.item.number}
          insert={insert}
          plan={planned}
          gauge={gauge}
          onBack={look}
          onPulled={async (body) => {
            if (await writer.write([{ ...factOf(piece, insert.item), kind: 'proof-loaded', body }])) look();
          }}
        />
      ) : (
        <PullList report={report} onPull={(key) => (pulling.value = key)} />
      )}
    </YardFrame>
  );
}

function PullList({ report, onPull }: { readonly report: PullReport; readonly onPull: (key: string) => void }) {
  const isNamed = useYard().device.person.value !== null;
  const { record, plan, inserts, answer, isWithoutRight } = report;
  if (record === null || plan === null)
    return (
      <>
        <Answer kind="ask" words={record === null ? 'No pull test is planned' : 'The plan does not count'}>
          <p>
            {record === null
              ? 'QA or a design engineer plans it in the office. Pull nothing before.'
              : isWithoutRight
                ? 'Whoever wrote it may not plan pull tests: QA or a design engineer must. Pull nothing before.'
                : 'Its inserts are not of one known type in the revision in force: it is planned anew. Pull nothing before.'}
          </p>
        </Answer>
        <Pulled inserts={inserts} />
      </>
    );
  return (
    <>
      <Answer kind="wrong" isSmall words="Nobody in the line of pull or under it">
        <p>{PROOF_LOAD_CAUTION} The puller is tied: nothing falls or flies when an insert gives way.</p>
      </Answer>
      {answer !== null && (
        <Answer
          kind={inserts.some(({ state }) => state !== 'not pulled') ? TOGETHER[answer.state] : 'ask'}
          words={tellPullsDone(report)}
        >
          {tellProofLoadAnswer(answer).map((words) => (
            <p key={words}>{words}</p>
          ))}
        </Answer>
      )}
      <div class={styles.cards}>
        {inserts
          .filter(({ isPlanned }) => isPlanned)
          .map(({ item, state, tests }) => (
            <BigKey
              key={item.castIn.key}
              kind={state === 'fails' ? 'stop' : 'plain'}
              isDisabled={!isNamed}
              more={`${PULL_STATES[state]}${tests.length > 0 ? ' · pull it once more' : ''}`}
              onPress={() => onPull(item.castIn.key)}
            >
              Insert {item.number}
            </BigKey>
          ))}
      </div>
      <Pulled inserts={inserts} />
      <ul class={styles.list}>
        {tellProofLoadPlan(plan).map((words) => (
          <li key={words}>{words}</li>
        ))}
      </ul>
    </>
  );
}

/** What was read of each, and what it comes to. */
function Pulled({ inserts }: { readonly inserts: readonly PulledInsert[] }) {
  return (
    <>
      {inserts
        .filter(({ tests }) => tests.length > 0)
        .map(({ item, state, tests }) => (
          <Answer
            key={item.castIn.key}
            kind={KINDS[state]}
            isSmall
            words={`Insert ${item.number}: ${PULL_STATES[state]}`}
          >
            {tests.flatMap(({ record, answer }) =>
              [tellPull(record.body), ...tellAgainstPlan(answer, record.body)].map((words) => (
                <p key={`${record.id} ${words}`}>{words}</p>
              )),
            )}
          </Answer>
        ))}
    </>
  );
}
