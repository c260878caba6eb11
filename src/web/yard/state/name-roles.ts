import { ROLE_WORDS } from '../../../assess/yard/rights.ts';
import type { Role } from '../../../records/person.ts';

/** The roles of a person in words. */
export function nameRoles(roles: readonly Role[]): string {
  return roles.length === 0 ? 'no role' : roles.map((role) => ROLE_WORDS[role]).join(', ');
}
