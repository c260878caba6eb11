import type { FormReport, OpenPoint } from './piece-report.ts';
import type { Recognised } from './placing-answer.ts';
import type { InsertFinding } from './report-insert.ts';

type LiftedBy = OpenPoint['liftedBy'];

function pointOfForm({ state, findings }: FormReport): OpenPoint[] {
  if (state === 'good' || state === 'accepted') return [];
  const words = {
    open: ['the form is not checked', ...findings],
    'open again': findings,
    out: findings,
    conflict: findings,
  }[state].join('; ');
  return [{ words, number: null, liftedBy: state === 'out' ? 'setter' : 'checking it', isHard: true }];
}

/** Who can put right what is wrong, or take it as it is. */
function findLifter({ answer, extent, sight, hasWrongType, decision, state }: InsertFinding): LiftedBy {
  if (state === 'conflict') return 'checking it';
  if (decision?.body.verdict === 'to be moved') return 'setter';
  if (hasWrongType || extent === 'rejected') return 'design engineer';
  if (answer?.advice === 'move' || sight?.latest.some((one) => one.kind === 'placed' && !one.body.firm))
    return 'setter';
  return extent === 'inside the limits' ? 'qa' : 'design engineer';
}

/** Nothing can be named as a condition for it: it is wrong as it is, or nobody knows which of two readings is right. */
function isHard({ state, hasWrongType, answer, decision }: InsertFinding): boolean {
  if (state === 'conflict' || hasWrongType || decision?.body.verdict === 'rejected') return true;
  return (
    answer !== null && (answer.advice === 'move' || answer.advice === 'leave') && answer.verdict === 'does not work'
  );
}

function pointsOfInsert(finding: InsertFinding, isFormOut: boolean): OpenPoint[] {
  const { state, why, item, notMeasurable, missing, isAbsent, decision } = finding;
  const { number } = item;
  const points: OpenPoint[] = [];
  if (state === 'out' || state === 'conflict') {
    const decided =
      decision === null || decision.body.verdict === 'accepted' ? [] : [`decided: ${decision.body.verdict}`];
    const words = [isAbsent ? 'it is not there, or all of it is wrong' : null, ...why, ...decided].filter(
      (one) => one !== null,
    );
    const first = isFormOut && finding.answer !== null ? 'the form is out: look at the form first; ' : '';
    points.push({
      words: `no. ${number}: ${first}${words.join('; ') || 'decided by somebody who may not'}`,
      number,
      liftedBy: findLifter(finding),
      isHard: isHard(finding),
    });
  }
  if (missing.length > 0 || state === 'open again') {
    const words = state === 'open again' ? why : missing;
    points.push({
      words: `no. ${number}: ${notMeasurable ?? words.join(', ')}`,
      number,
      liftedBy: notMeasurable === null ? 'checking it' : 'design engineer',
      isHard: false,
    });
  }
  return points;
}

/** A set that shows by its places that it is another, or another way round, than it should be. */
function pointOfSet(recognised: Recognised | null, inserts: readonly InsertFinding[]): OpenPoint[] {
  if (recognised === null || recognised.kind === 'as designed' || recognised.kind === 'off') return [];
  if (recognised.kind === 'cannot be told') return [];
  // Where everything that is off was accepted as it is, the likeness alone keeps nobody from naming a condition.
  const isHard = inserts.some(({ state }) => state === 'out' || state === 'conflict');
  return [{ words: recognised.words, number: null, liftedBy: isHard ? 'checking it' : 'qa', isHard }];
}

/** Everything that stands against clearing a piece: the form first, then the set, then one insert after another. */
export function listOpenPoints(
  form: FormReport,
  recognised: Recognised | null,
  inserts: readonly InsertFinding[],
): readonly OpenPoint[] {
  const isFormOut = form.state === 'out' || form.state === 'conflict';
  return [
    ...pointOfForm(form),
    ...pointOfSet(recognised, inserts),
    ...inserts.flatMap((finding) => pointsOfInsert(finding, isFormOut)),
  ];
}
