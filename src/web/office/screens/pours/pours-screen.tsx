/** Being built in this very change. */
export function PoursScreen({ pour }: { readonly pour: string | null }) {
  return <h1>Pours {pour}</h1>;
}
