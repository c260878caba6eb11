import { findThread, type ThreadName } from '../../engine/hardware/threads.ts';
import type { JobIndex } from '../../job/job-index.ts';
import type { PieceState } from '../../records/fold/piece-state.ts';
import { worseOf } from '../../records/fold/worse-of.ts';
import type { RecordOf } from '../../records/record.ts';
import { takeOffPanel } from '../parts/take-off.ts';
import type { SetOutItem } from '../set-out/set-out.ts';
import type { PiecePlan } from './piece-plan.ts';
import type { YardContext } from './piece-report.ts';
import { ofKind, type PieceSlots, readSlots } from './piece-slots.ts';

/** A part that goes back to the yard: how many went into the form, and how many came back. */
export interface PartBack {
  readonly part: string;
  readonly name: string;
  readonly out: number;
  /** Null: not counted yet. */
  readonly back: number | null;
}

/** How far a bolt went in by hand. */
export interface ThreadProof {
  readonly thread: ThreadName;
  readonly turns: number;
  /** Turns times pitch [mm]. */
  readonly engagement: number;
  /** What the connection asks, else the rules in diameters [mm]. */
  readonly needed: number;
  readonly isEnough: boolean;
}

export interface StrippedInsert {
  readonly item: SetOutItem;
  /** What is not as it must be, in words; empty: nothing. */
  readonly faults: readonly string[];
  readonly proof: ThreadProof | null;
  readonly cap: 'back in' | 'missing' | null;
}

export interface StrippedReport {
  readonly isStripped: boolean;
  /** Somebody opened up the piece: what is not named in an exception is as it must be. */
  readonly isOpenedUp: boolean;
  readonly parts: readonly PartBack[];
  /** All with a thread, and whatever an exception is about. */
  readonly inserts: readonly StrippedInsert[];
}

/** Turns are counted in halves at best: a length that lies this close to what is needed [mm] is enough. */
const ROUNDING = 1e-9;

/** Length of thread that a bolt must be in [mm]: as its connection says, else so many diameters as the rules say. */
export function findNeededEngagement(index: JobIndex, panel: string, item: SetOutItem): number | null {
  if (item.item === null) return null;
  const connection = index.connectionsOf(panel).find(({ mark }) => mark === item.connection);
  const { diameter } = findThread(item.item.thread);
  return connection?.engagement_mm ?? index.file.library.rules.defaults.engagement_d * diameter;
}

/**
 * What turns by hand are worth: each takes the bolt in by one pitch.
 * @example M16 has a pitch of 2 mm: 6 turns are 12 mm, of 16 mm that are one diameter
 */
export function proveThread(thread: ThreadName, turns: number, needed: number): ThreadProof {
  const engagement = turns * findThread(thread).pitch;
  return { thread, turns, engagement, needed, isEnough: engagement >= needed - ROUNDING };
}

function countParts(plan: PiecePlan, slots: PieceSlots): readonly PartBack[] {
  const stripped = ofKind(slots.of(null, 'stripped')?.latest ?? [], 'stripped');
  const counted = stripped.length === 0 ? null : worseOf(stripped).body.plates;
  const out = takeOffPanel(plan.setOut).lines.filter(({ kind }) => kind.reuse !== null);
  const known = new Set(out.map(({ kind }) => kind.id));
  return [
    ...out.map(({ kind, count }): PartBack => {
      const line = counted?.find(({ part }) => part === kind.id);
      return { part: kind.id, name: kind.words, out: count, back: line?.back ?? null };
    }),
    // What was counted though the plan knows of none: it was held another way.
    ...(counted ?? [])
      .filter(({ part }) => !known.has(part))
      .map(({ part, out: taken, back }): PartBack => ({ part, name: part, out: taken, back })),
  ];
}

const FAULTS = [
  ['plateOff', 'its plate is still on'],
  ['mortarOut', 'mortar is in it'],
  ['thread', 'a bolt does not go in by hand'],
  ['capBack', 'its cap is not back in'],
] as const;

function tellProof({ thread, turns, engagement, needed, isEnough }: ThreadProof): string[] {
  if (isEnough) return [];
  const mm = (length: number) => Number(length.toFixed(1));
  return [
    `${thread}: ${turns} turns are ${mm(engagement)} mm of thread, ${mm(needed)} mm needed: clean it by hand and try again, never tap a galvanised thread; else the design engineer decides`,
  ];
}

function reportInsert(
  { index }: YardContext,
  plan: PiecePlan,
  slots: PieceSlots,
  whole: RecordOf<'uncovered'> | null,
  item: SetOutItem,
): StrippedInsert {
  const own = ofKind(slots.of(item.castIn.key, 'uncovered')?.latest ?? [], 'uncovered');
  const record = own.length > 0 ? worseOf(own) : whole;
  const needed = findNeededEngagement(index, plan.setOut.panel.mark, item);
  // Of several counts of turns the least counts, whichever record is the worse otherwise.
  const counts = (own.length > 0 ? own : whole === null ? [] : [whole]).flatMap(({ body }) => body.turns ?? []);
  const proof =
    counts.length === 0 || item.item === null || needed === null
      ? null
      : proveThread(item.item.thread, Math.min(...counts), needed);
  const caps = ofKind(slots.of(item.castIn.key, 'cap')?.latest ?? [], 'cap');
  const cap = caps.length === 0 ? null : worseOf(caps).body.is;
  const isCapBack = cap === 'back in';
  return {
    item,
    faults: [
      ...FAULTS.flatMap(([what, words]) =>
        record === null || record.body[what] || (what === 'capBack' && isCapBack) ? [] : [words],
      ),
      ...(cap === 'missing' && record?.body.capBack !== false ? ['its cap is missing'] : []),
      ...(proof === null ? [] : tellProof(proof)),
    ],
    proof,
    cap,
  };
}

/** What came out of the form: parts that went out and came back, threads, caps. Insert by insert only what somebody named; the rest by the piece's own record. */
export function reportStripped(context: YardContext, plan: PiecePlan, state: PieceState): StrippedReport {
  const slots = readSlots(state);
  const ofPiece = ofKind(slots.of(null, 'uncovered')?.latest ?? [], 'uncovered');
  const whole = ofPiece.length === 0 ? null : worseOf(ofPiece);
  return {
    isStripped: slots.of(null, 'stripped') !== null,
    isOpenedUp: whole !== null,
    parts: countParts(plan, slots),
    inserts: plan.setOut.items
      .map((item) => reportInsert(context, plan, slots, whole, item))
      .filter(({ item, faults }) => item.item !== null || faults.length > 0),
  };
}
