/** JSON has no infinity: a load on nothing shows as a null ratio beside a "fail" and a note. */
export function toJsonNumber(value: number | null): number | null {
  return value === Number.POSITIVE_INFINITY ? null : value;
}
