import type { Yard } from './documents/yard.ts';

/** The yard taken where nothing is said of it: no beds, and the wider tape class. */
export const defaultYard: Yard = {
  format: 'onepour-yard',
  version: 1,
  id: 'default-yard',
  edition: '1',
  name: 'No yard described',
  tapeClass: 'II',
  spares: { share: 0.05, atLeast: 1 },
  beds: [],
  contacts: [],
};
