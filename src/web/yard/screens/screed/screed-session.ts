import { type ReadonlySignal, signal } from '@preact/signals';
import type { SetOutItem } from '../../../../assess/set-out/set-out.ts';
import type { BodyOf } from '../../../../records/record.ts';
import type { FactWriter } from '../../../pieces/facts.ts';
import { factOf } from '../../../pieces/facts.ts';
import type { OpenPiece } from '../../../pieces/read-piece.ts';
import type { WriteDraft } from '../../../records/record-device.ts';
import { findNextScreed, findScreed, listScreedStops, type ScreedStop } from './screed-stops.ts';

export type ScreedSight = Pick<BodyOf<'screed-checked'>, 'level' | 'plumb' | 'cap'>;

/** What is asked after screeding. */
export type ScreedStep =
  | { readonly kind: 'look' }
  /** Which one, of these numbers. */
  | { readonly kind: 'which'; readonly numbers: readonly number[] }
  /** What is off at one insert: each can be said. */
  | { readonly kind: 'off'; readonly number: number; readonly sight: ScreedSight }
  | { readonly kind: 'level'; readonly number: number; readonly sight: ScreedSight }
  /** It moved along the face: it is taped again, x then y. */
  | { readonly kind: 'moved'; readonly number: number; readonly x: number | null }
  | { readonly kind: 'answer'; readonly number: number }
  | { readonly kind: 'end' };

const ALL_RIGHT: ScreedSight = { level: true, plumb: true, cap: true };

/** One walk over the trowelled face while it can still be put right. */
export class ScreedSession {
  readonly #read: () => OpenPiece | null;
  readonly #writer: Pick<FactWriter, 'write'>;
  readonly #at = signal(0);
  readonly #step = signal<ScreedStep>({ kind: 'look' });

  constructor(read: () => OpenPiece | null, writer: Pick<FactWriter, 'write'>) {
    this.#read = read;
    this.#writer = writer;
    this.goOn();
  }

  get at(): ReadonlySignal<number> {
    return this.#at;
  }

  get step(): ReadonlySignal<ScreedStep> {
    return this.#step;
  }

  stops(): readonly ScreedStop[] {
    const piece = this.#read();
    return piece === null ? [] : listScreedStops(piece.state, piece.plan);
  }

  /** To the next stop that nobody looked at. */
  goOn(): void {
    const next = findNextScreed(this.stops(), this.#at.value);
    this.#step.value = next === null ? { kind: 'end' } : { kind: 'look' };
    if (next !== null) this.#at.value = next;
  }

  goTo(number: number): void {
    const k = this.stops().findIndex(({ members }) => members.some((item) => item.number === number));
    if (k < 0) return;
    this.#at.value = k;
    this.#step.value = { kind: 'look' };
  }

  /** All that nobody looked at here is level, plumb and capped; at a stop that is done, all of it now. */
  async allRight(): Promise<void> {
    const here = this.stops()[this.#at.value];
    if (here === undefined) return;
    const items = here.unseen.length > 0 ? here.unseen : here.members;
    if (await this.#write(items.map((item) => this.#draft(item, ALL_RIGHT, null)))) this.goOn();
  }

  /** Something is off: of a stop with one insert it is that one. */
  off(): void {
    const members = this.stops()[this.#at.value]?.members ?? [];
    if (members.length === 1) this.pick(members[0]!.number);
    else this.#step.value = { kind: 'which', numbers: members.map(({ number }) => number) };
  }

  /** Any of them once more. */
  list(): void {
    const numbers = this.stops().flatMap(({ members }) => members.map(({ number }) => number));
    this.#step.value = { kind: 'which', numbers };
  }

  pick(number: number): void {
    const piece = this.#read();
    const item = this.#find(number);
    if (piece === null || item === null) return;
    const before = findScreed(piece.state, piece.plan, item);
    this.#step.value = { kind: 'off', number, sight: before === null ? ALL_RIGHT : before.body };
  }

  /** Says the other of one of the three. */
  turn(which: keyof ScreedSight): void {
    const step = this.#step.value;
    if (step.kind !== 'off') return;
    const { level, plumb, cap } = step.sight;
    const sight = { level, plumb, cap };
    this.#step.value = { ...step, sight: { ...sight, [which]: !sight[which] } };
  }

  /** What is off is said; where it is the level, by how much is asked. */
  async say(): Promise<void> {
    const step = this.#step.value;
    if (step.kind !== 'off') return;
    if (step.sight.level) await this.#writeOff(step.number, step.sight, null);
    else this.#step.value = { ...step, kind: 'level' };
  }

  /** @param level_mm below the face positive; null: not taken */
  async level(level_mm: number | null): Promise<void> {
    const step = this.#step.value;
    if (step.kind === 'level') await this.#writeOff(step.number, step.sight, level_mm);
  }

  /** It moved along the face: only this one is taped again. */
  moved(number: number): void {
    this.#step.value = { kind: 'moved', number, x: null };
  }

  /** A taped length of the one that moved: x first, then y. */
  async tape(value: number): Promise<void> {
    const step = this.#step.value;
    if (step.kind !== 'moved') return;
    if (step.x === null) {
      this.#step.value = { ...step, x: value };
      return;
    }
    const item = this.#find(step.number);
    const piece = this.#read();
    if (item === null || piece === null) return;
    const body = { stage: 2, x_mm: step.x, y_mm: value, level_mm: null, basis: 'tape' } as const;
    if (await this.#write([{ ...factOf(piece, item), kind: 'measured', body }]))
      this.#step.value = { kind: 'answer', number: step.number };
  }

  back(): void {
    const step = this.#step.value;
    if (step.kind === 'level') this.#step.value = { kind: 'off', number: step.number, sight: step.sight };
    else if (step.kind === 'moved' && step.x !== null) this.#step.value = { ...step, x: null };
    else this.#step.value = { kind: 'look' };
  }

  async #writeOff(number: number, sight: ScreedSight, level_mm: number | null): Promise<void> {
    const item = this.#find(number);
    if (item !== null && (await this.#write([this.#draft(item, sight, level_mm)])))
      this.#step.value = { kind: 'answer', number };
  }

  #draft(item: SetOutItem, { level, plumb, cap }: ScreedSight, level_mm: number | null): WriteDraft {
    const piece = this.#read();
    if (piece === null) throw new Error('the piece is not read; expected a walk over a piece that is');
    return { ...factOf(piece, item), kind: 'screed-checked', body: { level, plumb, cap, level_mm, note: null } };
  }

  #write(drafts: readonly WriteDraft[]): Promise<boolean> {
    return this.#writer.write(drafts);
  }

  #find(number: number): SetOutItem | null {
    return this.#read()?.plan.setOut.items.find((item) => item.number === number) ?? null;
  }
}
