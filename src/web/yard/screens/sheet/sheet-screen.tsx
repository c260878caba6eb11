/** Not built yet. */
export function SheetScreen(_: { readonly piece: string }) {
  return <h1>sheet</h1>;
}
