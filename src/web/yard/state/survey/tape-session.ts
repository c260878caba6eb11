import { type ReadonlySignal, type Signal, signal } from '@preact/signals';
import type { SetOutItem } from '../../../../assess/set-out/set-out.ts';
import type { Point } from '../../../../engine/geometry/point.ts';
import type { BodyOf } from '../../../../records/record.ts';
import { FactWriter, factOf } from '../../../pieces/facts.ts';
import type { OpenPiece } from '../../../pieces/read-piece.ts';
import { itemsBefore, lookFrom, type Stand } from '../../../pieces/survey/stand.ts';
import { askConnection, askEach, listOpen, type TapeAsk } from '../../../pieces/survey/tape-asks.ts';
import { rankTapeSides } from '../../../pieces/survey/tape-edges.ts';
import {
  EMPTY_TAPE_DRAFT,
  keepTapeDraft,
  readTapeDraft,
  type TapeDraft,
  type TapeEntry,
} from '../../../pieces/survey/tape-entries.ts';
import { findTapedPlaces, makeTapedSurvey, type TapedPlaces } from '../../../pieces/survey/taped-survey.ts';
import type { RecordDevice } from '../../../records/record-device.ts';
import { listStartDrafts } from '../pieces/start-drafts.ts';

/** Where the person is. `rod`: an insert is held against a rod; its lengths come one by one. `end`: nothing is left to ask. */
export type TapeStep =
  | { readonly kind: 'start' }
  | { readonly kind: 'connections' }
  | { readonly kind: 'tape'; readonly ask: TapeAsk }
  | { readonly kind: 'answer'; readonly item: string }
  | { readonly kind: 'rod'; readonly item: string; readonly typed: readonly number[] }
  | { readonly kind: 'end' }
  | { readonly kind: 'written' };

/** How far a taped insert is off, as the person sees it [mm]: right and up positive. */
export interface TapedAnswer {
  readonly item: SetOutItem;
  readonly aside: Point;
  readonly isOff: boolean;
  /** Below the face; null: not taken. */
  readonly depth: number | null;
}

export interface TapePlace {
  readonly device: Pick<RecordDevice, 'writeAll'>;
  readonly storage: Pick<Storage, 'getItem' | 'setItem' | 'removeItem'>;
  readonly piece: OpenPiece;
  /** The piece as it is known now. */
  readonly read: () => OpenPiece;
}

/** Inserts of a hard panel, taped one number after the other, then written down as one survey. */
export class TapeSession {
  readonly #place: TapePlace;
  readonly #writer: FactWriter;
  readonly #draft: Signal<TapeDraft>;
  readonly #step: Signal<TapeStep>;
  readonly #basis: Signal<TapeDraft['basis']> = signal('tape');

  constructor(place: TapePlace) {
    this.#place = place;
    this.#writer = new FactWriter(place.device);
    const kept = readTapeDraft(place.storage, place.piece.id);
    const { drawnFace } = place.piece.plan.setOut.panel;
    this.#draft = signal(kept === EMPTY_TAPE_DRAFT ? { ...kept, face: this.#fullerFace(drawnFace) } : kept);
    this.#step = signal({ kind: 'start' });
    if (kept.entries.length > 0) this.goOn();
  }

  get step(): ReadonlySignal<TapeStep> {
    return this.#step;
  }

  get draft(): ReadonlySignal<TapeDraft> {
    return this.#draft;
  }

  /** Why it could not be written down; null: it was, or was not tried. */
  get fault(): ReadonlySignal<string | null> {
    return this.#writer.fault;
  }

  /** What the survey was that was written last. */
  get written(): ReadonlySignal<TapeDraft['basis']> {
    return this.#basis;
  }

  /** How the person stands. */
  get stand(): Stand {
    const { face, turn } = this.#draft.value;
    return { face, turn };
  }

  /** Inserts that are taped now. */
  get items(): readonly SetOutItem[] {
    const { basis, connection } = this.#draft.value;
    const { setOut } = this.#place.piece.plan;
    if (basis === 'tape') return itemsBefore(setOut, this.stand);
    const members = this.#members(connection);
    return setOut.items.filter(({ castIn }) => members.has(castIn.key));
  }

  get asks(): readonly TapeAsk[] {
    const { panel } = this.#place.piece.plan.setOut;
    return this.#draft.value.basis === 'tape' ? askEach(panel, this.items) : askConnection(panel, this.items);
  }

