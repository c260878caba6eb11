import type { CorrosionCategory } from './corrosion.ts';
import { type ExposureClass, isWet } from './cover.ts';
import type { Finish } from './finish.ts';

/** A part in contact with another: what it is called (in the plural) and its surface. */
export interface ContactPart {
  readonly name: string;
  readonly finish: Finish;
}

/** What the contact of two metals does; `slight` where the part that suffers is much the larger. */
export interface MetalContact {
  readonly kind: 'eaten' | 'slight';
  /** Name of the part that suffers. */
  readonly suffers: string;
  readonly text: string;
}

/** From the least to the most noble; the two kinds of zinc are one metal. */
const NOBILITY: Readonly<Record<Finish, number>> = { zinc: 0, galvanised: 0, plain: 1, stainless: 2 };

/** The nobler part's bare area may be this share of the other's, and the loss spreads too thin to matter. */
const SMALL_AREA = 0.1;

const DRY: ReadonlySet<CorrosionCategory> = new Set(['C1', 'C2']);

/**
 * Tells what the contact of two metals does where it is wet: the less noble one is eaten close by, the faster the smaller its bare area
 * beside the nobler one's (small-area rule). Null where both are alike, or where it stays dry (C1 and C2, unless rain or salt gets there).
 *
 * - areaRatio: bare area of the nobler part over that of the other; null: not known, taken as large
 * Source: common practice (EN 1993-1-4 and ISO 14713-1 name it), the limit of a tenth too. Example: galvanised insert, stainless bolt,
 * C4 → the insert's zinc is eaten.
 */
export function judgeContact(
  first: ContactPart,
  second: ContactPart,
  where: { readonly category: CorrosionCategory; readonly exposure: ExposureClass },
  areaRatio: number | null,
): MetalContact | null {
  const difference = NOBILITY[first.finish] - NOBILITY[second.finish];
  if (difference === 0 || (DRY.has(where.category) && !isWet(where.exposure))) return null;
  const [weak, noble] = difference < 0 ? [first, second] : [second, first];
  const pair = `${weak.finish} ${weak.name} against ${noble.finish} ${noble.name} in ${where.category}`;
  const loss = weak.finish === 'plain' ? 'the plain steel rusts' : 'the zinc is eaten';
  if (areaRatio !== null && areaRatio <= SMALL_AREA)
    return {
      kind: 'slight',
      suffers: weak.name,
      text: `${pair}: ${loss} a little close by, spread over an area ten times as large (common practice)`,
    };
  return {
    kind: 'eaten',
    suffers: weak.name,
    text: `${pair}: where it is wet ${loss} close to the contact, the faster the smaller its bare area (common practice); use one metal for both, or part them`,
  };
}
