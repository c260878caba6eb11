import { type Signal, useSignal } from '@preact/signals';
import type { PulledInsert } from '../../../../assess/proof-load/pull-tests.ts';
import type { ProofLoadPlan } from '../../../../assess/proof-load/test-plan.ts';
import type { BodyOf } from '../../../../records/record.ts';
import { FAILURES } from '../../../../say/pull-words.ts';
import { NO_PULL, readPull } from '../../../pieces/pull/read-pull.ts';
import type { TypedTool } from '../../../pieces/survey/read-tool.ts';
import { Answer } from '../../parts/answer.tsx';
import { BigKey } from '../../parts/big-key.tsx';
import { FrameKeys } from '../../parts/frame-keys.tsx';
import after from '../after/after.module.css';
import styles from '../bolts/bolts.module.css';

type Pulled = BodyOf<'proof-loaded'>;

const WAYS = Object.keys(FAILURES) as (keyof typeof FAILURES)[];

/** A load as people read it off a gauge. */
function plain(value: number): string {
  return String(Number(value.toFixed(2)));
}

/** Words on a key begin large. */
function upper(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}

export interface PullFormProps {
  readonly insert: PulledInsert;
  readonly plan: ProofLoadPlan;
  /** One gauge for insert after insert: typed once. */
  readonly gauge: Signal<TypedTool>;
  readonly onPulled: (body: Pulled) => void;
  readonly onBack: () => void;
}

/** What is read at one pull: load, hold, movement, feet, whether it held, the gauge. */
export function PullForm({ insert, plan, gauge, onPulled, onBack }: PullFormProps) {
  const typed = useSignal(NO_PULL);
  const read = readPull(typed.value, gauge.value);
  const { failure } = typed.value;
  const isOver = typeof read !== 'string' && read.load_kN > plan.most;
  const field = (name: 'load' | 'hold' | 'movement' | 'support', words: string) => (
    <label class={after.field}>
      {words}
      <input
        type="text"
        inputMode="decimal"
        maxLength={12}
        autocomplete="off"
        value={typed.value[name]}
        onInput={({ currentTarget }) => (typed.value = { ...typed.value, [name]: currentTarget.value })}
      />
    </label>
  );
  const sticker = (name: keyof TypedTool, words: string, longest: number) => (
    <label class={after.field}>
      {words}
      <input
        type="text"
        maxLength={longest}
        autocomplete="off"
        value={gauge.value[name]}
        onInput={({ currentTarget }) => (gauge.value = { ...gauge.value, [name]: currentTarget.value.trim() })}
      />
    </label>
  );
  return (
    <section class={styles.form} aria-labelledby="pull">
      <h2 id="pull">Insert {insert.item.number}: what was read?</h2>
      <p class={styles.large}>
        {`${plain(plan.load.value)} kN, held ${plain(plan.hold.value / 60)} min`}
        {Number.isFinite(plan.displacement.value) ? `, moving at most ${plain(plan.displacement.value)} mm` : ''}
        {`; feet ${Math.round(plan.supportNeeded)} mm or more from the axis. Never above ${plain(plan.most)} kN.`}
      </p>
      <div class={styles.keys}>
        {field('load', 'Greatest load, kN')}
        {field('hold', 'Held, minutes')}
        {field('movement', 'Moved at the end, mm')}
        {field('support', 'Nearest foot to the axis, mm')}
      </div>
      <h3>Did it hold?</h3>
      <div class={styles.keys}>
        <BigKey isOn={failure === null} onPress={() => (typed.value = { ...typed.value, failure: null })}>
          It held
        </BigKey>
        {WAYS.map((way) => (
          <BigKey
            key={way}
            kind="stop"
            isOn={failure === way}
            more="it gave way"
            onPress={() => (typed.value = { ...typed.value, failure: way })}
          >
            {upper(FAILURES[way])}
          </BigKey>
        ))}
      </div>
      <h3>The gauge; what is not read stays a gap</h3>
      <div class={styles.keys}>
        {sticker('name', 'What it is', 200)}
        {sticker('serial', 'Its number', 60)}
        {sticker('until', 'Calibrated until, as 2027-03-31', 10)}
      </div>
      {isOver && (
        <Answer kind="wrong" isSmall words={`More than the ${plain(plan.most)} kN that the steel may see`}>
          <p>Nothing is bolted to this insert until the design engineer has decided.</p>
        </Answer>
      )}
      <FrameKeys>
        <BigKey onPress={onBack}>Back</BigKey>
        <BigKey
          kind={failure === null || failure === undefined ? 'main' : 'stop'}
          isTall
          meaning="pulled"
          isDisabled={typeof read === 'string'}
          more={typeof read === 'string' ? read : 'it is judged at once'}
          onPress={() => {
            if (typeof read !== 'string') onPulled(read);
          }}
        >
          Write it down
        </BigKey>
      </FrameKeys>
    </section>
  );
}
