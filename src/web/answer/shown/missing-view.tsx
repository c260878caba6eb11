import type { UnansweredCase } from '../../../assess/out-of-place/answer.ts';
import { FIELD_NAMES, sayCaseFault } from '../../../say/case-fault-words.ts';
import { writerOf } from '../../../say/quantities.ts';
import { units } from '../../parts/units.ts';
import { given } from '../state/case-state.ts';
import { goToField } from '../state/go-to-field.ts';
import styles from './shown.module.css';

/** What is still needed before anything can be said; each leads to its field. */
export function MissingView({ answer }: { readonly answer: UnansweredCase }) {
  if (given.value.role === null)
    return (
      <section class={styles.part}>
        <h2>Say first what it is for</h2>
        <p>Lifting and brace inserts stop here: they are not answered on a phone.</p>
        <p>For a fixing insert, five more values give an answer; all else is taken on the safe side and listed.</p>
      </section>
    );
  const isMissing = answer.faults.every(({ kind }) => kind === 'missing');
  return (
    <section class={styles.part} aria-labelledby="missing">
      <h2 id="missing">{isMissing ? 'Still needed' : 'To put right'}</h2>
      <p class={styles.caption}>
        {isMissing
          ? 'Nothing that could be assumed for these is on the safe side.'
          : 'There is no answer before these are put right.'}
      </p>
      <ul class={styles.assumed}>
        {answer.faults.map((fault) => (
          <li key={fault.field}>
            <button type="button" class={styles.open} onClick={() => goToField(fault.field)}>
              {fault.kind === 'missing' ? FIELD_NAMES[fault.field] : sayCaseFault(fault, writerOf(units.value))}
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}
