/** Being built in this very change. */
export function PanelsScreen() {
  return <h1>Panels</h1>;
}
