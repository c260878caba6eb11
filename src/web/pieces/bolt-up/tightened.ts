import type { BoltUpCard, CardBolt } from '../../../assess/bolt-up/bolt-up-report.ts';
import type { BodyOf } from '../../../records/record.ts';

type Tightened = BodyOf<'tightened'>;

/** A bolt as it is to be recorded. */
export type TightenedBolt = Tightened['bolts'][number];

/** Which of the card's ranges of packers stands first: what the design or the decision states. */
export const STATED_RANGE = 0;

/** The bolt that the card picks; null: no standard length serves these packers. */
function pickBolt({ insert, lengths }: CardBolt, range: number): TightenedBolt | null {
  const row = lengths[range];
  if (row === undefined || row.choice === null) return null;
  return {
    item: insert.item.castIn.key,
    length_mm: row.choice.length,
    turns: null,
    packers_mm: row.packers[1],
  };
}

/** The bolts of a card for a range of packers, in its order; null: one has no length, so that it cannot be bolted so. */
export function pickBolts({ bolts }: Pick<BoltUpCard, 'bolts'>, range: number): readonly TightenedBolt[] | null {
  const picked = bolts.flatMap((bolt) => pickBolt(bolt, range) ?? []);
  return picked.length === bolts.length && picked.length > 0 ? picked : null;
}

/** Bolts that went in fewer turns by hand than they must: one stops there, and does not tighten. */
export function listShort(
  { bolts }: Pick<BoltUpCard, 'bolts'>,
  said: readonly TightenedBolt[],
): readonly { readonly bolt: CardBolt; readonly turns: number }[] {
  return bolts.flatMap((bolt) => {
    const turns = said.find(({ item }) => item === bolt.insert.item.castIn.key)?.turns ?? null;
    return turns === null || turns >= bolt.minTurns ? [] : [{ bolt, turns }];
  });
}

/** Above what the card lets; null: not, or no limit is known. Torques N m. */
export function findOverTorque({ tightening }: Pick<BoltUpCard, 'tightening'>, torque_Nm: number): number | null {
  const most = tightening.most === null ? null : tightening.most.torque / 1000;
  return most !== null && torque_Nm > most ? most : null;
}
