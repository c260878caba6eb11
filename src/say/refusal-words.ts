/** So many reasons are read at a field; more only hide the first. */
const MOST = 2;

/** Why an edit is refused: the first reasons, each once, and how many more there are. */
export function tellRefusal(reasons: readonly string[]): string {
  const each = [...new Set(reasons)];
  const left = each.length - MOST;
  return [...each.slice(0, MOST), ...(left > 0 ? [`and ${left} more`] : [])].join(' · ');
}
