import { useSignal } from '@preact/signals';
import { Fragment } from 'preact';
import type { WorkedConnection } from '../../../../assess/assess-connection.ts';
import type { ConnectionState } from '../../../../assess/connection-answer.ts';
import { explainSteps, type SteppedRow } from '../../../../assess/explain/explain-steps.ts';
import type { ExplainedMode, Explanation, SkippedMode } from '../../../../assess/explain/explanation.ts';
import { nameInserts, nameModeLine } from '../../../../say/mode-words.ts';
import { listBendingSteps } from '../../../../say/plate-steps.ts';
import { nameMode } from '../../../../say/words.ts';
import { Button } from '../../../parts/button.tsx';
import { Section } from '../../../parts/page.tsx';
import { StateMark } from '../../../parts/state-mark.tsx';
import { writeQuantity } from '../../../parts/units.ts';
import { RatioBar } from './ratio-bar.tsx';
import styles from './results-part.module.css';
import { PlainSteps, RowSteps } from './step-lines.tsx';

/** So many lines are shown at once; what is used less comes on request. */
const FIRST = 4;

/** What tells one line of the results from another while numbers change. */
const keyOf = ({ mode, part, direction }: ExplainedMode) => `${mode} ${part} ${direction?.toFixed(3)}`;

function isSame(one: ExplainedMode, row: SteppedRow): boolean {
  const edge = (of: { readonly edge: ExplainedMode['edge'] }) => JSON.stringify(of.edge);
  return (
    row.mode === one.mode &&
    row.part === one.part &&
    edge(row) === edge(one) &&
    row.inserts.join() === one.inserts.join()
  );
}

/** The steps of one line, made when they are asked for. */
function ModeSteps({ worked, one }: { readonly worked: WorkedConnection; readonly one: ExplainedMode }) {
  if (one.mode === 'plate-bending') {
    const found = worked.cases.find(({ combination }) => combination.name === one.combination);
    const steps = listBendingSteps(found?.bending ?? null, worked.resolved.plate);
    return steps === null ? null : <PlainSteps title={nameMode(one.mode)} lines={[...steps.lines, ...steps.limits]} />;
  }
  const stepped = explainSteps(worked, one.combination, new Set([one.mode]));
  if (stepped === null) return null;
  const own = stepped.rows.filter((row) => isSame(one, row));
  return (
    <>
      {(own.length === 0 ? stepped.rows : own).map((row, i) => (
        <RowSteps key={i} row={row} />
      ))}
    </>
  );
}

const force = (newton: number | null) => (newton === null ? '' : writeQuantity('force', newton / 1000));

function Row({
  worked,
  one,
  state,
  isOpen,
  onToggle,
}: {
  readonly worked: WorkedConnection;
  readonly one: ExplainedMode;
  /** A ratio within the resistance is no pass where the connection is not covered. */
  readonly state: ConnectionState;
  readonly isOpen: boolean;
  readonly onToggle: () => void;
}) {
  const name = nameModeLine(one);
  const numbers = one.action === null ? force(one.resistance) : `${force(one.action)} of ${force(one.resistance)}`;
  return (
    <Fragment>
      <tr class={one.governs ? styles.governs : undefined}>
        <th scope="row" class={styles.mode}>
          {name}
          {one.governs && <span class="aloud"> (governs)</span>}
          <span class={styles.under}>
            {[nameInserts(one.inserts), one.combination ?? 'resistance alone']
              .filter((text) => text !== '')
              .join(' · ')}
            <span class={styles.narrow}>{numbers === '' ? '' : ` · ${numbers}`}</span>
          </span>
        </th>
        <td class={`${styles.number} ${styles.wide}`}>{force(one.action)}</td>
        <td class={`${styles.number} ${styles.wide}`}>{force(one.resistance)}</td>
        <td class={styles.bar}>
          <RatioBar ratio={one.ratio} state={state} />
        </td>
        <td class={styles.mark}>
          <StateMark state={state} isBare />
        </td>
        <td class={`${styles.toggle} not-printed`}>
          <button
            type="button"
            class={styles.open}
            aria-expanded={isOpen}
            aria-label={`${isOpen ? 'Close' : 'Steps'}: ${name}`}
            onClick={onToggle}
          >
            {isOpen ? 'Close' : 'Steps'}
          </button>
        </td>
      </tr>
      {isOpen && (
        <tr class={styles.steps}>
          <td colSpan={6}>
            <ModeSteps worked={worked} one={one} />
          </td>
        </tr>
      )}
    </Fragment>
  );
}

function Skipped({ skipped }: { readonly skipped: readonly SkippedMode[] }) {
  if (skipped.length === 0) return null;
  return (
    <p class={styles.skipped}>
      No number needed:{' '}
      {skipped
        .map(
          ({ mode, part, reasons }) => `${nameMode(mode)}${part === null ? '' : `, ${part}`} (${reasons.join('; ')})`,
        )
        .join(' · ')}
    </p>
  );
}

/** Every way to fail where it is used most, the governing one first; each opens its steps. */
export function ResultsPart({
  worked,
  explanation,
}: {
  readonly worked: WorkedConnection;
  readonly explanation: Explanation;
}) {
  const open = useSignal<ReadonlySet<string>>(new Set());
  const showsAll = useSignal(false);
  const { modes, skipped } = explanation;
  const keys = modes.map(keyOf);
  const isUncovered = explanation.answer.state === 'not covered';
  const isAll = keys.every((key) => open.value.has(key));
  const shown = showsAll.value || modes.length <= FIRST + 1 ? modes : modes.slice(0, FIRST);
  const toggle = (key: string) => {
    const next = new Set(open.value);
    if (!next.delete(key)) next.add(key);
    open.value = next;
  };
  return (
    <Section
      title="By way to fail"
      actions={
        <Button
          kind="quiet"
          onPress={() => {
            open.value = isAll ? new Set() : new Set(keys);
            showsAll.value = true;
          }}
        >
          {isAll ? 'Close all steps' : 'Open all steps'}
        </Button>
      }
    >
      <div class={styles.frame}>
        <table class={styles.table}>
          <caption class="aloud">Ways to fail, the governing one first</caption>
          <thead>
            <tr>
              <th scope="col">what, where it is used most</th>
              <th scope="col" class={`${styles.number} ${styles.wide}`}>
                action
              </th>
              <th scope="col" class={`${styles.number} ${styles.wide}`}>
                design resistance
              </th>
              <th scope="col" class={styles.number}>
                used
              </th>
              <th scope="col">
                <span class="aloud">state</span>
              </th>
              <th scope="col" class="not-printed">
                <span class="aloud">steps</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {shown.map((one, i) => (
              <Row
                state={isUncovered && one.state === 'passes' ? 'not covered' : one.state}
                key={keys[i]}
                worked={worked}
                one={one}
                isOpen={open.value.has(keys[i]!)}
                onToggle={() => toggle(keys[i]!)}
              />
            ))}
          </tbody>
        </table>
      </div>
      {modes.length > FIRST + 1 && (
        <div class="not-printed">
          <Button
            kind="quiet"
            onPress={() => {
              showsAll.value = !showsAll.value;
            }}
          >
            {showsAll.value ? 'The first only' : `All ${modes.length} ways to fail`}
          </Button>
        </div>
      )}
      {showsAll.value && <Skipped skipped={skipped} />}
    </Section>
  );
}
