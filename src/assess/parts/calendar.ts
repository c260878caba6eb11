const MS_PER_DAY = 86_400_000;

function toDays(day: string): number {
  return Date.parse(`${day}T00:00:00Z`) / MS_PER_DAY;
}

/**
 * A day so many calendar days later, or earlier for a negative number. Weekends and holidays count like any day.
 * @param day as YYYY-MM-DD
 * @example addDays('2028-02-28', 2) is '2028-03-01': 2028 is a leap year
 */
export function addDays(day: string, days: number): string {
  return new Date((toDays(day) + days) * MS_PER_DAY).toISOString().slice(0, 10);
}
