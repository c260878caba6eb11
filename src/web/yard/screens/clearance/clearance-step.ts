/** What is being asked about whether a piece may be poured. */
export type ClearanceStep =
  | { readonly kind: 'look' }
  | { readonly kind: 'condition' | 'hold' | 'override' | 'poured' | 'docket' | 'decide about form' }
  | { readonly kind: 'decide'; readonly number: number };
