import { CONNECTION_STATES, type ConnectionState, type Decisive } from '../assess/connection-answer.ts';

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

/** The same in a word or two, where a column is narrow. */
const SHORT_MODES: Readonly<Record<Decisive, string>> = {
  'steel-tension': 'steel N',
  'concrete-cone': 'cone',
  'pull-out': 'pull-out',
  'blow-out': 'blow-out',
  splitting: 'splitting',
  'bar-steel': 'bars',
  'bar-anchorage': 'bars bond',
  'steel-shear': 'steel V',
  'pry-out': 'pry-out',
  'concrete-edge': 'edge V',
  'interaction-steel': 'steel N + V',
  'interaction-concrete': 'concrete N + V',
  'interaction-all': 'N + V',
  'plate-bending': 'plate',
};

/** A mode in short words. */
export function shortenMode(mode: Decisive): string {
  return SHORT_MODES[mode];
}

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

/** A number of connections in a state, for a place where each state stands alone: `1 fails`, `2 pass`, `3 not covered`. */
export function countState(state: ConnectionState, count: number): string {
  const many: Partial<Record<ConnectionState, string>> = { passes: 'pass', fails: 'fail' };
  return `${count} ${count === 1 ? state : (many[state] ?? state)}`;
}

/** Totals by state in words: "28 pass, 1 FAILS"; states that none is in are left out. */
export function nameCounts(counts: Readonly<Record<ConnectionState, number>>): string {
  const plural: Partial<Record<ConnectionState, string>> = { passes: 'pass', fails: 'FAIL' };
  const parts = CONNECTION_STATES.filter((state) => counts[state] > 0).map((state) => {
    const word = counts[state] === 1 ? STATE_WORDS[state] : (plural[state] ?? STATE_WORDS[state]);
    return `${counts[state]} ${word}`;
  });
  return parts.length === 0 ? 'none to check' : parts.join(', ');
}

/** Modes that a tension, and that a shear may end in. */
export const TENSION_MODES: ReadonlySet<string> = new Set<Decisive>([
  'steel-tension',
  'concrete-cone',
  'pull-out',
  'blow-out',
  'splitting',
  'bar-steel',
  'bar-anchorage',
]);
export const SHEAR_MODES: ReadonlySet<string> = new Set<Decisive>(['steel-shear', 'pry-out', 'concrete-edge']);

/** What the action of a mode is made of, for those who follow it by hand. */
export function tellAction(mode: string, part?: string): string {
  switch (mode) {
    case 'concrete-cone':
    case 'splitting':
    case 'blow-out':
      return 'sum of the tensions of these inserts';
    case 'steel-tension':
    case 'pull-out':
      return 'tension of this insert';
    case 'steel-shear':
      return 'shear of this insert, sqrt(Vx^2 + Vy^2)';
    case 'pry-out':
      return 'resultant shear of these inserts';
    case 'concrete-edge':
      // By parts, each has a row of its own.
      if (part === 'toward' || part === 'along') return `V_${part}`;
      return 'sqrt(V_toward^2 + V_along^2)';
    default:
      return 'force on the bars';
  }
}
