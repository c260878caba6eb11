import { useSignal } from '@preact/signals';
import type { Rules } from '../../../../job/documents/rules.ts';
import { changeRules } from '../../../../job/edit/commands/edit-library.ts';
import { Button } from '../../../parts/button.tsx';
import { QuantityField, TextField } from '../../../parts/field.tsx';
import { Fields, Section } from '../../../parts/page.tsx';
import type { JobSession } from '../../state/session.ts';

type Acceptance = NonNullable<Rules['acceptance']>;

/** Limits with a name to them; null as long as one of the three is missing. */
function complete({ position_mm, level_mm, setBy }: Partial<Acceptance>): Acceptance | null {
  if (position_mm === undefined || level_mm === undefined || setBy === undefined || setBy === '') return null;
  return { position_mm, level_mm, setBy };
}

/** Up to where QA may accept an insert that is off and works. The three stand or go together: limits without a name to them hold for nothing. */
export function AcceptanceRules({ session }: { readonly session: JobSession }) {
  const { acceptance } = session.shown.value.library.rules;
  const begun = useSignal<Partial<Acceptance>>({});
  const shown: Partial<Acceptance> = acceptance ?? begun.value;
  const put = (limits: Acceptance | null) => {
    const why = session.commit(
      limits === null ? 'Rules: no acceptance by QA' : 'Rules: limits of acceptance by QA',
      changeRules((draft) => {
        draft.acceptance = limits;
      }),
    );
    if (why === null) begun.value = {};
    return why;
  };
  const change = (part: Partial<Acceptance>) => {
    const next = { ...shown, ...part };
    const limits = complete(next);
    if (limits !== null) return put(limits);
    if (acceptance !== null) return 'all three stand together; take the limits out to be without them';
    begun.value = next;
    return null;
  };
  const limit = (label: string, hint: string, key: 'position_mm' | 'level_mm') => (
    <QuantityField
      label={label}
      hint={hint}
      quantity="length"
      value={shown[key] ?? null}
      onChange={(value) => {
        if (value === null || value <= 0) return 'expected a length above 0';
        return change({ [key]: value });
      }}
    />
  );
  const isHalf = acceptance === null && Object.keys(begun.value).length > 0;
  return (
    <Section
      title="What QA may accept"
      anchor="acceptance"
      lead="An insert off its place by no more than this, that works where it is, may be accepted by QA. Anything beyond is for the design engineer. Without limits QA accepts none."
      actions={
        acceptance === null ? undefined : (
          <Button kind="quiet" onPress={() => put(null)}>
            Take the limits out
          </Button>
        )
      }
    >
      <Fields>
        {limit('Off its place, up to', 'Along each axis, where the tolerance is passed.', 'position_mm')}
        {limit('Off its level, up to', 'Up or down.', 'level_mm')}
        <TextField
          label="Set by"
          hint={
            isHalf
              ? 'Not taken yet: both limits and a name are needed.'
              : 'The design engineer who answers for the limits.'
          }
          value={shown.setBy ?? ''}
          onChange={(setBy) => change({ setBy })}
        />
      </Fields>
    </Section>
  );
}
