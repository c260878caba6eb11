/** Whether the long tests are run, by `npm run test:long`: more kills, more minutes; else the same tests in short. */
export const IS_LONG = process.env.ONEPOUR_LONG === 'yes';

/** How often a property is tried: in full by `npm run test:long`; else as often as finds what is planted, and then some. */
export function tries(full: number, short: number): number {
  return IS_LONG ? full : short;
}
