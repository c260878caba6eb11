/** Day and time by the clock of the yard: `30 Nov 2026, 09:40`. */
export function sayMoment(moment: string): string {
  return new Date(moment).toLocaleString('en-GB', { dateStyle: 'medium', timeStyle: 'short' });
}
