/** Being built in this very change. */
export function ConnectionScreen({ mark }: { readonly mark: string }) {
  return <h1>Connection {mark}</h1>;
}
