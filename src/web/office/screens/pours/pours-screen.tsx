import { Link } from 'wouter-preact';
import { Empty } from '../../../parts/notice.tsx';
import { addresses } from '../../state/addresses.ts';
import { useOffice } from '../../state/office.ts';
import { PourView } from './pour-view.tsx';
import { PoursList } from './pours-list.tsx';
import { usePourFindings } from './use-pour-findings.ts';

/** The pours of a job by their days, or one of them. */
export function PoursScreen({ pour }: { readonly pour: string | null }) {
  const { session } = useOffice();
  const found = usePourFindings(session);
  if (pour === null) return <PoursList session={session} found={found} />;
  const shown = session.shown.value.job.pours.find(({ id }) => id === pour);
  if (shown !== undefined) return <PourView session={session} pour={shown} found={found} />;
  return (
    <Empty title={`There is no pour ${pour}`}>
      <p>It was removed or has another name now; undo brings it back.</p>
      <Link href={addresses.pours(session.id)}>All pours</Link>
    </Empty>
  );
}
