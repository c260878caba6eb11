import { isStainlessClass, type PropertyClass } from '../../engine/hardware/property-classes.ts';
import type { ThreadName } from '../../engine/hardware/threads.ts';
import type { Finish } from '../../engine/material/finish.ts';
import type { CastIn } from '../../job/documents/cast-in.ts';
import type { CatalogueItem } from '../../job/documents/catalogue.ts';
import type { HoldingPart } from '../../job/documents/holding-parts.ts';

/** Groups in which parts are listed, in the order of the lists. */
export const partGroups = [
  'inserts',
  'cross bars',
  'chairs',
  'caps',
  'holding',
  'other cast-ins',
  'bolts and washers',
] as const;

export type PartGroup = (typeof partGroups)[number];

/** One kind of thing that is counted; kinds of one group with one id are the same. */
export interface PartKind {
  readonly group: PartGroup;
  /** As the shelf, stock.csv and orders.csv name it. */
  readonly id: string;
  readonly words: string;
  readonly thread: ThreadName | null;
  /** Length of an insert, a cut bar or a bolt, height of a chair [mm]; null: none, or not known. */
  readonly size: number | null;
  readonly finish: Finish | null;
  /** Of what comes back from a pour: the share that does not, and days until it can be used again; null: used up. */
  readonly reuse: { readonly lossPerUse: number; readonly turnRound: number } | null;
  /** Whether the yard's rule of spares counts: for what is used up and kept by the box. */
  readonly hasSpares: boolean;
  readonly packSize: number;
  /** Calendar days from order to delivery; null: not known. */
  readonly leadTime: number | null;
  /** Bolts go to the site with the panel: no pour waits for them. */
  readonly neededAt: 'pour' | 'site';
  /** Whether it goes into the bag of its panel; what does not is large, or brought by others. */
  readonly isBagged: boolean;
}

/** So many of a kind. */
export interface PartLine {
  readonly kind: PartKind;
  readonly count: number;
}

const usedUp = { reuse: null, hasSpares: true, packSize: 1, leadTime: null, neededAt: 'pour', isBagged: true } as const;

/** An insert by its type; two types that differ in length or finish alone are two kinds. */
export function insertKind(item: CatalogueItem): PartKind {
  return {
    ...usedUp,
    group: 'inserts',
    id: item.id,
    words: item.name,
    thread: item.thread,
    size: item.length_mm,
    finish: item.finish,
    leadTime: item.leadTime_days,
  };
}

/** A bar through the cross hole, by diameter and cut length [mm]. */
export function crossBarKind(diameter: number, length: number): PartKind {
  return {
    ...usedUp,
    group: 'cross bars',
    id: `bar ${diameter} x ${length}`,
    words: `cross bar, diameter ${diameter}, cut to ${length}`,
    thread: null,
    size: length,
    finish: null,
  };
}

/** What holds inserts in the form. Chairs are told apart by their height. */
export function holdingKind(part: HoldingPart): PartKind {
  const group = part.kind === 'chair' ? 'chairs' : part.kind === 'cap' ? 'caps' : 'holding';
  return {
    group,
    id: part.id,
    words: part.name,
    thread: part.thread,
    size: part.kind === 'chair' ? part.height_mm : null,
    finish: null,
    reuse: part.reusable ? { lossPerUse: part.lossPerUse, turnRound: part.turnRound_days } : null,
    hasSpares: !part.reusable,
    packSize: part.packSize,
    leadTime: part.leadTime_days,
    neededAt: 'pour',
    isBagged: part.kind !== 'template board' && part.kind !== 'bridging bar',
  };
}

/** A cast-in item without a catalogue type, by role. Each is made for its place: no spares. */
export function otherKind({ role, description }: Pick<CastIn, 'role' | 'description'>): PartKind {
  return {
    ...usedUp,
    group: 'other cast-ins',
    id: description === null ? role : `${role}: ${description}`,
    words: description ?? role,
    thread: null,
    size: null,
    finish: null,
    hasSpares: false,
    isBagged: false,
  };
}

/** What is known of a bolt; null: not yet. */
export interface BoltWords {
  readonly thread: ThreadName;
  readonly length: number | null;
  readonly propertyClass: PropertyClass;
  readonly finish: Finish | null;
}

/** A bolt for the site, with all that tells it from another. */
export function boltKind({ thread, length, propertyClass, finish }: BoltWords): PartKind {
  const size = length === null ? `${thread}, length open` : `${thread} x ${length}`;
  // A stainless class says the finish already.
  const surface = isStainlessClass(propertyClass) ? [] : [finish ?? 'finish open'];
  return {
    ...usedUp,
    group: 'bolts and washers',
    id: ['bolt', size, propertyClass, ...surface].join(' '),
    words: `bolt ${[size, `class ${propertyClass}`, ...surface].join(', ')}`,
    thread,
    size: length,
    finish,
    neededAt: 'site',
    isBagged: false,
  };
}

/** The washer of a bolt. */
export function washerKind(thread: ThreadName, standard: string, finish: Finish | null): PartKind {
  const surface = finish ?? 'finish open';
  return {
    ...usedUp,
    group: 'bolts and washers',
    id: `washer ${thread} ${standard} ${surface}`,
    words: `washer ${thread}, ${standard}, ${surface}`,
    thread,
    size: null,
    finish,
    neededAt: 'site',
    isBagged: false,
  };
}
