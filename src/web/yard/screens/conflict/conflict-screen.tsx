/** Not built yet. */
export function ConflictScreen(_: { readonly piece: string }) {
  return <h1>conflict</h1>;
}
