/** Being built in this very change. */
export function DetailsScreen() {
  return <h1>Details</h1>;
}
