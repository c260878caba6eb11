import type { Recognised } from '../../../assess/yard/placing-answer.ts';
import { Answer } from './answer.tsx';

/** What measured values show of the whole set: a mirror, a wrong corner, two inserts changed over. Each insert that is off says so itself. */
export function RecognisedAnswer({ recognised }: { readonly recognised: Recognised | null }) {
  if (recognised === null) return null;
  const { kind } = recognised;
  if (kind === 'as designed' || kind === 'cannot be told' || kind === 'off') return null;
  return (
    <Answer kind="wrong" words={kind.toUpperCase()}>
      <p>{recognised.words}</p>
    </Answer>
  );
}
