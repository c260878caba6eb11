/** Made once: a new one costs more than all else that a title block shows. */
const CLOCK = new Intl.DateTimeFormat('en-GB', { hour: '2-digit', minute: '2-digit' });
const DAY = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'short', year: 'numeric' });

/** The hour by the person's own clock, alike everywhere: `14:03`. */
export function writeClock(at: Date): string {
  return CLOCK.format(at);
}

/** A moment for people, by their own clock: `today, 14:03`, `27 Nov 2026, 14:03`. */
export function writeMoment(moment: string, now: Date = new Date()): string {
  const at = new Date(moment);
  const day = at.toDateString() === now.toDateString() ? 'today' : DAY.format(at);
  return `${day}, ${writeClock(at)}`;
}

/** A moment for what is kept: `2026-11-27 14:03`, by the clock of this computer. */
export function writeStamp(moment: string): string {
  const at = new Date(moment);
  const two = (value: number) => String(value).padStart(2, '0');
  return `${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())} ${two(at.getHours())}:${two(at.getMinutes())}`;
}
