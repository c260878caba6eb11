/** Being built in this very change. */
export function RevisionsScreen() {
  return <h1>Revisions</h1>;
}
