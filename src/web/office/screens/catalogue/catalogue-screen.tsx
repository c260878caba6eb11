import { Link } from 'wouter-preact';
import { Empty } from '../../../parts/notice.tsx';
import { addresses } from '../../state/addresses.ts';
import { useOffice } from '../../state/office.ts';
import { ItemEditor } from './item-editor.tsx';
import { ItemList } from './item-list.tsx';

/** The inserts that the yard buys, or one of them. */
export function CatalogueScreen({ item }: { readonly item: string | null }) {
  const { session } = useOffice();
  if (item === null) return <ItemList session={session} />;
  const found = session.shown.value.library.catalogue.items.find(({ id }) => id === item);
  if (found !== undefined) return <ItemEditor key={found.id} session={session} item={found} />;
  return (
    <Empty title={`There is no insert ${item}`}>
      <p>It was removed or has another name now; undo brings it back.</p>
      <Link href={addresses.catalogue(session.id)}>The whole catalogue</Link>
    </Empty>
  );
}
