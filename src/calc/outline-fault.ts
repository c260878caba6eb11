import type { OutlineFault } from '../engine/fixture/plate-outline.ts';

/** What is wrong with an outline, in one line; `around` names what it goes around. */
export function describeOutlineFault(fault: OutlineFault, around: string): string {
  switch (fault.kind) {
    case 'too-few-corners':
      return `has ${fault.count} corners, expected at least 3`;
    case 'corner-twice':
      return `corners ${fault.corners[0]} and ${fault.corners[1]} (counted from 0) are the same point, expected each corner once and the last not to repeat the first`;
    case 'sides-cross':
      return `sides ${fault.sides[0]} and ${fault.sides[1]} (counted from 0) cross or touch, expected corners in order around ${around}`;
    case 'no-area':
      return 'all corners lie on one line, expected an outline around an area';
    default:
      return fault satisfies never;
  }
}
