/** Being built in this very change. */
export function CatalogueScreen({ item }: { readonly item: string | null }) {
  return <h1>Catalogue {item}</h1>;
}
