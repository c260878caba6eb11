/** Not built yet. */
export function HistoryScreen(_: { readonly piece: string }) {
  return <h1>history</h1>;
}
