import { batch, computed, effect, type ReadonlySignal, type Signal, signal } from '@preact/signals';
import { findMisplaced } from '../../../../../assess/live/find-misplaced.ts';
import { answerLive, type LiveAnswer, type LivePanel, openLive } from '../../../../../assess/live/live-connection.ts';
import {
  laySceneItems,
  layScenePlate,
  orderStops,
  type SceneItem,
  type ScenePlate,
  type SceneStop,
} from '../../../../../drawing/screen/panel-scene.ts';
import { lookAt, type PanelSight, placeDrawn, type SightKind } from '../../../../../drawing/screen/panel-sight.ts';
import type { SnapGuide } from '../../../../../drawing/screen/snap.ts';
import type { Point } from '../../../../../engine/geometry/point.ts';
import type { CastIn } from '../../../../../job/documents/cast-in.ts';
import type { Connection } from '../../../../../job/documents/connection.ts';
import type { Recipe } from '../../../../../job/edit/edit-job.ts';
import { type MovedParts, moveInsert, moveWhole, putMoved } from '../../../../../job/edit/moved-parts.ts';
import { indexJob, type JobIndex } from '../../../../../job/job-index.ts';
import type { JobSession } from '../../../state/session.ts';
import { type Held, NOTHING, type Refusal, type Selection } from './held.ts';

const writePlace = ([x, y]: Point) => `translate(${x} ${y})`;

/**
 * A panel on the table: how it is looked at, what is selected, what is in the hand. While something is moved only the signals of what moves change,
 * so that nothing else is drawn or computed anew.
 */
export class PanelDesk {
  readonly mark: string;
  readonly session: JobSession;
  readonly sightKind: Signal<SightKind> = signal('drawn');
  readonly selection: Signal<Selection> = signal(NOTHING);
  readonly held: Signal<Held | null> = signal(null);
  readonly refusal: Signal<Refusal | null> = signal(null);
  /** Numbers of the walk round the form by item; null until the worker has set the panel out. */
  readonly numbers: Signal<ReadonlyMap<string, number> | null> = signal(null);
  /** Of what was done last, for readers aloud. */
  readonly spoken: Signal<string> = signal('');
  readonly index: ReadonlySignal<JobIndex>;
  readonly live: ReadonlySignal<LivePanel>;
  readonly sight: ReadonlySignal<PanelSight>;
  readonly items: ReadonlySignal<readonly SceneItem[]>;
  readonly plates: ReadonlySignal<readonly ScenePlate[]>;
  readonly stops: ReadonlySignal<readonly SceneStop[]>;
  /** The selected connection as the job has it; null: none. */
  readonly connection: ReadonlySignal<Connection | null>;
  /** Its answer where it is held, or where it stands; null: none is selected, or it cannot stand there. */
  readonly answer: ReadonlySignal<LiveAnswer | null>;
  readonly #restAnswer: ReadonlySignal<LiveAnswer | null>;
  readonly #places = new Map<string, Signal<string>>();
  readonly #plates = new Map<string, Signal<ScenePlate>>();
  readonly #stop: () => void;

