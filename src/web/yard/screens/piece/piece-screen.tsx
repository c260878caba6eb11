/** Not built yet. */
export function PieceScreen(_: { readonly piece: string }) {
  return <h1>piece</h1>;
}
