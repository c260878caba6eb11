import { listHoldingPlaces } from '../../engine/form/holding-methods.ts';
import type { Connection } from '../../job/documents/connection.ts';
import type { JobIndex } from '../../job/job-index.ts';
import type { PanelSetOut } from '../set-out/set-out.ts';
import { listBolts } from '../yard/fit-plate.ts';
import type { Learned } from './learn-scatter.ts';
import { type ChanceBolt, findPlateChance, type PlateChance } from './plate-chance.ts';

/** Whether the plate of a connection goes on first time, and what would change that. */
export interface ConnectionChance {
  /** Its permanent key. */
  readonly key: string;
  readonly mark: string;
  readonly panel: string;
  readonly bolts: number;
  /** Of its holes the least and the most diameter over the bolt [mm]; null: no bolts in holes. */
  readonly overBolt: readonly [least: number, most: number] | null;
  readonly hasSlots: boolean;
  /** Null: there is none, and `why` says it. */
  readonly chance: PlateChance | null;
  readonly why: 'no plate' | 'one bolt' | 'no way of holding' | null;
  /** The same holes with all its inserts on one template board, by common practice or as the yard's boards do; null: they are, or no board holds there. */
  readonly onBoard: Pick<PlateChance, 'fits' | 'standardError'> | null;
}

/** The bolts of a connection as they are designed, each with how its insert is held. */
function listChanceBolts(index: JobIndex, setOut: PanelSetOut, connection: Connection): readonly ChanceBolt[] {
  const items = new Map(setOut.items.map((item) => [item.castIn.id, item]));
  const own = connection.inserts.flatMap(({ insert }) => items.get(insert) ?? []);
  if (own.length < connection.inserts.length) return [];
  return connection.inserts.flatMap((seat, i): readonly ChanceBolt[] => {
    const { castIn, way, place } = own[i]!;
    const bolts = listBolts(index, setOut.panel, { ...connection, inserts: [seat] }, [castIn]);
    return bolts.map((bolt) => ({ ...bolt, context: { method: way?.method ?? null, place } }));
  });
}

/** Chances that are known, by what they come from: many connections are of one detail. */
export type KnownChances = Map<string, PlateChance | null>;

function findOnce(bolts: readonly ChanceBolt[], learned: Pick<Learned, 'groups'>, known: KnownChances) {
  const name = JSON.stringify(
    bolts.map(({ hole: { id, ...hole }, boltDiameter, context }) => [hole, boltDiameter, context]),
  );
  const had = known.get(name);
  if (had !== undefined) return had;
  const found = findPlateChance(bolts, learned);
  known.set(name, found);
  return found;
}

function onBoards(bolts: readonly ChanceBolt[]): readonly ChanceBolt[] | null {
  const isHeld = bolts.every(({ context: { place } }) => listHoldingPlaces('template board').includes(place));
  if (!isHeld || bolts.every(({ context: { method } }) => method === 'template board')) return null;
  return bolts.map((bolt) => ({ ...bolt, context: { ...bolt.context, method: 'template board' } }));
}

/**
 * The chance of one connection's plate by what the yard has learned.
 * @param known taken from and added to
 */
export function findConnectionChance(
  index: JobIndex,
  setOut: PanelSetOut,
  connection: Connection,
  learned: Pick<Learned, 'groups'>,
  known: KnownChances,
): ConnectionChance {
  const { key, mark, panel } = connection;
  const bolts = listChanceBolts(index, setOut, connection);
  const overs = bolts.map(({ hole, boltDiameter }) => hole.diameter_mm - boltDiameter);
  const base = {
    ...{ key, mark, panel, bolts: bolts.length, hasSlots: bolts.some(({ hole }) => hole.slot_mm > 0) },
    overBolt: bolts.length === 0 ? null : ([Math.min(...overs), Math.max(...overs)] as const),
  };
  const without = (why: ConnectionChance['why']): ConnectionChance => ({ ...base, chance: null, why, onBoard: null });
  if (bolts.length === 0) return without('no plate');
  if (bolts.length === 1) return without('one bolt');
  const chance = findOnce(bolts, learned, known);
  if (chance === null) return without('no way of holding');
  const boards = onBoards(bolts);
  return { ...base, chance, why: null, onBoard: boards === null ? null : findOnce(boards, learned, known) };
}
