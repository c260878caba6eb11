import type { InsertReport } from '../../../assess/yard/piece-report.ts';
import { type Sight, tellPlacing, tellSight } from '../../../say/placing-words.ts';
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

/** The worst that was seen of an insert by sight, in whatever stage; null: nobody looked. */
function findSight({ sight, about }: InsertReport): Sight | null {
  const seen = [...(sight?.latest ?? []), ...about].flatMap((record) =>
    record.kind === 'placed' ? [record.body] : [],
  );
  if (seen.length === 0) return null;
  const all = (which: keyof Sight) => seen.every((one) => one[which]);
  return { type: all('type'), face: all('face'), firm: all('firm') };
}

/** What is known of an insert, as its report has it. */
export function tellInsert(report: InsertReport): InsertAnswer {
  const { state, why, answer } = report;
  const isOff = state === 'out' || state === 'accepted';
  const seen = findSight(report);
  const toDo = isOff && answer === null && seen !== null ? tellSight(seen) : [];
  const [first] = toDo;
  if (state === 'out' && first !== undefined)
    return { kind: 'wrong', words: first, more: [...toDo.slice(1), ...report.why] };
  const isAside = answer?.advice === 'move' || answer?.advice === 'leave';
  const isWrong = seen !== null && !(seen.type && seen.face && seen.firm);
  // What is off after screeding, or was not looked at in time, is told by why: of its place alone it would be called good.
  if (!isOff || answer === null || !(isAside || isWrong))
    return { kind: KINDS[state], words: STATE_WORDS[state], more: why };
  const [words = STATE_WORDS[state], ...more] = tellPlacing(answer, seen);
  if (state === 'accepted') return { kind: 'ask', words: 'Accepted as placed', more: [words, ...more] };
  return { kind: answer.advice === 'move' ? 'move' : answer.verdict === 'works' ? 'ask' : 'wrong', words, more };
}
