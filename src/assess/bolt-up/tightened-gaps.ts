import type { RecordOf } from '../../records/record.ts';
import type { BoltUpCard, CardBolt } from './bolt-up-report.ts';

type Used = RecordOf<'tightened'>['body']['bolts'][number];

/** The length that the card picks for the packers that were under the plate [mm]; null: it picks none for them. */
function findPicked({ lengths }: CardBolt, packers: number): number | null {
  const row = lengths.find(({ packers: [least, greatest] }) => packers >= least && packers <= greatest);
  return row?.choice?.length ?? null;
}

function listBoltGaps(bolt: CardBolt, used: Used): readonly string[] {
  const picked = findPicked(bolt, used.packers_mm);
  return picked === null || picked === used.length_mm
    ? []
    : [`insert ${bolt.insert.item.number}: a bolt of ${used.length_mm} mm went in, ${picked} mm was picked`];
}

/**
 * What a record of tightening leaves open, in words: no fault by itself, and not shown to be right. Empty: nothing. What is wrong with it is in the card's faults.
 * Days are compared by the day in which it was measured (UTC).
 */
export function listTightenedGaps(
  { bolts }: Pick<BoltUpCard, 'bolts'>,
  record: RecordOf<'tightened'>,
): readonly string[] {
  const { body, measuredAt } = record;
  const day = measuredAt.slice(0, 10);
  const gaps: string[] = [];
  if (body.how === 'torque wrench') {
    const until = body.tool?.calibratedUntil ?? null;
    if ((body.tool?.serial ?? null) === null) gaps.push('no number of the wrench is recorded');
    if (until !== null && until < day) gaps.push(`the wrench was calibrated until ${until} only, and used on ${day}`);
  }
  for (const bolt of bolts)
    for (const used of body.bolts.filter(({ item }) => item === bolt.insert.item.castIn.key))
      gaps.push(...listBoltGaps(bolt, used));
  return gaps;
}
