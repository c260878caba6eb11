/** Not built yet. */
export function PourScreen(_: { readonly pour: string }) {
  return <h1>pour</h1>;
}
