import type { UnansweredCase } from '../../../assess/out-of-place/answer.ts';
import type { CaseField, KnownField } from '../../../assess/out-of-place/case.ts';
import { FARTHEST_EDGE } from '../../../assess/out-of-place/fill-case.ts';
import { threadNames } from '../../../engine/hardware/threads.ts';
import { FIELD_NAMES, sayExpected } from '../../../say/case-fault-words.ts';
import { NEIGHBOUR_WORDS } from '../../../say/out-of-place-page.ts';
import { writerOf } from '../../../say/quantities.ts';
import { units, writeQuantity } from '../../parts/units.ts';
import { given, say } from '../state/case-state.ts';
import styles from './form.module.css';
import { ListField, SideField } from './picked-field.tsx';
import { TypedField } from './typed-field.tsx';

/** Why a value cannot be; what is only missing is said elsewhere. */
export function findFault(faults: UnansweredCase['faults'], field: CaseField | KnownField): string | null {
  const fault = faults.find((one) => one.field === field && one.kind !== 'missing');
  return fault === undefined ? null : `It cannot be: ${sayExpected(fault, writerOf(units.value))}`;
}

const ROLES = [
  { value: 'fixing', text: 'Fixing' },
  { value: 'brace', text: 'Brace' },
  { value: 'lifting', text: 'Lifting' },
] as const;

const COUNTS = [0, 1, 2, 3] as const;

/** The twelve values, the role first. */
export function CaseForm({ faults }: { readonly faults: UnansweredCase['faults'] }) {
  const { role, thread, neighbours, isPoured, ...numbers } = given.value;
  const typed = (field: keyof typeof numbers, whenEmpty: string, extra = {}) => (
    <TypedField
      field={field}
      label={FIELD_NAMES[field]}
      quantity={field.endsWith('_kN') ? 'force' : field.endsWith('_MPa') ? 'stress' : 'length'}
      value={numbers[field]}
      onType={(value) => say(field, value)}
      whenEmpty={whenEmpty}
      fault={findFault(faults, field)}
      {...extra}
    />
  );
  const far = { quick: { text: `≥ ${writeQuantity('length', FARTHEST_EDGE)}`, value: FARTHEST_EDGE } };
  return (
    <form class={styles.form} onSubmit={(event) => event.preventDefault()}>
      <div class={styles.wide}>
        <SideField
          field="role"
          label={FIELD_NAMES.role}
          value={role}
          options={ROLES}
          onPick={(value) => say('role', value)}
        />
      </div>
      {role === 'fixing' && (
        <>
          <ListField
            field="thread"
            label={FIELD_NAMES.thread}
            value={thread}
            options={threadNames.map((name) => ({ value: name, text: name }))}
            whenEmpty="which?"
            onPick={(value) => say('thread', value)}
          />
          {typed('length_mm', 'needed')}
          <div class={styles.wide}>{typed('edge1_mm', 'needed', far)}</div>
          <div class={styles.wide}>{typed('edge2_mm', 'needed', far)}</div>
          <ListField
            field="neighbours"
            label={FIELD_NAMES.neighbours}
            value={neighbours}
            options={COUNTS.map((count) => ({ value: count, text: NEIGHBOUR_WORDS[count] }))}
            whenEmpty="how many?"
            onPick={(value) => say('neighbours', value)}
          />
          {neighbours === null || neighbours === 0 ? <div /> : typed('spacing_mm', 'needed')}
          {typed('thickness_mm', 'not known')}
          {typed('strength_MPa', 'not known')}
          <div class={styles.wide}>
            <SideField
              field="isPoured"
              label={FIELD_NAMES.isPoured}
              value={isPoured}
              options={[
                { value: false, text: 'Not yet' },
                { value: true, text: 'Yes' },
              ]}
              onPick={(value) => say('isPoured', value)}
            />
          </div>
          {typed('tension_kN', 'not known')}
          {typed('shear_kN', 'not known')}
        </>
      )}
    </form>
  );
}