  /** @throws Error at the first reading when the job has no such panel */
  constructor(session: JobSession, mark: string) {
    this.session = session;
    this.mark = mark;
    this.index = computed(() => indexJob(session.file));
    this.live = computed(() => openLive(this.index.value, mark));
    this.sight = computed(() => lookAt(this.live.value.panel, this.sightKind.value));
    this.items = computed(() => laySceneItems(this.index.value, this.live.value.panel, this.sight.value));
    this.plates = computed(() => {
      const { index, panel } = this.live.value;
      return index.connectionsOf(mark).flatMap((one) => layScenePlate(index, panel, this.sight.value, one) ?? []);
    });
    this.stops = computed(() => orderStops(this.live.value.panel, this.items.value));
    this.connection = computed(() => this.findConnection(this.selection.value.connection));
    this.#restAnswer = computed(() => {
      const connection = this.connection.value;
      return connection === null ? null : answerLive(this.live.value, connection, []);
    });
    this.answer = computed(() => {
      const held = this.held.value;
      return held === null ? this.#restAnswer.value : held.answer;
    });
    this.#stop = effect(() => {
      this.#rest();
      // Somebody else's edit, or an undo, under the hand: what was held there is no longer there.
      this.held.value = null;
    });
  }

  /** A handed partner follows its source and is not edited itself. */
  get isHanded(): boolean {
    return this.live.value.panel.handedOf !== null;
  }

  get handedWords(): string {
    const { handedOf } = this.live.value.panel;
    return `${this.mark} is the handed partner of ${handedOf}, its mirror image: edit ${handedOf}, and ${this.mark} follows`;
  }

  close(): void {
    this.#stop();
  }

  findConnection(mark: string | null): Connection | null {
    if (mark === null) return null;
    return this.index.value.connectionsOf(this.mark).find((one) => one.mark === mark) ?? null;
  }

  /** Where an item is drawn: a transform that follows the hand. */
  placeOf(id: string): Signal<string> {
    const known = this.#places.get(id) ?? signal('');
    this.#places.set(id, known);
    return known;
  }

  /** A connection's plate as it is drawn; null where there is none. */
  plateOf(mark: string): Signal<ScenePlate> | null {
    return this.#plates.get(mark) ?? null;
  }

  /** The selected items as the job has them, the one in the hand first. */
  get castIns(): readonly CastIn[] {
    const { index } = this.live.value;
    return this.selection.value.ids.flatMap((id) => index.castIn(this.mark, id) ?? []);
  }

  /** The same where they are held at this moment. */
  get shownCastIns(): readonly CastIn[] {
    const moved = this.held.value?.parts.castIns ?? [];
    return this.castIns.map((castIn) => moved.find(({ id }) => id === castIn.id) ?? castIn);
  }

  select(selection: Selection): void {
    batch(() => {
      this.selection.value = selection;
      this.refusal.value = null;
    });
  }

  /** Selects a connection with the insert that was taken hold of, or an insert singly. */
  take(id: string, singly: boolean): void {
    const item = this.items.value.find(({ castIn }) => castIn.id === id);
    if (item === undefined) return;
    const connection = this.findConnection(item.connection);
    if (connection === null || singly) {
      this.select({ ids: [id], connection: item.connection, isWhole: false });
      return;
    }
    const others = connection.inserts.map(({ insert }) => insert).filter((insert) => insert !== id);
    this.select({ ids: [id, ...others], connection: connection.mark, isWhole: true });
  }

  takeConnection(mark: string): void {
    const connection = this.findConnection(mark);
    const first = connection?.inserts[0]?.insert;
    if (first !== undefined) this.take(first, false);
  }

  /** Adds a single item to what is selected, or takes it off. */
  takeAlso(id: string): void {
    const { ids } = this.selection.value;
    const next = ids.includes(id) ? ids.filter((one) => one !== id) : [...ids, id];
    const marks = new Set(
      next.map((one) => this.items.value.find(({ castIn }) => castIn.id === one)?.connection ?? null),
    );
    const [only] = marks;
    this.select({ ids: next, connection: marks.size === 1 ? (only ?? null) : null, isWhole: false });
  }

  /** What is selected, moved by a step of its face's own coordinates. Null: nothing that can be moved together. */
  partsMovedBy(by: Point): MovedParts | null {
    const { isWhole } = this.selection.value;
    const connection = this.connection.value;
    const { castIns } = this;
    const [first] = castIns;
    if (first === undefined) return null;
    if (isWhole && connection !== null) return moveWhole(castIns, connection, by);
    if (castIns.length > 1) return null;
    return moveInsert(this.live.value.panel, first, connection, by);
  }

  /** Holds it there: what it carries there is worked out at once. */
  hold(parts: MovedParts, guides: readonly SnapGuide[]): void {
    const live = this.live.peek();
    const connection = parts.connection ?? this.connection.peek();
    const misplaced = findMisplaced(live, parts.castIns, connection);
    const answer = misplaced !== null || connection === null ? null : answerLive(live, connection, parts.castIns);
    batch(() => {
      this.refusal.value = null;
      this.held.value = { parts, misplaced, guides, answer };
      this.#draw(parts);
    });
  }

  /** Whether it is held in that very place already: a rest under a moving hand asks for nothing anew. */
  holdsAt({ castIns }: MovedParts): boolean {
    const held = this.held.peek()?.parts.castIns ?? [];
    return (
      castIns.length === held.length &&
      castIns.every(({ x_mm, y_mm }, k) => x_mm === held[k]?.x_mm && y_mm === held[k]?.y_mm)
    );
  }

  /** Lets go: it stays, or goes back where it cannot stay. */
  drop(at: Point | null): void {
    const held = this.held.peek();
    if (held === null) return;
    if (held.misplaced === null) this.#put(held.parts, at);
    else this.refuse(`${held.misplaced}. It went back.`, at);
    this.giveUp();
  }

  /** Puts everything back where the job has it. */
  giveUp(): void {
    batch(() => {
      this.held.value = null;
      this.#rest();
    });
  }

  /** Moves what is selected at once. @returns null when it stands, else why not */
  moveBy(by: Point): string | null {
    const parts = this.partsMovedBy(by);
    if (parts === null) return 'several single inserts are selected: move them one by one';
    return this.#put(parts, null);
  }

  /** Makes an edit of this panel. @returns null when it stands, else why not */
  commit(label: string, recipe: Recipe): string | null {
    const why = this.session.commit(label, recipe);
    if (why === null) {
      this.spoken.value = label;
      this.#forgetLost();
    }
    return why;
  }

  refuse(text: string, at: Point | null): void {
    this.refusal.value = { text, at };
    this.spoken.value = text;
  }

  /** Moves on to the next stop of the walk. @returns false at its end */
  step(by: 1 | -1): boolean {
    const stops = this.stops.value;
    const { ids } = this.selection.value;
    const now = stops.findIndex((stop) => ids[0] !== undefined && stop.ids.includes(ids[0]));
    const next = stops[now < 0 ? (by > 0 ? 0 : stops.length - 1) : now + by];
    const first = next?.ids[0];
    if (next === undefined || first === undefined) return false;
    if (next.connection === null) this.take(first, false);
    else this.takeConnection(next.connection);
    return true;
  }

  #put(parts: MovedParts, at: Point | null): string | null {
    const { isWhole, connection } = this.selection.peek();
    const [first] = parts.castIns;
    const what = isWhole && connection !== null ? connection : `Insert ${first?.id ?? ''} of ${this.mark}`;
    const why = this.commit(`${what} moved`, putMoved(parts));
    if (why !== null) this.refuse(why, at);
    return why;
  }

  /** What an undo took away is no longer selected. */
  #forgetLost(): void {
    const { ids } = this.selection.peek();
    const there = ids.filter((id) => this.index.value.castIn(this.mark, id) !== undefined);
    if (there.length < ids.length) this.select(NOTHING);
  }

  /** Draws everything where the job has it. */
  #rest(): void {
    for (const { castIn, at } of this.items.value) this.placeOf(castIn.id).value = writePlace(at);
    for (const plate of this.plates.value) this.#setPlate(plate);
  }

  #setPlate(plate: ScenePlate): void {
    const { mark } = plate.connection;
    const known = this.#plates.get(mark);
    if (known === undefined) this.#plates.set(mark, signal(plate));
    else known.value = plate;
  }

  #draw({ castIns, connection }: MovedParts): void {
    const { index, panel } = this.live.peek();
    const sight = this.sight.peek();
    for (const castIn of castIns) this.placeOf(castIn.id).value = writePlace(sight.toView(placeDrawn(panel, castIn)));
    if (connection === null) return;
    const plate = layScenePlate(index, panel, sight, connection);
    if (plate !== null) this.#setPlate(plate);
  }
}
