import type { InsertReport } from '../../assess/yard/piece-report.ts';
import { type Act, mayDo, type Permission } from '../../assess/yard/rights.ts';
import { ENGINE_VERSION } from '../../engine/version.ts';
import type { Person, Role } from '../../records/person.ts';
import type { BodyOf, FactRecord } from '../../records/record.ts';

type Decision = BodyOf<'decision'>;
export type Verdict = Decision['verdict'];

/** The records that say where an insert is and how it looks: a decision is on them. As many as a decision can name. */
function listAbout({ sight, place, screed }: InsertReport): readonly FactRecord[] {
  return [sight, place, screed].flatMap((slot) => slot?.latest ?? []).slice(0, 20);
}

/** Inserts about which somebody can decide: what is wrong with them is on record. */
export function listDecidable(inserts: readonly InsertReport[]): readonly InsertReport[] {
  return inserts.filter(
    (insert) => (insert.state === 'out' || insert.state === 'accepted') && listAbout(insert).length > 0,
  );
}

/** Whether this person may say so of this insert. What was rejected once takes more to accept. */
export function mayDecide(person: Person | null, { extent, decision }: InsertReport, verdict: Verdict): Permission {
  const act: Act = verdict === 'accepted' ? 'accept' : 'ask to move or reject';
  const isRejected = decision?.body.verdict === 'rejected';
  return mayDo(person, act, isRejected ? 'rejected' : (extent ?? 'inside the limits'));
}

/** The role in which somebody does what takes no role: the first of their own. */
export function roleOf({ roles }: Person, as: Role | null): Role {
  return as ?? roles[0] ?? 'setter';
}

/** A ratio without limit is no number that a record can hold. */
function finiteOf(ratio: number | null): number | null {
  return ratio !== null && Number.isFinite(ratio) ? ratio : null;
}

/** A decision with what was computed when it was made. */
export function makeDecision(insert: InsertReport, person: Person, verdict: Verdict, reason: string): Decision | null {
  const permission = mayDecide(person, insert, verdict);
  if (!permission.may) return null;
  const role = roleOf(person, permission.as);
  const { answer } = insert;
  return {
    about: listAbout(insert).map(({ id }) => id),
    verdict,
    role,
    registration: role === 'design engineer' ? person.registration : null,
    reason,
    computed: {
      state: answer?.verdict ?? 'not known',
      ratio: finiteOf(answer?.asPlaced?.after.ratio ?? null),
      engine: ENGINE_VERSION,
    },
  };
}
