/** Being built in this very change. */
export function JobsScreen() {
  return <h1>Jobs</h1>;
}
