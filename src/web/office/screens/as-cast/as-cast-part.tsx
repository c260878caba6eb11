import { Link } from 'wouter-preact';
import { tellAsCast } from '../../../../say/fit-words.ts';
import { Section } from '../../../parts/page.tsx';
import { useAsCast } from '../../../pieces/as-cast/use-as-cast.ts';
import { useRemedies } from '../../../pieces/as-cast/use-remedies.ts';
import type { OpenPiece } from '../../../pieces/read-piece.ts';
import { addresses } from '../../state/addresses.ts';

function Summary({ piece }: { readonly piece: OpenPiece }) {
  const report = useAsCast(piece);
  const { isReady } = useRemedies(report);
  return <p aria-busy={!isReady}>{report === null || !isReady ? 'Computing as cast …' : tellAsCast(report)}</p>;
}

/** On the page of a piece, once it is surveyed: in one line what came out and what is to be decided, with the way there. */
export function AsCastPart({ job, piece }: { readonly job: string; readonly piece: OpenPiece }) {
  if ((piece.state.beside.get('surveyed') ?? []).length === 0) return null;
  return (
    <Section
      title="As cast"
      actions={<Link href={addresses.asCast(job, piece.id)}>Deviations, remedies, decisions</Link>}
    >
      <Summary piece={piece} />
    </Section>
  );
}
