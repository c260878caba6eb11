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
function tellClearance({ clearance }: PieceReport, people: readonly Person[]): StandingWords {
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

/** What a clearance, hold or override was, beside the pour that it was for. */
function tellBefore({ clearance: { record } }: PieceReport, people: readonly Person[]): readonly string[] {
  if (record === null) return [];
  const who = `${callPerson(people, record.person)}, ${sayMoment(record.measuredAt)}`;
  switch (record.kind) {
    case 'held':
      return [`Held: ${record.body.reason} (${who})`];
    case 'override':
      return [`Override: ${record.body.reason} (${who}, as ${ROLE_WORDS[record.body.role]})`];
    case 'cleared': {
      const { condition, role, frozen } = record.body;
      return [
        ...(condition === null ? [] : [`On the condition: ${condition}`]),
        `Cleared by ${who}, as ${ROLE_WORDS[role]}, by revision ${frozen.revision.letter}`,
      ];
    }
  }
}

/** Kinds of flags that say no more than that it was poured as it was. */
const POURED_FLAGS = new Set<string>(['poured without clearance', 'poured while held', 'poured on an override']);

/** That it was poured, and on what; null: not poured. */
function tellPoured(report: PieceReport, people: readonly Person[]): StandingWords | null {
  const { poured, flags } = report;
  if (poured === null) return null;
  const flag = flags.find(({ kind }) => POURED_FLAGS.has(kind));
  return {
    kind: POURED[poured.clearance],
    words:
      flag?.kind.toUpperCase() ??
      `Poured, ${poured.clearance === 'cleared' ? 'cleared before' : poured.clearance.toUpperCase()}`,
    more: [
      ...poured.poured.map(
        ({ body, person, measuredAt }) =>
          `Poured: ${callPerson(people, person)}, ${sayMoment(measuredAt)}${body.reason === null ? '' : `. Reason given: ${body.reason}`}`,
      ),
      ...tellBefore(report, people),
      ...(flag === undefined ? [] : ['A non-conformance. It stays with this piece.']),
    ],
  };
}

/** How a piece stands for pouring, each thing told once: the pour with what it was on, what else must not be overlooked, else what is decided. */
export function tellStanding(report: PieceReport, people: readonly Person[]): readonly StandingWords[] {
  const poured = tellPoured(report, people);
  const others = report.flags
    .filter(({ kind }) => poured === null || !POURED_FLAGS.has(kind))
    .map(({ kind, words }): StandingWords => ({ kind: 'wrong', words: kind.toUpperCase(), more: [words] }));
  return poured === null ? [...others, tellClearance(report, people)] : [poured, ...others];
}
