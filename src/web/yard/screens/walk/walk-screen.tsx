/** Not built yet. */
export function WalkScreen(_: { readonly piece: string; readonly stage: 1 | 2 }) {
  return <h1>walk</h1>;
}
