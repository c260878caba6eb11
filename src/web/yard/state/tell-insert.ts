import type { InsertReport } from '../../../assess/yard/piece-report.ts';
import type { AnswerKind } from '../parts/answer.tsx';

/** An answer about an insert, words first. */
export interface InsertAnswer {
  readonly kind: AnswerKind;
  readonly words: string;
  readonly more: readonly string[];
}

const STATE_WORDS: Readonly<Record<InsertReport['state'], string>> = {
  open: 'Open',
  'open again': 'Open again',
  good: 'Good',
  out: 'Out',
  accepted: 'Accepted',
  conflict: 'Two answers that differ',
};

const KINDS: Readonly<Record<InsertReport['state'], AnswerKind>> = {
  open: 'plain',
  'open again': 'unsure',
  good: 'good',
  out: 'wrong',
  accepted: 'ask',
  conflict: 'wrong',
};

/** What is known of an insert, as its report has it. */
export function tellInsert({ state, why, answer, sight }: InsertReport): InsertAnswer {
  const isWrongBySight = (sight?.latest ?? []).some(
    ({ kind, body }) => kind === 'placed' && !(body.type && body.face && body.firm),
  );
  if (state !== 'out' || answer === null || isWrongBySight)
    return { kind: KINDS[state], words: STATE_WORDS[state], more: why };
  if (answer.advice === 'move') {
    const moves = answer.moves.map(({ by, toward }) => `${by} mm ${toward}`).join(', ');
    return { kind: 'move', words: `Move it ${moves}`, more: why };
  }
  return { kind: answer.verdict === 'works' ? 'ask' : 'wrong', words: 'Leave it', more: why };
}
