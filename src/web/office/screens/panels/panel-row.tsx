import { Link } from 'wouter-preact';
import type { ConnectionAnswer } from '../../../../assess/connection-answer.ts';
import { findNextStep, type NextStep } from '../../../../assess/next-step.ts';
import { type PanelStatus, STATES_BY_NEED } from '../../../../assess/panel-status.ts';
import { tellNextStep } from '../../../../say/next-step-words.ts';
import { showRatio } from '../../../../say/numbers.ts';
import { countState, nameMode } from '../../../../say/words.ts';
import { Button } from '../../../parts/button.tsx';
import { Sign } from '../../../parts/signs.tsx';
import { StateMark } from '../../../parts/state-mark.tsx';
import { writeQuantity } from '../../../parts/units.ts';
import { addresses } from '../../state/addresses.ts';
import { PanelThumbnail } from './panel-thumbnail.tsx';
import styles from './panels.module.css';

const count = (number: number, one: string) => `${number} ${one}${number === 1 ? '' : 's'}`;

/** Where the next step is done. */
function addressOf(job: string, mark: string, step: NextStep): string {
  switch (step.kind) {
    case 'fails':
    case 'cannot be computed':
    case 'not covered':
    case 'strength not checked':
      return addresses.connection(job, step.connection.mark);
    case 'pour':
      return addresses.pour(job, step.pour);
    case 'unplanned':
      return addresses.pours(job);
    default:
      return addresses.panel(job, mark);
  }
}

/** The whole reason, where a row has room for its first words. */
function reasonOf(step: NextStep): string | undefined {
  return 'connection' in step ? step.connection.reasons.join('; ') || undefined : undefined;
}

/** One panel of the list. */
export function PanelRow({
  job,
  status,
  answers,
  place,
  count: of,
  onMore,
}: {
  readonly job: string;
  readonly status: PanelStatus;
  readonly answers: ReadonlyMap<string, ConnectionAnswer>;
  readonly place: number;
  readonly count: number;
  readonly onMore: (mark: string) => void;
}) {
  const { panel, counts, computing, highest, castIns, connections } = status;
  const step = findNextStep(status);
  return (
    <li class={styles.row} aria-setsize={of} aria-posinset={place}>
      <PanelThumbnail status={status} answers={answers} />
      <div class={styles.what}>
        <Link class={styles.mark} href={addresses.panel(job, panel.mark)} data-panel={panel.mark}>
          {panel.mark}
        </Link>
        <span class={styles.faint}>
          {panel.concrete}, {writeQuantity('length', panel.thickness_mm)}
        </span>
        <span class={styles.faint}>
          {count(castIns.length, 'item')}, {count(connections.length, 'connection')}
        </span>
        {panel.handedOf !== null && <span class={styles.faint}>handed partner of {panel.handedOf}</span>}
      </div>
      <div class={styles.states}>
        {STATES_BY_NEED.map((state) =>
          counts[state] === 0 ? null : <StateMark key={state} state={state} words={countState(state, counts[state])} />,
        )}
        {computing > 0 && <StateMark state="computing" words={`${computing} being computed`} />}
        {connections.length === 0 && <span class={styles.faint}>no connection</span>}
      </div>
      <div class={styles.ratio}>
        {highest !== null && (
          <>
            <strong>{showRatio(highest.ratio)}</strong>
            <span class={styles.faint}>
              {highest.mark}
              {highest.governing === null ? '' : ` ${nameMode(highest.governing.mode)}`}
            </span>
          </>
        )}
      </div>
      <Link class={styles.next} href={addressOf(job, panel.mark, step)} title={reasonOf(step)}>
        {tellNextStep(step, panel.handedOf)}
      </Link>
      <div class={styles.more}>
        <Button
          kind="quiet"
          name={`More about ${panel.mark}: copy, handed partner, remove`}
          onPress={() => onMore(panel.mark)}
        >
          <Sign name="more" />
        </Button>
      </div>
    </li>
  );
}
