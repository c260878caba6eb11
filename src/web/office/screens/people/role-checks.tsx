import { ROLE_WORDS } from '../../../../assess/yard/rights.ts';
import { decidingRole } from '../../../../records/bodies.ts';
import type { Role } from '../../../../records/person.ts';
import { CheckField } from '../../../parts/field.tsx';
import styles from './people.module.css';

/** What each role is for, in a few words. */
const MEANINGS: Readonly<Record<Role, string>> = {
  setter: 'sets out, places, checks',
  checker: 'checks the form and the inserts',
  foreman: 'runs the pour; may let it be poured on an override',
  qa: 'clears pieces; accepts what is off inside the limits of the rules',
  'design engineer': 'decides what is beyond those limits, and what becomes of a piece as cast',
  installer: 'shifts, turns and packs plates on site, bolts them up',
};

/** Roles that a person has; several may be. */
export function RoleChecks({
  roles,
  onChange,
}: {
  readonly roles: readonly Role[];
  readonly onChange: (roles: readonly Role[]) => void;
}) {
  return (
    <fieldset class={styles.roles}>
      <legend>Roles</legend>
      {decidingRole.options.map((role) => (
        <CheckField
          key={role}
          label={`${ROLE_WORDS[role]}: ${MEANINGS[role]}`}
          isOn={roles.includes(role)}
          onChange={(isOn) =>
            onChange(decidingRole.options.filter((one) => (one === role ? isOn : roles.includes(one))))
          }
        />
      ))}
    </fieldset>
  );
}
