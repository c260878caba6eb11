import { WithPiece } from '../../shell/with-piece.tsx';
import { SheetForm } from './sheet-form.tsx';

/** A sheet that was filled in with pencil, typed in by keyboard. */
export function SheetScreen({ piece }: { readonly piece: string }) {
  return <WithPiece id={piece}>{(open) => <SheetForm piece={open} />}</WithPiece>;
}
