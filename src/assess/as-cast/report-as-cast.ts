import type { Concrete } from '../../job/documents/concrete.ts';
import type { Connection } from '../../job/documents/connection.ts';
import type { PieceState } from '../../records/fold/piece-state.ts';
import type { PiecePlan } from '../yard/piece-plan.ts';
import type { YardContext } from '../yard/piece-report.ts';
import type { AsCastConnection, AsCastInsert, AsCastReport, Remedy } from './as-cast-report.ts';
import { askRemedies, type RemedyQuestion } from './attempt.ts';
import { findCastInserts } from './cast-inserts.ts';
import { makeCastPanel } from './cast-panel.ts';
import { computeDecided } from './compute-decided.ts';
import { countStrength, overlayStrength } from './counted-strength.ts';
import { type DecisionFound, judgeDecisions } from './judge-decision.ts';
import { listRemedies } from './list-remedies.ts';
import { tryAsIs, tryMove } from './site-remedies.ts';

/** @throws Error when the job has no such concrete (reading refuses such a job) */
function concreteOf({ index }: YardContext, { setOut: { panel } }: PiecePlan): Concrete {
  const concrete = index.concretes.get(panel.concrete);
  if (concrete === undefined) throw new Error(`concrete ${panel.concrete} is not in the job, though it was checked`);
  return concrete;
}

/** Whether something is as good as the design was: what passed passes, and the plate goes on. */
function isAsGood({ before }: RemedyQuestion, { verdict, state, why, clearance }: Remedy): boolean {
  if (verdict === 'works') return true;
  const goesOn = clearance === null || clearance.margin >= 0;
  return goesOn && before.state !== 'passes' && state === before.state && why.length <= 1;
}

/** How a connection stands, before anybody decides. */
function findComputedState(question: RemedyQuestion, members: readonly AsCastInsert[]): AsCastConnection['state'] {
  const asIs = tryAsIs(question);
  if (members.some(({ state }) => state === 'conflict')) return 'conflict';
  if (members.some(({ state }) => state === 'off'))
    return asIs.verdict === 'works' ? 'fine as it is' : 'needs a remedy';
  const goesOn = isAsGood(question, asIs) || isAsGood(question, tryMove(question));
  if (!goesOn) return members.every(({ place }) => place === null) ? 'not surveyed' : 'needs a remedy';
  return members.some(({ state }) => state === 'not surveyed') ? 'not surveyed' : 'fine';
}

function findState(
  computed: AsCastConnection['state'],
  { decision, isConflict }: DecisionFound,
): AsCastConnection['state'] {
  if (isConflict) return 'conflict';
  if (decision?.body.remedy === 'not usable') return 'not usable';
  if (computed === 'fine' || computed === 'conflict' || decision === null) return computed;
  return 'decided';
}

/** A value that is found when it is first asked for. */
function findOnce<T>(find: () => T): () => T {
  const found: T[] = [];
  return () => {
    if (found.length === 0) found.push(find());
    return found[0]!;
  };
}

/**
 * Where the inserts of a hard panel are, what every connection comes to there, what may be done about those that are off, and what was decided: from the job and the
 * records alone, whatever the order in which they came. Remedies are computed when they are first read.
 */
export function reportAsCast(context: YardContext, plan: PiecePlan, state: PieceState): AsCastReport {
  const { index } = context;
  const { setOut } = plan;
  const { slots, seen, readings, rests, inserts } = findCastInserts(context, plan, state);
  const concrete = concreteOf(context, plan);
  const strength = countStrength(concrete, state);
  const cast = makeCastPanel(index, overlayStrength(index, concrete, strength), plan, inserts);
  const reportConnection = (connection: Connection): AsCastConnection => {
    const question = askRemedies(cast, connection);
    const members = question.members.map(({ insert }) => insert);
    const records = connection.inserts.flatMap(({ insert }) => rests.get(insert) ?? []);
    const found = judgeDecisions(
      context,
      slots,
      seen,
      connection.key,
      records,
      ({ body }) => computeDecided(question, body).act,
    );
    const { decision } = found;
    const remedies = findOnce(() => listRemedies(question));
    return {
      connection,
      members,
      before: { state: question.before.state, ratio: question.before.ratio },
      state: findState(findComputedState(question, members), found),
      get remedies() {
        return remedies();
      },
      decision,
      decided: decision === null ? null : computeDecided(question, decision.body),
      rests: records,
      withoutRight: found.withoutRight,
      fallen: found.fallen,
    };
  };
  return {
    piece: plan.piece,
    surveys: readings.map(({ survey }) => survey),
    inserts,
    connections: index.connectionsOf(setOut.panel.mark).map(reportConnection),
    strength,
  };
}
