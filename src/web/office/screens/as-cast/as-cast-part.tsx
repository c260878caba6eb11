import { Link } from 'wouter-preact';
import { tellAsCast } from '../../../../say/fit-words.ts';
import { Section } from '../../../parts/page.tsx';
import { useAsCast } from '../../../pieces/as-cast/use-as-cast.ts';
import { useRemedies } from '../../../pieces/as-cast/use-remedies.ts';
import type { OpenPiece } from '../../../pieces/read-piece.ts';
import { addresses } from '../../state/addresses.ts';

/** On the page of a piece: in one line what came out and what is to be decided, with the way there. */
export function AsCastPart({ job, piece }: { readonly job: string; readonly piece: OpenPiece }) {
  const report = useAsCast(piece);
  const { isReady } = useRemedies(report);
  return (
    <Section
      title="As cast"
      actions={<Link href={addresses.asCast(job, piece.id)}>Deviations, remedies, decisions</Link>}
    >
      <p aria-busy={!isReady}>{report === null || !isReady ? 'Computing as cast …' : tellAsCast(report)}</p>
    </Section>
  );
}
