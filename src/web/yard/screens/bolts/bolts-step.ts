/** What is asked at a piece that is bolted up. */
export type BoltsStep =
  | { readonly kind: 'look' | 'seal' }
  | { readonly kind: 'card' | 'does not go on' | 'tighten'; readonly connection: string }
  | { readonly kind: 'seal one'; readonly number: number };