  /** Asks that have no answer yet. */
  get open(): readonly TapeAsk[] {
    return listOpen(this.asks, this.#draft.value.entries);
  }

  /** Looks at the other face, or turns the picture; what was typed stays with its inserts. */
  standAt(stand: Partial<Stand>): void {
    this.#keep({ ...this.#draft.value, ...stand });
  }

  askConnections(): void {
    this.#step.value = { kind: 'connections' };
  }

  /** Begins to tape all inserts that are seen, or one connection. */
  begin(connection: { readonly key: string; readonly face: 'outside' | 'inside' } | null): void {
    const now = this.#draft.value;
    this.#keep(
      connection === null
        ? { ...now, basis: 'tape', connection: null }
        : { ...now, basis: 'scaffold', connection: connection.key, face: connection.face },
    );
    this.goOn();
  }

  backToStart(): void {
    this.#step.value = { kind: 'start' };
  }

  /** To the next number that is not taped. */
  goOn(): void {
    const [next] = this.open;
    this.#step.value = next === undefined ? { kind: 'end' } : { kind: 'tape', ask: next };
  }

  /** To an insert, by its number: to what is open of it, else to what came out. */
  goTo(number: number): void {
    const key = this.items.find((item) => item.number === number)?.castIn.key;
    if (key === undefined) return;
    const [next] = listOpen(this.asks, this.#draft.value.entries, key);
    this.#step.value = next === undefined ? { kind: 'answer', item: key } : { kind: 'tape', ask: next };
  }

  /** Takes a number [mm] for what is asked; null: it cannot be taken. */
  type(typed: number | null): void {
    const step = this.#step.value;
    if (step.kind !== 'tape') return;
    const { ask } = step;
    const entry: TapeEntry = { ...ask, typed };
    this.#add(entry);
    const isDone = ask.kind !== 'between' && listOpen(this.asks, this.#draft.value.entries, ask.item).length === 0;
    if (isDone && this.answerOf(ask.item)?.isOff === true) this.#step.value = { kind: 'answer', item: ask.item };
    else this.goOn();
  }

  /** The same insert from another side, where the one that is asked for cannot be reached. */
  changeSide(): void {
    const step = this.#step.value;
    if (step.kind !== 'tape' || step.ask.kind !== 'side') return;
    const { ask } = step;
    const { panel } = this.#place.piece.plan.setOut;
    const castIn = this.items.find((one) => one.castIn.key === ask.item)?.castIn;
    if (castIn === undefined) return;
    const used = this.#draft.value.entries.flatMap((entry) =>
      entry.kind === 'side' && entry.item === ask.item && entry.slot !== ask.slot ? [entry.edge] : [],
    );
    const sides = rankTapeSides(panel, [castIn.x_mm, castIn.y_mm]).filter((edge) => !used.includes(edge));
    const edge = sides[(sides.indexOf(ask.edge) + 1) % sides.length] ?? ask.edge;
    this.#step.value = { kind: 'tape', ask: { ...ask, edge } };
  }

  /** Forgets what was typed of an insert and asks for it anew. */
  again(item: string): void {
    this.#keep({ ...this.#draft.value, entries: this.#draft.value.entries.filter((entry) => entry.item !== item) });
    const [next] = listOpen(this.asks, this.#draft.value.entries, item);
    if (next === undefined) this.goOn();
    else this.#step.value = { kind: 'tape', ask: next };
  }

  /** Asks how an insert leans: a rod is screwed in. */
  holdRod(item: string): void {
    this.#step.value = { kind: 'rod', item, typed: [] };
  }

  /** The rod's length out of the face, then how far its end stands aside to the right, then upward as the person sees it [mm]. */
  typeRod(value: number): void {
    const step = this.#step.value;
    if (step.kind !== 'rod') return;
    const [over, right] = step.typed;
    if (over === undefined || right === undefined) {
      if (over !== undefined || value > 0) this.#step.value = { ...step, typed: [...step.typed, value] };
      return;
    }
    const [x, y] = lookFrom(this.#place.piece.plan.setOut.panel, this.stand).turnToDrawn([right, value]);
    this.#add({ kind: 'tilt', item: step.item, x, y, over });
    this.goOn();
  }

  /** Takes the last number back and asks for it anew. */
  undo(): void {
    const step = this.#step.value;
    if (step.kind === 'rod') {
      this.#step.value =
        step.typed.length === 0 ? { kind: 'answer', item: step.item } : { ...step, typed: step.typed.slice(0, -1) };
      return;
    }
    const last = this.#draft.value.entries.at(-1);
    if (last === undefined) return;
    this.#keep({ ...this.#draft.value, entries: this.#draft.value.entries.slice(0, -1) });
    const ask = this.asks.find(
      (one) => last.kind === one.kind && last.item === one.item && listOpen([one], [last]).length === 0,
    );
    if (last.kind === 'tilt') this.#step.value = { kind: 'answer', item: last.item };
    else if (ask === undefined) this.goOn();
    else
      this.#step.value = {
        kind: 'tape',
        ask: last.kind === 'side' && ask.kind === 'side' ? { ...ask, edge: last.edge } : ask,
      };
  }

  /** To the end, whatever is left. */
  finish(): void {
    this.#step.value = { kind: 'end' };
  }

  /**
   * How far an insert is off by what was taped; null: not enough is, or only how a set lies in itself is known. Where a set is taped together, by the
   * set.
   */
  answerOf(key: string): TapedAnswer | null {
    const item = this.items.find(({ castIn }) => castIn.key === key);
    if (item === undefined) return null;
    const places = this.places(this.#draft.value.basis === 'tape' ? [item] : this.items);
    const at = places.kind === 'found' && places.network.freeMoves === 0 ? places.places.get(key) : undefined;
    if (at === undefined) return null;
    const { x_mm, y_mm } = item.castIn;
    const off: Point = [at[0] - x_mm, at[1] - y_mm];
    const depth = this.#draft.value.entries.findLast((entry) => entry.kind === 'depth' && entry.item === key);
    return {
      item,
      aside: lookFrom(this.#place.piece.plan.setOut.panel, this.stand).turnToView(off),
      isOff: off.some((part) => Math.abs(part) > item.tolerance),
      depth: depth?.kind === 'depth' ? depth.typed : null,
    };
  }

  /** Where inserts are by what was taped of them together. */
  places(items: readonly SetOutItem[]): TapedPlaces {
    return findTapedPlaces(
      this.#place.piece.plan.setOut.panel,
      items.map(({ castIn }) => castIn),
      this.#draft.value.entries,
    );
  }

  /** Distances that were typed, in the order in which they are adjusted. */
  numbersTaped(): readonly Extract<TapeEntry, { readonly kind: 'side' | 'between' }>[] {
    const keys = new Set(this.items.map(({ castIn }) => castIn.key));
    return this.#draft.value.entries.flatMap((entry) => {
      if ((entry.kind !== 'side' && entry.kind !== 'between') || entry.typed === null) return [];
      return keys.has(entry.item) && (entry.kind === 'side' || keys.has(entry.other)) ? [entry] : [];
    });
  }

  /** Writes all of it down as one survey; what is typed stays where that fails. */
  async write(tool: BodyOf<'surveyed'>['tool'], note: string | null): Promise<void> {
    const draft = this.#draft.value;
    const piece = this.#place.read();
    const body = makeTapedSurvey(piece.plan.setOut.panel, draft, tool, note);
    if (body === null) return;
    const isWritten = await this.#writer.write([
      ...listStartDrafts(piece.state, piece.head),
      { ...factOf(piece, null), kind: 'surveyed', body },
    ]);
    if (!isWritten) return;
    this.#basis.value = draft.basis;
    this.#keep({ ...draft, entries: [] });
    this.#step.value = { kind: 'written' };
  }

  /** The face on which most inserts are. */
  #fullerFace(drawn: 'outside' | 'inside'): 'outside' | 'inside' {
    const { items } = this.#place.piece.plan.setOut;
    const other = drawn === 'outside' ? 'inside' : 'outside';
    const count = (face: string) => items.filter(({ castIn }) => castIn.face === face).length;
    return count(other) > count(drawn) ? other : drawn;
  }

  #members(connection: string | null): ReadonlySet<string> {
    const { context, plan } = this.#place.piece;
    const found = context.index.connectionsOf(plan.setOut.panel.mark).find(({ key }) => key === connection);
    const ids = new Set(found?.inserts.map(({ insert }) => insert) ?? []);
    return new Set(plan.setOut.items.flatMap(({ castIn }) => (ids.has(castIn.id) ? [castIn.key] : [])));
  }

  #add(entry: TapeEntry): void {
    this.#keep({ ...this.#draft.value, entries: [...this.#draft.value.entries, entry] });
  }

  #keep(draft: TapeDraft): void {
    this.#draft.value = draft;
    keepTapeDraft(this.#place.storage, this.#place.piece.id, draft);
  }
}
