/** What is being asked after stripping. */
export type AfterStep =
  | { readonly kind: 'look' | 'strip' | 'pick' | 'strength' | 'comment' | 'locate' }
  | { readonly kind: 'exception'; readonly number: number };
