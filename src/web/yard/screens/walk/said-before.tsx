import { placesOf } from '../../../../say/number-runs.ts';
import { Answer } from '../../parts/answer.tsx';
import { tellInsert } from '../../state/tell-insert.ts';
import { TapedValues } from './taped-values.tsx';
import type { WalkPartProps } from './walk-part.ts';

/** What the last entry came to, beside the next stop: nobody taps to be told that it is good. */
export function SaidBefore({ walk, piece }: Pick<WalkPartProps, 'walk' | 'piece'>) {
  const said = walk.said.value;
  const { kind: step } = walk.step.value;
  if (said === null || step === 'answer' || step === 'differs' || step === 'numbers') return null;
  if (said.kind === 'seen') return <Answer isSmall kind="plain" words={`Seen: ${placesOf(said.numbers)}`} />;
  if (said.kind === 'taken back')
    return (
      <Answer isSmall kind="plain" words={`Taken back: ${said.count} ${said.count === 1 ? 'entry' : 'entries'}`} />
    );
  const insert = piece.report.inserts.find(({ item }) => item.number === said.number);
  if (insert === undefined) return null;
  const { kind, words } = tellInsert(insert);
  return (
    <Answer isSmall kind={kind} words={`${said.number}: ${words}`}>
      <TapedValues insert={insert} />
    </Answer>
  );
}
