import { useSignal } from '@preact/signals';
import type { Rules } from '../../../../job/documents/rules.ts';
import { changeRules } from '../../../../job/edit/commands/edit-library.ts';
import { Button } from '../../../parts/button.tsx';
import { TextField } from '../../../parts/field.tsx';
import { Fields, Section } from '../../../parts/page.tsx';
import type { JobSession } from '../../state/session.ts';

type Agreement = NonNullable<Rules['positionZones']>;

/** An agreement with all that it needs; null as long as one of the four is missing. */
function complete({ agreedBy = '', capacity = '', document = '', date = '' }: Partial<Agreement>): Agreement | null {
  return [agreedBy, capacity, document, date].includes('') ? null : { agreedBy, capacity, document, date };
}

/** Who agreed that the box of a position zone may stand in place of the tolerance. The four stand or go together. */
export function ZoneRules({ session }: { readonly session: JobSession }) {
  const { positionZones } = session.shown.value.library.rules;
  const begun = useSignal<Partial<Agreement>>({});
  const shown: Partial<Agreement> = positionZones ?? begun.value;
  const put = (agreement: Agreement | null) => {
    const why = session.commit(
      agreement === null ? 'Rules: the tolerance holds everywhere' : 'Rules: position zones agreed by the specifier',
      changeRules((draft) => {
        draft.positionZones = agreement;
      }),
    );
    if (why === null) begun.value = {};
    return why;
  };
  const change = (part: Partial<Agreement>) => {
    const next = { ...shown, ...part };
    const agreement = complete(next);
    if (agreement !== null) return put(agreement);
    if (positionZones !== null) return 'all four stand together; take the agreement out to be without it';
    begun.value = next;
    return null;
  };
  const field = (label: string, hint: string, key: keyof Agreement) => (
    <TextField label={label} hint={hint} value={shown[key] ?? ''} onChange={(value) => change({ [key]: value })} />
  );
  const isHalf = positionZones === null && Object.keys(begun.value).length > 0;
  return (
    <Section
      title="Position zones in place of the tolerance"
      anchor="zones"
      lead="Only where the specifier agreed: then the ± box of a connection's permitted position zone, where it is taken over at the connection, stands in place of the tolerance of the job. Without it zones are for information."
      actions={
        positionZones === null ? undefined : (
          <Button kind="quiet" onPress={() => put(null)}>
            Take the agreement out
          </Button>
        )
      }
    >
      <Fields>
        {field(
          'Agreed by',
          isHalf ? 'Not taken yet: name, capacity, document and date are needed.' : 'The specifier.',
          'agreedBy',
        )}
        {field('As what', 'Capacity, and by which registration.', 'capacity')}
        {field('Where it is written down', 'A letter, a clause of the specification.', 'document')}
        {field('Date', 'When it was agreed.', 'date')}
      </Fields>
    </Section>
  );
}
