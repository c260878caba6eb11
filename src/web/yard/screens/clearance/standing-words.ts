import type { PieceReport } from '../../../../assess/yard/piece-report.ts';
import { callPerson, ROLE_WORDS } from '../../../../assess/yard/rights.ts';
import type { Person } from '../../../../records/person.ts';
import type { AnswerKind } from '../../parts/answer.tsx';
import { sayMoment } from '../../state/say-moment.ts';

/** How a piece stands for pouring, words first. */
export interface StandingWords {
  readonly kind: AnswerKind;
  readonly words: string;
  readonly more: readonly string[];
}

/** What is decided about pouring a piece, by whom and when; never green with a condition or an override. */
export function tellClearance({ clearance }: PieceReport, people: readonly Person[]): StandingWords {
  const { is, record } = clearance;
  if (is === 'none' || record === null)
    return { kind: 'plain', words: 'Not cleared', more: ['Nobody has cleared or held this piece as it stands.'] };
  const who = `${callPerson(people, record.person)}, ${sayMoment(record.measuredAt)}`;
  switch (record.kind) {
    case 'held':
      return { kind: 'wrong', words: 'HELD', more: [record.body.reason, who] };
    case 'override':
      return {
        kind: 'wrong',
        words: 'To be poured on an override',
        more: [record.body.reason, `${who}, as ${ROLE_WORDS[record.body.role]}`],
      };
    case 'cleared': {
      const { condition, role, frozen } = record.body;
      const by = `${who}, as ${ROLE_WORDS[role]}, by revision ${frozen.revision.letter}`;
      return condition === null
        ? { kind: 'good', words: 'CLEARED', more: [by] }
        : { kind: 'ask', words: 'CLEARED ON A CONDITION', more: [condition, by] };
    }
  }
}

const POURED: Readonly<Record<NonNullable<PieceReport['poured']>['clearance'], AnswerKind>> = {
  cleared: 'good',
  'cleared with a condition': 'ask',
  'on an override': 'wrong',
  'without clearance': 'wrong',
  'while held': 'wrong',
};

/** That it was poured, and on what; null: not poured. */
export function tellPoured({ poured }: PieceReport, people: readonly Person[]): StandingWords | null {
  const first = poured?.poured[0];
  if (poured === null || first === undefined) return null;
  const how = poured.clearance === 'cleared' ? 'cleared before' : poured.clearance.toUpperCase();
  return {
    kind: POURED[poured.clearance],
    words: `Poured, ${how}`,
    more: poured.poured.flatMap(({ body, person, measuredAt }) => [
      `${callPerson(people, person)}, ${sayMoment(measuredAt)}`,
      ...(body.reason === null ? [] : [`Reason given: ${body.reason}`]),
    ]),
  };
}
