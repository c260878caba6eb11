import { tellWorstReach } from '../../../../say/learn-words.ts';
import { useLearned } from '../../../pieces/learn/use-learned.ts';
import { usePieces } from '../../../pieces/use-pieces.ts';
import { useYard } from '../../../pieces/yard.ts';

/** What the checker may know of how inserts come out here; nothing where too few were measured. */
export function LearnedLine() {
  const { pieces, reading } = usePieces(useYard(), 'begun');
  const learned = useLearned(reading === 0 ? pieces : null);
  const line = learned === null ? null : tellWorstReach(learned);
  return line === null ? null : (
    <section aria-labelledby="learned">
      <h2 id="learned">How inserts came out here</h2>
      <p>{line}</p>
    </section>
  );
}
