/** Not built yet. */
export function ScanScreen() {
  return <h1>scan</h1>;
}
