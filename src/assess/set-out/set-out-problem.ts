/** A finding that the yard or the office must hear of. An error: it cannot be made as it stands. */
export interface SetOutProblem {
  readonly severity: 'error' | 'warning';
  /** `face`: the way of holding does not go with the face that the insert is in as the panel lies; it could the other way up. */
  readonly kind: 'face' | 'form material' | 'stack' | 'cover' | 'cross bar' | 'not decided' | 'datum' | 'clash';
  /** The panel, and the insert's number in its list if one is meant. */
  readonly panel: string;
  readonly insert: string | null;
  readonly text: string;
}
