import { type ReadonlySignal, type Signal, signal } from '@preact/signals';
import type { SetOutItem } from '../../../../assess/set-out/set-out.ts';
import type { BodyOf } from '../../../../records/record.ts';
import { FactWriter, takeBack } from '../../../pieces/facts.ts';
import type { OpenPiece } from '../../../pieces/read-piece.ts';
import type { RecordDevice, WriteDraft } from '../../../records/record-device.ts';
import { findUndo } from '../find-undo.ts';
import { listStartDrafts } from '../pieces/start-drafts.ts';
import { findNextStop, listStops, type StopState } from './stop-state.ts';

export type TapedAxis = 'x' | 'y' | 'level';

/** What the person is asked for at a stop. */
export type WalkStep =
  | { readonly kind: 'look' }
  /** Something is not as shown. Null: of which insert is not said yet. */
  | { readonly kind: 'differs'; readonly number: number | null }
  /** Digits, one length after the other; `typed` has those that are known, null where one was left out. */
  | {
      readonly kind: 'tape';
      readonly number: number;
      readonly axes: readonly TapedAxis[];
      readonly typed: readonly (number | null)[];
      /** Measured by choice: a length may be left out. */
      readonly isFree: boolean;
    }
  /** What was measured is off: what to do. */
  | { readonly kind: 'answer'; readonly number: number }
  /** Numbers as keys: to go to one, or to measure one. */
  | { readonly kind: 'numbers'; readonly to: 'go' | 'measure' }
  | { readonly kind: 'end' };

/** What was written last, to be said beside the next stop. */
export type Said =
  | { readonly kind: 'seen'; readonly numbers: readonly number[] }
  | { readonly kind: 'measured'; readonly number: number }
  | { readonly kind: 'taken back'; readonly count: number };

/** By sight: which of the three is not as shown. */
export type Differences = Pick<BodyOf<'placed'>, 'type' | 'face' | 'firm' | 'note'>;

const AS_SHOWN: Differences = { type: true, face: true, firm: true, note: null };

export interface WalkPlace {
  readonly device: Pick<RecordDevice, 'writeAll' | 'id'>;
  /** The piece as it is known now; null while it is not. */
  readonly read: () => OpenPiece | null;
  readonly stage: 1 | 2;
}

/** One walk round the form in one stage: where the person stands, and what is written down. */
export class WalkSession {
  readonly #place: WalkPlace;
  readonly #at: Signal<number>;
  readonly #step: Signal<WalkStep> = signal({ kind: 'look' });
  readonly #said: Signal<Said | null> = signal(null);
  readonly #writer: FactWriter;

  constructor(place: WalkPlace) {
    this.#place = place;
    this.#writer = new FactWriter(place.device);
    this.#at = signal(0);
    this.#goOn(0);
  }

  /** Number of the stop in the order of the walk. */
  get at(): ReadonlySignal<number> {
    return this.#at;
  }

  get step(): ReadonlySignal<WalkStep> {
    return this.#step;
  }

  get said(): ReadonlySignal<Said | null> {
    return this.#said;
  }

  /** Why the last entry could not be written down; null: it was. */
  get fault(): ReadonlySignal<string | null> {
    return this.#writer.fault;
  }

  get stage(): 1 | 2 {
    return this.#place.stage;
  }

  /** The stops with what is left to do at each. */
  stops(): readonly StopState[] {
    const piece = this.#place.read();
    return piece === null ? [] : listStops(piece.state, piece.plan, this.stage);
  }

