/** A moment for people, by their own clock: `today, 14:03`, `27 Nov 2026, 14:03`. */
export function writeMoment(moment: string, now: Date = new Date()): string {
  const at = new Date(moment);
  const time = at.toLocaleTimeString('en-GB', { hour: '2-digit', minute: '2-digit' });
  if (at.toDateString() === now.toDateString()) return `today, ${time}`;
  return `${at.toLocaleDateString('en-GB', { day: 'numeric', month: 'short', year: 'numeric' })}, ${time}`;
}
