/** Being built in this very change. */
export function PartsScreen() {
  return <h1>Parts</h1>;
}
