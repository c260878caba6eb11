import { Link } from 'wouter-preact';
import { ROLE_WORDS } from '../../../../assess/yard/rights.ts';
import type { Person } from '../../../../records/person.ts';
import { ChoiceField } from '../../../parts/field.tsx';
import { tellSync } from '../../../pieces/sync-words.ts';
import type { Yard } from '../../../pieces/yard.ts';
import { addresses } from '../../state/addresses.ts';
import { writeMoment } from '../../state/write-moment.ts';
import styles from './yard.module.css';

const NOBODY = '';

/** A person as a choice: name and roles. */
function describePerson({ name, roles }: Person): string {
  return roles.length === 0 ? (name ?? '') : `${name} (${roles.map((role) => ROLE_WORDS[role]).join(', ')})`;
}

/** As whom the office decides and corrects: kept on this device until another is chosen. */
export function WhoDecides({ yard: { device } }: { readonly yard: Yard }) {
  const people = device.job.value?.people.filter(({ name }) => name !== null) ?? [];
  return (
    <ChoiceField
      label="Who decides here"
      value={device.person.value?.id ?? NOBODY}
      options={[
        { value: NOBODY, text: people.length === 0 ? 'nobody is on the list yet' : 'nobody: only looking' },
        ...people.map((person) => ({ value: person.id, text: describePerson(person) })),
      ]}
      onChange={(id) => {
        void device.choosePerson(id === NOBODY ? null : id);
        return null;
      }}
    />
  );
}

/** Who decides, and how far the office knows what the tablets have. */
export function WhoWorks({ yard }: { readonly yard: Yard }) {
  const { device } = yard;
  const sync = device.sync.value;
  const { first, second, kind } = tellSync(sync);
  return (
    <div class={`${styles.bar} not-printed`}>
      <WhoDecides yard={yard} />
      <p class={styles.sync} role="status">
        <span class={kind === 'problem' ? styles.problem : undefined}>{first}</span>
        <span class={kind === 'problem' ? styles.problem : undefined}>{second}</span>
        <span>
          {sync.lastSyncAt === null ? 'the server was not heard yet' : `as of ${writeMoment(sync.lastSyncAt)}`}
        </span>
        <Link href={addresses.people()}>People</Link>
      </p>
    </div>
  );
}
