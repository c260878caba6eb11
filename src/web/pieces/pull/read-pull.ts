import type { BodyOf } from '../../../records/record.ts';
import { readTool, type TypedTool } from '../survey/read-tool.ts';

type Pulled = BodyOf<'proof-loaded'>;

/** One pull as somebody types it; empty where it is not read. `failure` undefined: not said yet. */
export interface TypedPull {
  readonly load: string;
  readonly hold: string;
  readonly movement: string;
  readonly support: string;
  readonly failure: Pulled['failure'] | undefined;
}

export const NO_PULL: TypedPull = { load: '', hold: '', movement: '', support: '', failure: undefined };

/** A number with a point or a comma; null: none. */
function readNumber(text: string): number | null {
  const plain = text.trim().replace(',', '.');
  if (!/^\d+(\.\d+)?$|^\.\d+$/.test(plain)) return null;
  return Number(plain);
}

/** What a record says of a pull; a text: what is missing or wrong, in one sentence. Load kN, hold minutes, lengths mm. */
export function readPull(typed: TypedPull, tool: TypedTool): Pulled | string {
  const load = readNumber(typed.load);
  if (load === null || load > 10_000) return 'Type the load in kN';
  const hold = readNumber(typed.hold);
  if (hold === null || hold > 1440) return 'Type how many minutes it was held; 0: not at all';
  const movement = readNumber(typed.movement);
  if (typed.movement.trim() !== '' && (movement === null || movement > 1000))
    return 'The movement is no number of mm; nothing: it was not read';
  const support = readNumber(typed.support);
  if (typed.support.trim() !== '' && (support === null || support <= 0 || support > 10_000))
    return 'The distance of the feet is no number of mm; nothing: it was not measured';
  if (typed.failure === undefined) return 'Say whether it held';
  const gauge = readTool(tool);
  if (typeof gauge === 'string') return gauge;
  return {
    load_kN: load,
    held_min: hold,
    movement_mm: movement,
    failure: typed.failure,
    support_mm: support,
    gauge,
    at: null,
    note: null,
  };
}