  /** All that was not looked at here is as shown; at a stop that is done, all of it once more. */
  async seeAll(): Promise<void> {
    const here = this.stops()[this.#at.value];
    if (here === undefined) return;
    const items = here.unseen.length > 0 ? here.unseen : here.stop.members;
    const isWritten = await this.#write(items.map((item) => this.#draftSight(item, AS_SHOWN)));
    if (!isWritten) return;
    this.#said.value = { kind: 'seen', numbers: items.map(({ number }) => number) };
    this.#goOn(this.#at.value);
  }

  /** Something differs; of a stop with one insert it is that one. */
  differ(number: number | null = null): void {
    const members = this.stops()[this.#at.value]?.stop.members ?? [];
    this.#step.value = { kind: 'differs', number: number ?? (members.length === 1 ? members[0]!.number : null) };
  }

  /** Writes down what is not as shown. The walk stays: the others at the stop are still to be looked at. */
  async takeDifference(number: number, found: Differences): Promise<void> {
    const item = this.#find(number);
    if (item === null) return;
    if (!(await this.#write([this.#draftSight(item, found)]))) return;
    this.#said.value = { kind: 'seen', numbers: [number] };
    this.#step.value = { kind: 'answer', number };
  }

  /** Digits of an insert by choice: anything doubtful. */
  measure(number: number): void {
    this.#step.value = { kind: 'tape', number, axes: ['x', 'y', 'level'], typed: [], isFree: true };
  }

  /** A length typed, or left out (null). After the last one it is written down and answered. */
  async type(value: number | null): Promise<void> {
    const step = this.#step.value;
    if (step.kind !== 'tape' || this.#writer.isBusy.value) return;
    const typed = [...step.typed, value];
    if (typed.length < step.axes.length) {
      this.#step.value = { ...step, typed };
      return;
    }
    const item = this.#find(step.number);
    if (item === null) return;
    if (typed.every((one) => one === null)) {
      this.#goOn(this.#at.value);
      return;
    }
    const of = (axis: TapedAxis) => typed[step.axes.indexOf(axis)] ?? null;
    const body = { stage: this.stage, x_mm: of('x'), y_mm: of('y'), level_mm: of('level'), basis: 'tape' } as const;
    if (!(await this.#write([{ ...this.#base(item), kind: 'measured', body }]))) return;
    this.#said.value = { kind: 'measured', number: step.number };
    if (this.#isOff(step.number)) this.#step.value = { kind: 'answer', number: step.number };
    else this.#goOn(this.#at.value);
  }

  /** The first length again, nothing written. */
  typeAgain(): void {
    const step = this.#step.value;
    if (step.kind === 'tape') this.#step.value = { ...step, typed: step.typed.slice(0, -1) };
  }

  showNumbers(to: 'go' | 'measure'): void {
    this.#step.value = { kind: 'numbers', to };
  }

  /** To the stop of an insert. Nothing is said of one that belongs to the other stage. */
  goTo(number: number): void {
    const k = this.stops().findIndex(({ stop }) => stop.members.some((item) => item.number === number));
    if (k < 0) return;
    this.#at.value = k;
    this.#step.value = { kind: 'look' };
    this.#said.value = null;
  }

  /** What is next from here: at this stop, or at the next one that is not done. */
  goOn(): void {
    this.#goOn(this.#at.value);
  }

  /** The next stop in the order of the walk, whatever was done here. */
  skip(): void {
    const count = this.stops().length;
    if (count === 0) return;
    this.#at.value = (this.#at.value + 1) % count;
    this.#step.value = { kind: 'look' };
    this.#said.value = null;
  }

  look(): void {
    this.#step.value = { kind: 'look' };
  }

  /** Takes back what was written last on this device for this piece: a correction, which stays in the history too. */
  async undo(): Promise<void> {
    const piece = this.#place.read();
    if (piece === null) return;
    const records = findUndo(piece.state, this.#place.device.id.value);
    const [first] = records;
    const drafts = takeBack(piece, records, 'taken back at once');
    if (drafts.length === 0 || !(await this.#write(drafts))) return;
    const item = piece.plan.setOut.items.find(({ castIn }) => castIn.key === first?.item);
    if (item !== undefined && item.stage === this.stage) {
      this.goTo(item.number);
      this.#goOn(this.#at.value);
    }
    this.#said.value = { kind: 'taken back', count: drafts.length };
  }

  #goOn(from: number): void {
    const stops = this.stops();
    const here = stops[from];
    const next = here !== undefined && !here.isDone ? from : findNextStop(stops, from);
    if (next === null) {
      this.#step.value = { kind: 'end' };
      return;
    }
    this.#at.value = next;
    const { unseen, asks } = stops[next]!;
    const [ask] = asks;
    if (unseen.length > 0 || ask === undefined) {
      this.#step.value = { kind: 'look' };
      return;
    }
    // All that is asked of one insert is typed before anything is said about it.
    const axes = stops[next]!.stop.asks.filter(({ number }) => number === ask.number).map(({ axis }) => axis);
    this.#step.value = { kind: 'tape', number: ask.number, axes, typed: [], isFree: false };
  }

  #isOff(number: number): boolean {
    const found = this.#place.read()?.report.inserts.find(({ item }) => item.number === number);
    return found !== undefined && (found.state === 'out' || found.state === 'conflict');
  }

  #find(number: number): SetOutItem | null {
    return this.#place.read()?.plan.setOut.items.find((item) => item.number === number) ?? null;
  }

  #base({ castIn }: SetOutItem) {
    const piece = this.#place.read();
    if (piece === null) throw new Error('the piece is not read; expected a walk of a piece that is');
    return {
      piece: piece.id,
      item: castIn.key,
      checkKey: piece.plan.keys.get(castIn.key) ?? null,
      measuredAt: null,
      measuredBy: null,
    };
  }

  #draftSight(item: SetOutItem, found: Differences): WriteDraft {
    return { ...this.#base(item), kind: 'placed', body: { stage: this.stage, ...found } };
  }

  /** With what begins the piece, where nobody has begun it. */
  #write(drafts: readonly WriteDraft[]): Promise<boolean> {
    const piece = this.#place.read();
    const start = piece === null ? [] : listStartDrafts(piece.state, piece.head);
    return this.#writer.write([...start, ...drafts]);
  }
}
