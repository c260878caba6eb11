/** Not built yet. */
export function PoursScreen() {
  return <h1>pours</h1>;
}
