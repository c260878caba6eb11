import { useSignal } from '@preact/signals';
import { useMemo } from 'preact/hooks';
import { type PulledInsert, type PullReport, reportPullTests } from '../../../../assess/proof-load/pull-tests.ts';
import { callPerson, ROLE_WORDS } from '../../../../assess/yard/rights.ts';
import type { Person } from '../../../../records/person.ts';
import { PROOF_LOAD_CAUTION, tellProofLoadAnswer, tellProofLoadPlan } from '../../../../say/proof-load-words.ts';
import { PULL_STATES, tellAgainstPlan, tellGauge, tellPull, tellPullsDone } from '../../../../say/pull-words.ts';
import { Button } from '../../../parts/button.tsx';
import { Notice } from '../../../parts/notice.tsx';
import { Section } from '../../../parts/page.tsx';
import { type ShownState, StateMark } from '../../../parts/state-mark.tsx';
import { type Column, Table } from '../../../parts/table.tsx';
import { places } from '../../../pieces/places.ts';
import type { OpenPiece } from '../../../pieces/read-piece.ts';
import type { Yard } from '../../../pieces/yard.ts';
import { writeMoment } from '../../state/write-moment.ts';
import styles from './bolt-up.module.css';
import { PlanPullDialog } from './plan-pull-dialog.tsx';

const MARKS: Readonly<Record<PulledInsert['state'], ShownState>> = {
  passes: 'passes',
  fails: 'fails',
  'not shown': 'cannot be computed',
  'not pulled': 'strength not checked',
};

function Pulls({ insert: { tests }, people }: { readonly insert: PulledInsert; readonly people: readonly Person[] }) {
  return (
    <span class={styles.lines}>
      {tests.map(({ record }) => (
        <span key={record.id} class={styles.lines}>
          <span>{tellPull(record.body)}</span>
          <span class={styles.soft}>
            {`${tellGauge(record.body)}; ${callPerson(people, record.person)}, ${writeMoment(record.body.at ?? record.measuredAt)}`}
          </span>
        </span>
      ))}
    </span>
  );
}

function Verdicts({ insert: { tests } }: { readonly insert: PulledInsert }) {
  return (
    <span class={styles.lines}>
      {tests.flatMap(({ record, answer }) =>
        tellAgainstPlan(answer, record.body).map((words) => <span key={`${record.id} ${words}`}>{words}</span>),
      )}
    </span>
  );
}

function listColumns(people: readonly Person[]): readonly Column<PulledInsert>[] {
  return [
    { head: 'insert', kind: 'short', isName: true, cell: ({ item }) => `no. ${item.number}` },
    {
      head: 'stands',
      kind: 'short',
      cell: ({ state, isPlanned }) => (
        <StateMark state={MARKS[state]} words={isPlanned ? PULL_STATES[state] : `${PULL_STATES[state]}, not planned`} />
      ),
    },
    { head: 'as it was read', kind: 'wide', cell: (insert) => <Pulls insert={insert} people={people} /> },
    { head: 'against the plan', kind: 'wide', cell: (insert) => <Verdicts insert={insert} /> },
  ];
}

function Plan({
  report: { record, plan, isWithoutRight },
  people,
}: {
  readonly report: PullReport;
  readonly people: readonly Person[];
}) {
  if (record === null) return <p>Inserts were pulled without a plan: what they come to is not shown.</p>;
  const { role, reason } = record.body;
  return (
    <>
      <p>{`Planned by ${callPerson(people, record.person)} as ${ROLE_WORDS[role]}, ${writeMoment(record.measuredAt)}: ${reason}`}</p>
      {isWithoutRight && (
        <Notice kind="fault" title="The plan does not count">
          Whoever wrote it may not plan pull tests: QA or a design engineer with a registration plans them.
        </Notice>
      )}
      {plan === null ? (
        !isWithoutRight && (
          <Notice kind="fault" title="The plan cannot be read by the revision in force">
            Its inserts are not of one known type any more: plan the tests anew.
          </Notice>
        )
      ) : (
        <ul class={styles.lines}>
          {tellProofLoadPlan(plan).map((words) => (
            <li key={words}>{words}</li>
          ))}
        </ul>
      )}
    </>
  );
}

/** On the page of a piece: pull tests that are planned and made, what each comes to, and a characteristic value where enough gave way. */
export function PullPart({ yard, piece }: { readonly yard: Yard; readonly piece: OpenPiece }) {
  const isPlanning = useSignal(false);
  const { context, plan, state } = piece;
  const report = useMemo(() => reportPullTests(context, plan, state), [context, plan, state]);
  const { people } = context;
  const { record, inserts, answer } = report;
  const isEmpty = record === null && inserts.length === 0;
  return (
    <Section
      title="Pull tests"
      lead={PROOF_LOAD_CAUTION}
      actions={
        <>
          <Button
            onPress={() => {
              isPlanning.value = true;
            }}
          >
            {record === null ? 'Plan pull tests' : 'Plan anew'}
          </Button>
          {!isEmpty && (
            // Another page, made for the tablet.
            <a class={styles.link} href={places.pull(piece.id)}>
              On the tablet
            </a>
          )}
        </>
      }
    >
      {isEmpty ? (
        <p>No pull test is planned. QA or a design engineer plans one; then the tablet asks for each pull.</p>
      ) : (
        <>
          <Plan report={report} people={people} />
          {record !== null && (
            <p>
              <strong>{tellPullsDone(report)}</strong>
            </p>
          )}
          <Table
            caption="Pull tests"
            columns={listColumns(people)}
            rows={inserts}
            keyOf={({ item }) => item.castIn.key}
          />
          {answer !== null && (
            <ul class={styles.lines} aria-label="What the pull tests come to">
              {tellProofLoadAnswer(answer).map((words, k) => (
                <li key={words}>{k === 0 ? <strong>{words}</strong> : words}</li>
              ))}
            </ul>
          )}
        </>
      )}
      {isPlanning.value && (
        <PlanPullDialog
          yard={yard}
          piece={piece}
          chosen={record?.body.items ?? []}
          onClose={() => {
            isPlanning.value = false;
          }}
        />
      )}
    </Section>
  );
}
