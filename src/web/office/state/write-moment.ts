const CLOCK = new Intl.DateTimeFormat('en-GB', { hour: '2-digit', minute: '2-digit' });
const DAY = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'short', year: 'numeric' });

/** A moment for people, by their own clock: `today, 14:03`, `27 Nov 2026, 14:03`. */
export function writeMoment(moment: string, now: Date = new Date()): string {
  const at = new Date(moment);
  const day = at.toDateString() === now.toDateString() ? 'today' : DAY.format(at);
  return `${day}, ${CLOCK.format(at)}`;
}
