import type { JobIndex } from '../../job/job-index.ts';
import type { PieceState, PouredState, SlotState } from '../../records/fold/piece-state.ts';
import type { Person } from '../../records/person.ts';
import type { FactRecord, RecordOf } from '../../records/record.ts';
import type { SetOutItem } from '../set-out/set-out.ts';
import type { PiecePlan } from './piece-plan.ts';
import type { PlacingAnswer, Recognised } from './placing-answer.ts';
import type { Extent } from './rights.ts';

/** What a report is made with, beside the piece. */
export interface YardContext {
  readonly index: JobIndex;
  /** The revision in force. */
  readonly revision: { readonly letter: string; readonly fingerprint: string };
  readonly people: readonly Person[];
}

/** Where an insert stands in its checks. */
export type InsertState =
  /** Nobody looked, or digits that are asked for are missing. */
  | 'open'
  /** Looked at by an earlier revision whose check key was another. */
  | 'open again'
  | 'good'
  /** Off its place or wrong by sight, nobody decided. */
  | 'out'
  /** Off, and accepted by somebody who may. */
  | 'accepted'
  | 'conflict';

export interface InsertReport {
  readonly item: SetOutItem;
  readonly key: string;
  readonly state: InsertState;
  /** In words: why it is not good. */
  readonly why: readonly string[];
  readonly sight: SlotState | null;
  readonly place: SlotState | null;
  readonly answer: PlacingAnswer | null;
  /** How bad it is, for who may accept it; null: nothing is wrong. */
  readonly extent: Extent | null;
  /** Records that say what is wrong with it, or that stand for a look that nobody took in time: what a decision is about. Empty: nothing to decide. */
  readonly about: readonly FactRecord[];
  readonly decision: RecordOf<'decision'> | null;
  readonly screed: SlotState | null;
  readonly uncovered: SlotState | null;
  /** In stage 2 of an insert of stage 1 that was never checked: it cannot be measured any more. In words. */
  readonly notMeasurable: string | null;
}

/** The form itself. */
export interface FormReport {
  /** `accepted`: out, and taken as it is by somebody who may. */
  readonly state: 'open' | 'open again' | 'good' | 'out' | 'accepted' | 'conflict';
  /** `the form is racked: its diagonals differ by 9 mm …`: the form's fault, not the inserts'. */
  readonly findings: readonly string[];
  readonly slot: SlotState | null;
  /** Of what is out, as of an insert; null and empty where nothing is. */
  readonly extent: Extent | null;
  readonly about: readonly FactRecord[];
  readonly decision: RecordOf<'decision'> | null;
}

/** Something that stands against clearing, with who may lift it. */
export interface OpenPoint {
  readonly words: string;
  /** Number of the insert; null: of the piece or form. */
  readonly number: number | null;
  readonly liftedBy: 'checking it' | 'setter' | 'qa' | 'design engineer';
  /** It cannot be cleared with a condition while this stands: only poured on an override. */
  readonly isHard: boolean;
}

/** Something that must never be overlooked: poured without clearance, a conflict, a decision by somebody who may not, another id under one device. */
export interface Flag {
  readonly kind:
    | 'poured without clearance'
    | 'poured on an override'
    | 'poured while held'
    | 'cleared too late'
    | 'conflict'
    | 'decided without the right'
    | 'cleared on other inputs'
    | 'by an old revision'
    | 'wrong mark'
    | 'poured withdrawn'
    | 'tightened though not usable'
    | 'bolted up before a decision'
    | 'bolted otherwise than picked'
    | 'survey that does not agree'
    | 'decided on other numbers'
    | 'caps or threads on delivery';
  readonly words: string;
  readonly records: readonly string[];
}

/** Where a piece is in its life. */
export type PiecePhase =
  | 'not started'
  | 'in the form'
  | 'cleared'
  | 'held'
  | 'poured'
  | 'stripped'
  | 'opened up'
  | 'surveyed'
  | 'bolted up'
  | 'scrapped';

/** Everything that screens, sheets and lists say about one piece. */
export interface PieceReport {
  readonly piece: string;
  /** As it is marked now. */
  readonly mark: string;
  readonly serial: string;
  readonly phase: PiecePhase;
  readonly plan: PiecePlan;
  readonly state: PieceState;
  readonly form: FormReport;
  readonly inserts: readonly InsertReport[];
  readonly recognised: Recognised | null;
  readonly counts: Readonly<Record<1 | 2, { readonly done: number; readonly left: number; readonly out: number }>>;
  readonly screed: { readonly done: number; readonly left: number; readonly out: number };
  readonly openPoints: readonly OpenPoint[];
  readonly clearance: {
    readonly is: 'none' | 'cleared' | 'cleared with a condition' | 'held' | 'override';
    readonly record: RecordOf<'cleared'> | RecordOf<'held'> | RecordOf<'override'> | null;
    /** What a clearance given now would be given on: its hash goes into `frozen`. */
    readonly inputs: string;
  };
  readonly poured: PouredState | null;
  readonly flags: readonly Flag[];
  /** The latest of all records, by the time measured. */
  readonly last: FactRecord | null;
}
