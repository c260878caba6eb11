/** Being built in this very change. */
export function RulesScreen() {
  return <h1>Rules</h1>;
}
