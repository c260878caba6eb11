import type { InsertReport } from '../../assess/yard/piece-report.ts';
import type { PlacingAnswer } from '../../assess/yard/placing-answer.ts';
import { type Act, mayDo, type Permission } from '../../assess/yard/rights.ts';
import { ENGINE_VERSION } from '../../engine/version.ts';
import type { Person, Role } from '../../records/person.ts';
import type { BodyOf } from '../../records/record.ts';

type Decision = BodyOf<'decision'>;
export type Verdict = Decision['verdict'];

/** What somebody decides about: an insert, or the form. */
export type Decidable = Pick<InsertReport, 'extent' | 'decision' | 'about'>;

/** As many records as a decision can name. */
const MOST_ABOUT = 20;

/** Whether there is something on record to decide about. */
export function isDecidable({ about }: Pick<Decidable, 'about'>): boolean {
  return about.length > 0;
}

/** Inserts about which somebody can decide: what is wrong with them is on record, or stands for a look that nobody took in time. */
export function listDecidable(inserts: readonly InsertReport[]): readonly InsertReport[] {
  return inserts.filter((insert) => insert.state !== 'conflict' && isDecidable(insert));
}

/** Whether this person may say so of it. What was rejected once takes more to accept. */
export function mayDecide(person: Person | null, { extent, decision }: Decidable, verdict: Verdict): Permission {
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

/**
 * A decision with what was computed when it was made.
 * @param answer where an insert was found; null: nothing was computed
 */
export function makeDecision(
  what: Decidable & { readonly answer: PlacingAnswer | null },
  person: Person,
  verdict: Verdict,
  reason: string,
): Decision | null {
  const permission = mayDecide(person, what, verdict);
  if (!permission.may) return null;
  const role = roleOf(person, permission.as);
  const { answer } = what;
  return {
    about: what.about.slice(0, MOST_ABOUT).map(({ id }) => id),
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
