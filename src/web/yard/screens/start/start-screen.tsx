/** Not built yet. */
export function StartScreen() {
  return <h1>start</h1>;
}
