/** Something that must be decided before the counts are complete. */
export interface OpenPoint {
  readonly kind: 'holding' | 'cross bar' | 'bolt length';
  readonly panel: string;
  readonly text: string;
}
