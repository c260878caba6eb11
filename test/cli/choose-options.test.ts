import { describe, expect, it } from 'vitest';
import { readChooseOptions } from '../../src/cli/choose-options.ts';
import { UsageError } from '../../src/cli/exit-codes.ts';

describe('days to the pour', () => {
  // A late hour of a day: it still counts as that whole day.
  const today = new Date(2031, 4, 1, 23, 30);
  const daysTo = (pourDate: string) => readChooseOptions({ pourDate }, today).daysToPour;

  it('are those of the calendar', () => {
    expect(daysTo('2031-05-01')).toBe(0);
    expect(daysTo('2031-05-30')).toBe(29);
    // May to October and back over the change of the clocks; 2032 has a 29 February.
    expect(daysTo('2031-11-01')).toBe(184);
    expect(daysTo('2032-03-01')).toBe(305);
  });

  it('are refused for a day that has gone by, or is not there', () => {
    expect(() => daysTo('2031-04-30')).toThrow(
      new UsageError('--pour-date 2031-04-30: lies 1 day back, expected today or later'),
    );
    expect(() => daysTo('2031-13-01')).toThrow(/expected a day of the calendar/);
    expect(() => daysTo('2099-01-01')).toThrow(/expected at most 3650/);
  });
});
