import type { JobIndex } from '../../job/job-index.ts';
import type { PieceState } from '../../records/fold/piece-state.ts';
import type { PiecePhase } from './piece-report.ts';
import type { PieceSlots } from './piece-slots.ts';

/**
 * How far a piece is that came out of its form: bolted up once every connection of its panel that has bolts is tightened, or given up as not usable.
 * Null: none of what comes after opening it up was done.
 * @param mark of its panel; an unknown one has no connections
 */
export function findAfterPhase(
  index: JobIndex,
  mark: string,
  state: Pick<PieceState, 'beside'>,
  slots: PieceSlots,
): Extract<PiecePhase, 'surveyed' | 'bolted up'> | null {
  const connections = index.panels.has(mark) ? index.connectionsOf(mark) : [];
  const isTightened = (key: string) => slots.of(null, `tightened ${key}`) !== null;
  if (connections.length > 0 && connections.every(({ key }) => isTightened(key))) return 'bolted up';
  return (state.beside.get('surveyed') ?? []).length > 0 ? 'surveyed' : null;
}
