/** Whether the long tests are run, by `npm run test:long`: more kills, more minutes; else the same tests in short. */
export const IS_LONG = process.env.ONEPOUR_LONG === 'yes';
