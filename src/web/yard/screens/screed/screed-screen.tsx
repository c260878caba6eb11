/** Not built yet. */
export function ScreedScreen(_: { readonly piece: string }) {
  return <h1>screed</h1>;
}
