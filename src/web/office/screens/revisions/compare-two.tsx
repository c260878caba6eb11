import { useSignal } from '@preact/signals';
import type { Issued } from '../../../../wire/revisions.ts';
import { ChoiceField } from '../../../parts/field.tsx';
import { Fields } from '../../../parts/page.tsx';
import type { StateOfJob } from '../../../worker/compare-states.ts';
import type { JobSession } from '../../state/session.ts';
import { Difference } from './difference.tsx';

/** Not a letter that anything is issued under: a letter has no blank at its ends. */
const DRAFT = ' draft';

const stateOf = (name: string): StateOfJob => (name === DRAFT ? { kind: 'draft' } : { kind: 'revision', letter: name });

/** Any revision, or the draft, against any other. */
export function CompareTwo({ session, issued }: { readonly session: JobSession; readonly issued: readonly Issued[] }) {
  const first = useSignal(issued[0]?.letter ?? DRAFT);
  const second = useSignal(DRAFT);
  const options = [
    ...issued.map(({ letter, status }) => ({ value: letter, text: `${letter}, ${status}` })),
    { value: DRAFT, text: 'the draft' },
  ];
  const [before, after] = [first.value, second.value];
  return (
    <>
      <Fields>
        <ChoiceField
          label="Earlier"
          value={before}
          options={options}
          onChange={(value) => {
            first.value = value;
            return null;
          }}
        />
        <ChoiceField
          label="Later"
          value={after}
          options={options}
          onChange={(value) => {
            second.value = value;
            return null;
          }}
        />
      </Fields>
      <Difference
        job={session.id}
        before={stateOf(before)}
        after={stateOf(after)}
        on={[before, after, before === DRAFT || after === DRAFT ? session.shown.value : null]}
      />
    </>
  );
}
