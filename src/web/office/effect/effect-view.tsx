import { useSignal } from '@preact/signals';
import { proxy } from 'comlink';
import { useEffect, useState } from 'preact/hooks';
import { Link } from 'wouter-preact';
import type { BriefAnswer, ComparedState } from '../../../assess/compare-states.ts';
import { CONNECTION_STATES } from '../../../assess/connection-answer.ts';
import { nameCount } from '../../../say/count-words.ts';
import { showRatio } from '../../../say/numbers.ts';
import { countOf } from '../../../say/part-words.ts';
import { Button } from '../../parts/button.tsx';
import { Notice } from '../../parts/notice.tsx';
import { StateMark } from '../../parts/state-mark.tsx';
import { type Column, Table } from '../../parts/table.tsx';
import { askJobWorker } from '../../parts/worker-client.ts';
import type { OtherOutcome, OtherParts } from '../../worker/assess-other.ts';
import { addresses } from '../state/addresses.ts';
import type { JobSession } from '../state/session.ts';
import { tellError } from '../state/use-asked.ts';
import styles from './effect.module.css';

/** Rows that are shown at once; the others on request, since a large job has hundreds. */
const FIRST = 30;

type Run =
  | { readonly kind: 'computing'; readonly done: number; readonly total: number }
  | { readonly kind: 'done'; readonly outcome: OtherOutcome }
  | { readonly kind: 'failed'; readonly why: string };

/** How many of what is asked come to each state. */
function Counts({ answers }: { readonly answers: readonly BriefAnswer[] }) {
  return (
    <dd>
      {CONNECTION_STATES.map((state) => {
        const count = answers.filter((answer) => answer.state === state).length;
        return count === 0 ? null : <StateMark key={state} state={state} words={nameCount(state, count)} />;
      })}
    </dd>
  );
}

function Answer({ answer: { state, ratio } }: { readonly answer: BriefAnswer }) {
  return (
    <span class={styles.states}>
      <StateMark state={state} />
      {ratio !== null && <span>{showRatio(ratio)}</span>}
    </span>
  );
}

function Changes({
  session,
  connections,
}: {
  readonly session: JobSession;
  readonly connections: readonly ComparedState[];
}) {
  const changed = connections.filter(({ before, after }) => before.state !== after.state);
  const kept = connections.length - changed.length;
  const moved = connections.filter(({ before, after }) => showRatio(before.ratio) !== showRatio(after.ratio)).length;
  const isWhole = useSignal(false);
  const shown = isWhole.value ? changed : changed.slice(0, FIRST);
  const columns: readonly Column<ComparedState>[] = [
    {
      head: 'connection',
      isName: true,
      cell: ({ mark }) => <Link href={addresses.connection(session.id, mark)}>{mark}</Link>,
    },
    { head: 'panel', cell: ({ panel }) => panel },
    { head: 'now', cell: ({ before }) => <Answer answer={before} /> },
    { head: 'then', cell: ({ after }) => <Answer answer={after} /> },
  ];
  return (
    <>
      <dl class={styles.counts}>
        <dt>now</dt>
        <Counts answers={connections.map(({ before }) => before)} />
        <dt>then</dt>
        <Counts answers={connections.map(({ after }) => after)} />
      </dl>
      {changed.length === 0 ? (
        <p>
          No connection comes to another state;{' '}
          {moved === 0 ? 'all keep their ratio' : `${moved} come to another ratio`}.
        </p>
      ) : (
        <>
          <p>
            {countOf(changed.length, 'connection')} would come to another state, {kept} would not.
          </p>
          <Table
            caption="Connections that come to another state"
            columns={columns}
            rows={shown}
            keyOf={({ key }) => key}
          />
          {shown.length < changed.length && (
            <div>
              <Button
                onPress={() => {
                  isWhole.value = true;
                }}
              >
                Show all {changed.length}
              </Button>
            </div>
          )}
        </>
      )}
    </>
  );
}

/**
 * What a change of rules, catalogue or concretes would do to every connection, computed by the worker before it is made.
 * @param parts the same object as long as the change is the same
 */
export function EffectView({ session, parts }: { readonly session: JobSession; readonly parts: OtherParts }) {
  const [run, setRun] = useState<Run>({ kind: 'computing', done: 0, total: 1 });
  const { file } = session;
  useEffect(() => {
    const state = { isGone: false };
    setRun({ kind: 'computing', done: 0, total: 1 });
    const tellProgress = (done: number, total: number) => {
      if (!state.isGone) setRun({ kind: 'computing', done, total });
    };
    askJobWorker(async (worker) => worker.assessOther(parts, proxy(tellProgress))).then(
      (outcome) => {
        if (!state.isGone) setRun({ kind: 'done', outcome });
      },
      (error: unknown) => {
        if (!state.isGone) setRun({ kind: 'failed', why: tellError(error) });
      },
    );
    return () => {
      state.isGone = true;
    };
  }, [file, parts]);
  return (
    <div class={styles.effect} role="status" aria-busy={run.kind === 'computing'}>
      {run.kind === 'computing' && (
        <p>
          Every connection is computed with it …{' '}
          <progress class={styles.progress} max={run.total} value={run.done} aria-label="Connections computed" />
        </p>
      )}
      {run.kind === 'failed' && (
        <Notice kind="fault" title="It could not be computed">
          {run.why}
        </Notice>
      )}
      {run.kind === 'done' && run.outcome.kind === 'refused' && (
        <Notice kind="fault" title="The job cannot be so">
          {run.outcome.why}
        </Notice>
      )}
      {run.kind === 'done' && run.outcome.kind === 'compared' && (
        <Changes session={session} connections={run.outcome.connections} />
      )}
    </div>
  );
}
