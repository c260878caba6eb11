import type { ZoneLimit } from '../assess/zone/zone-oracle.ts';
import { showRatio } from './numbers.ts';
import { nameMode } from './words.ts';

/** What ends a zone, or why there is none, in words without a full stop. */
export function tellZoneLimit(limit: ZoneLimit): string {
  switch (limit.kind) {
    case 'plate fit':
      return 'the plate does not go on, shifted and turned as it may be';
    case 'place':
      return limit.text;
    case 'strength': {
      const { state, ratio, governing, reasons } = limit.answer;
      if (state === 'fails' && governing !== null && ratio !== null)
        return `strength: ${nameMode(governing.mode)}, ${governing.combination}, at ${showRatio(ratio)}`;
      return `strength ${state === 'strength not checked' ? 'not checked' : `is ${state}`}: ${reasons.join('; ')}`;
    }
  }
}
