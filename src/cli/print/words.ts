import type { ConnectionState, Decisive } from '../../assess/connection-answer.ts';

/** Failure modes in words. */
const MODE_WORDS: Readonly<Record<Decisive, string>> = {
  'steel-tension': 'steel in tension',
  'concrete-cone': 'concrete cone',
  'pull-out': 'pull-out of the foot',
  'blow-out': 'side-face blow-out',
  splitting: 'splitting',
  'bar-steel': 'supplementary bars, steel',
  'bar-anchorage': 'supplementary bars, anchorage',
  'steel-shear': 'steel in shear',
  'pry-out': 'pry-out',
  'concrete-edge': 'concrete edge in shear',
  'interaction-steel': 'tension with shear, steel',
  'interaction-concrete': 'tension with shear, concrete',
  'interaction-all': 'tension with shear',
  'plate-bending': 'bending of the plate',
};

/** A mode in words; an unknown one as it is. */
export function nameMode(mode: string): string {
  return Object.hasOwn(MODE_WORDS, mode) ? MODE_WORDS[mode as Decisive] : mode;
}

/** States as they stand in a table: words, capitals where a person must stop. */
export const STATE_WORDS: Readonly<Record<ConnectionState, string>> = {
  passes: 'passes',
  fails: 'FAILS',
  'not covered': 'NOT COVERED',
  'cannot be computed': 'CANNOT BE COMPUTED',
  'strength not checked': 'strength not checked',
};
