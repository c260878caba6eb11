import type { LengthChoice, PackerRange } from '../../engine/hardware/bolt-length.ts';
import type { PropertyClass } from '../../engine/hardware/property-classes.ts';
import type { Thread } from '../../engine/hardware/threads.ts';
import type { TorqueLimit } from '../../engine/hardware/tightening.ts';
import type { Finish } from '../../engine/material/finish.ts';
import type { Connection } from '../../job/documents/connection.ts';
import type { Fixture } from '../../job/documents/fixture.ts';
import type { RecordOf } from '../../records/record.ts';
import type { AsCastConnection, AsCastInsert } from '../as-cast/as-cast-report.ts';
import type { ConnectionState } from '../connection-answer.ts';
import type { SetOutItem } from '../set-out/set-out.ts';

/** A washer under the head of a bolt. Sizes mm. */
export interface CardWasher {
  readonly kind: 'ISO 7089' | 'ISO 7093-1' | 'plate';
  /** Outside diameter, or side of a plate washer. */
  readonly outside: number;
  readonly thickness: number;
}

/** A length for packers from the least to the greatest. */
export interface CardLength {
  readonly packers: PackerRange;
  /** Null: no standard length serves. */
  readonly choice: LengthChoice | null;
  /** Why none does, and what would help; null: one does. */
  readonly why: string | null;
}

/** What an insert gets. Lengths mm. */
export interface CardBolt {
  readonly insert: AsCastInsert;
  readonly hole: string | null;
  /** Top below the face as it is counted in the length; a top above the face is negative. */
  readonly recess: number;
  /** `surveyed`, else `as designed`: look before the bolts are fetched. */
  readonly recessFrom: 'surveyed' | 'as designed';
  /** One for each of the card's ranges of packers, in their order. */
  readonly lengths: readonly CardLength[];
  /** From the head to the plate. */
  readonly washers: readonly CardWasher[];
  /** Length of thread that must be in contact, and as turns by hand: with fewer one stops. */
  readonly minEngagement: number;
  readonly minTurns: number;
  /** What a person must know of this bolt, in words: shank, thick washers, full strength. */
  readonly notes: readonly string[];
  /** Cap and thread as they were found on site; null: nobody looked. */
  readonly delivery: { readonly caps: boolean; readonly threads: boolean } | null;
  /** What the installer must do first: cap missing, thread dirty, too few turns on opening up. In words. */
  readonly faults: readonly string[];
}

/** A range of packers of a connection, and whether its strength holds with the greatest of them. */
export interface CardPackers {
  readonly range: PackerRange;
  /** The range that holds what the design or the decision states. */
  readonly isStated: boolean;
  /** Computed as cast with the greatest of the range. */
  readonly state: ConnectionState;
  readonly ratio: number | null;
}

/** How hard the bolts of a connection may be tightened. */
export interface CardTightening {
  /** The lowest of all known limits over all inserts [N mm]; null: none but the bolt's own is known, so snug only. */
  readonly most: TorqueLimit | null;
  /** Tension that this torque brings, with the greatest and the least friction [N]; null: no limit known. */
  readonly tension: readonly [least: number, greatest: number] | null;
  /** Every known limit, the lowest of each kind over the inserts. */
  readonly limits: readonly TorqueLimit[];
  readonly isStainless: boolean;
}

/** The card of one connection: what the installer needs at the bracket. */
export interface BoltUpCard {
  readonly asCast: AsCastConnection;
  /** As it is to be bolted: with the movement, holes and inserts of what was decided. */
  readonly connection: Connection;
  /** The plate as it is to be; null: none is given. */
  readonly plate: Fixture | null;
  /**
   * `ready`: may be bolted. `decide first`: off, and nobody who may has decided. `survey first`: an insert was not surveyed or surveys differ. `no bolts`: a bolt or plate is not
   * known, or no length fits. `not usable`: decided so.
   */
  readonly state: 'ready' | 'decide first' | 'survey first' | 'no bolts' | 'not usable' | 'tightened';
  /** Why it is not ready, in words with who decides. */
  readonly stops: readonly string[];
  /** From which side one stands before it, and how. */
  readonly seenFrom: 'outside' | 'inside' | 'edge';
  readonly thread: Thread | null;
  readonly propertyClass: PropertyClass;
  readonly finish: Finish;
  readonly packers: readonly CardPackers[];
  readonly bolts: readonly CardBolt[];
  /** Inserts that get no bolt: they are filled and sealed. */
  readonly unused: readonly AsCastInsert[];
  readonly tightening: CardTightening;
  /** Lengths on this card that are easily taken for one another, in words. */
  readonly lookAlikes: readonly string[];
  readonly notes: readonly string[];
  readonly offered: RecordOf<'offered'> | null;
  readonly tightened: RecordOf<'tightened'> | null;
  /** What is wrong with how it was tightened: another length than picked, above the most, before it was ready. In words. */
  readonly tightenedFaults: readonly string[];
}

/** An insert that is needed for a time only, or not at all any more. */
export interface TemporaryInsert {
  readonly item: SetOutItem;
  readonly why: 'brace' | 'lifting' | 'no bolt';
  /** `in use`: a permanent connection is not tightened yet, so that it stays. */
  readonly state: 'in use' | 'fill and seal' | 'sealed' | 'sealed too early';
  readonly record: RecordOf<'sealed'> | null;
}

/** Everything about bolting up one piece. */
export interface BoltUpReport {
  readonly piece: string;
  /** Mark of its panel. */
  readonly panel: string;
  /** Where it stands in the building, as it was recorded: grid, level; null: not recorded. */
  readonly place: string | null;
  readonly cards: readonly BoltUpCard[];
  readonly temporary: readonly TemporaryInsert[];
  readonly counts: { readonly tightened: number; readonly ready: number; readonly waiting: number };
  /** Every connection that has bolts is tightened: only now may braces come off, as the temporary works design says. */
  readonly isDone: boolean;
}
