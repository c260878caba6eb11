import type { Person, Role } from '../../records/person.ts';

/** What a person does about a piece, as far as rights tell it apart. */
export const ACTS = [
  'check',
  'photograph',
  'comment',
  'correct',
  'hold',
  'ask to move or reject',
  'record as poured',
  'strip',
  'uncover',
  'settle a conflict',
  'accept',
  'clear',
  'clear with a condition',
  'override',
  'scrap',
  're-mark',
  'survey',
  'decide on site',
  'change the design',
  'tighten',
  'seal',
  'plan a pull test',
] as const;

export type Act = (typeof ACTS)[number];

/** What is wrong with what shall be accepted, from the least to the worst. */
export const EXTENTS = ['inside the limits', 'beyond the limits', 'not measurable', 'wrong type', 'rejected'] as const;

export type Extent = (typeof EXTENTS)[number];

/** Who may; `anyone named`: whoever is on the people list, in whatever role. */
type Allowed = 'anyone named' | readonly Role[];

/**
 * Who may do what. Whatever makes things worse or tells what happened, anybody may; what lets concrete in is for those who answer for it. Source: the
 * two rights of a yard, QA's inside limits that the design engineer set, the design engineer's beyond them (common practice).
 */
export const RIGHTS: Readonly<Record<Exclude<Act, 'accept'>, Allowed>> & {
  readonly accept: Readonly<Record<Extent, Allowed>>;
} = {
  check: 'anyone named',
  photograph: 'anyone named',
  comment: 'anyone named',
  correct: 'anyone named',
  hold: 'anyone named',
  'ask to move or reject': 'anyone named',
  'record as poured': 'anyone named',
  strip: 'anyone named',
  uncover: 'anyone named',
  'settle a conflict': ['checker', 'qa', 'design engineer'],
  accept: {
    'inside the limits': ['qa', 'design engineer'],
    'beyond the limits': ['design engineer'],
    'not measurable': ['design engineer'],
    'wrong type': ['design engineer'],
    rejected: ['design engineer'],
  },
  clear: ['qa'],
  'clear with a condition': ['qa'],
  override: ['foreman', 'qa'],
  scrap: ['foreman', 'qa'],
  're-mark': ['checker', 'qa'],
  survey: 'anyone named',
  // Shifted, turned, packed: what the design lets an installer do.
  'decide on site': ['installer', 'foreman', 'qa', 'design engineer'],
  // Slotted, drilled anew, fewer bolts, given up.
  'change the design': ['design engineer'],
  tighten: 'anyone named',
  seal: 'anyone named',
  'plan a pull test': ['qa', 'design engineer'],
};

/** Roles in words. */
export const ROLE_WORDS: Readonly<Record<Role, string>> = {
  setter: 'form setter',
  checker: 'checker',
  foreman: 'foreman',
  qa: 'QA',
  'design engineer': 'design engineer',
  installer: 'installer',
};

/** `as`: the role that gives the right; null where it takes none. `why`: who may instead, for people. */
export type Permission =
  | { readonly may: true; readonly as: Role | null }
  | { readonly may: false; readonly why: string };

function nameRoles(roles: readonly Role[]): string {
  return roles
    .map((role) => (role === 'design engineer' ? 'a design engineer with a registration' : ROLE_WORDS[role]))
    .join(' or ');
}

/** A role that a person really has: a design engineer without a registration is none. */
function hasRole({ roles, registration }: Person, role: Role): boolean {
  return roles.includes(role) && (role !== 'design engineer' || registration !== null);
}

/**
 * Whether a person may do something, by the roles that the people list gives.
 * @param person null: nobody on the list
 * @param extent of what shall be accepted; without it the least
 * @param as role in which it is done; null: any that the person has
 */
export function mayDo(
  person: Person | null,
  act: Act,
  extent: Extent = 'inside the limits',
  as: Role | null = null,
): Permission {
  const allowed: Allowed = act === 'accept' ? RIGHTS.accept[extent] : RIGHTS[act];
  if (person === null) return { may: false, why: 'not on the people list: only people on it may decide' };
  if (allowed === 'anyone named') return { may: true, as: null };
  const role = allowed.find((one) => (as === null || as === one) && hasRole(person, one));
  if (role !== undefined) return { may: true, as: role };
  return { may: false, why: `this is for ${nameRoles(allowed)} to decide` };
}

/** A person of the list by id; null: not on it. */
export function findPerson(people: readonly Person[], id: string): Person | null {
  return people.find((one) => one.id === id) ?? null;
}

/** What a person is called in a sentence; an erased or unknown one by what is left. */
export function callPerson(people: readonly Person[], id: string): string {
  const person = findPerson(people, id);
  if (person === null) return `person ${id}`;
  return person.name ?? `person ${id} (name erased)`;
}
