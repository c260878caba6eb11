import type { StrippedInsert } from '../yard/after-stripping.ts';
import type { PieceSlots } from '../yard/piece-slots.ts';
import { ofKind } from '../yard/piece-slots.ts';
import type { CardBolt } from './bolt-up-report.ts';

/** Cap and thread of an insert as they were found on site: by a record of its own, else by that of the whole piece. Of several that did not know of each other the worse counts. */
export function findDelivery(slots: PieceSlots, key: string): CardBolt['delivery'] {
  const own = ofKind(slots.of(key, 'delivery')?.latest ?? [], 'delivered');
  const found = own.length > 0 ? own : ofKind(slots.of(null, 'delivery')?.latest ?? [], 'delivered');
  if (found.length === 0) return null;
  return { caps: found.every(({ body }) => body.caps), threads: found.every(({ body }) => body.threads) };
}

/** What must be done about cap and thread before a bolt goes in; turns that were counted in the yard and were too few stay a fault until somebody counts again. */
export function listDeliveryFaults(
  delivery: CardBolt['delivery'],
  opened: Pick<StrippedInsert, 'faults' | 'proof'> | undefined,
): readonly string[] {
  const faults: string[] = [];
  if (delivery?.caps === false) faults.push('its cap was missing: look for water, ice and mortar, blow it out, dry it');
  if (delivery?.threads === false)
    faults.push(
      'its thread is not clean: brush it and blow it out, try a bolt of the final finish by hand; never tap a galvanised thread',
    );
  const inYard = opened?.faults ?? [];
  if (delivery === null) faults.push(...inYard.map((words) => `in the yard: ${words}`));
  else if (opened?.proof?.isEnough === false) faults.push(...inYard.filter((words) => words.includes('turns are')));
  return faults;
}
