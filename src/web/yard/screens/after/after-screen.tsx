/** Not built yet. */
export function AfterScreen(_: { readonly piece: string }) {
  return <h1>after</h1>;
}
