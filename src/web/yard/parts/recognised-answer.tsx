import type { Recognised } from '../../../assess/yard/placing-answer.ts';
import { Answer } from './answer.tsx';

type Named = Exclude<Recognised, { readonly kind: 'as designed' | 'cannot be told' | 'off' }>;

function isNamed(recognised: Recognised | null): recognised is Named {
  if (recognised === null) return false;
  const { kind } = recognised;
  return kind !== 'as designed' && kind !== 'cannot be told' && kind !== 'off';
}

/** Whether the whole set is elsewhere than designed: then none of its inserts is moved by itself. */
export function isSetWrong(recognised: Recognised | null): boolean {
  return isNamed(recognised) && recognised.kind !== 'swapped';
}

/** What measured values show of the whole set: a mirror, a wrong corner, two inserts changed over. */
export function RecognisedAnswer({ recognised }: { readonly recognised: Recognised | null }) {
  if (!isNamed(recognised)) return null;
  return (
    <Answer kind="wrong" words={recognised.kind.toUpperCase()}>
      <p>{recognised.words}</p>
    </Answer>
  );
}
