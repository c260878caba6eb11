/** Not built yet. */
export function FormScreen(_: { readonly piece: string }) {
  return <h1>form</h1>;
}
