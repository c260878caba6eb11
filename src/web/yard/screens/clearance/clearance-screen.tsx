/** Not built yet. */
export function ClearanceScreen(_: { readonly piece: string }) {
  return <h1>clearance</h1>;
}
