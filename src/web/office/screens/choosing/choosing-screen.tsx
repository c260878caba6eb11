/** Being built in this very change. */
export function ChoosingScreen({ mark }: { readonly mark: string }) {
  return <h1>Choosing {mark}</h1>;
}
