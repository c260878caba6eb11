import { type Signal, signal } from '@preact/signals';
import { stepOnFace } from '../../../../../drawing/screen/panel-sight.ts';
import { findSnap, makeSnapField, type SnapField } from '../../../../../drawing/screen/snap.ts';
import type { Point } from '../../../../../engine/geometry/point.ts';
import { type Camera, fromScreen, panCamera, toScreen, zoomCamera } from '../desk/camera.ts';
import type { PanelDesk } from '../desk/panel-desk.ts';
import { gridOf, isSnapping, takesSingly } from '../desk/settings.ts';
import type { Placing } from '../place/placing.ts';

/** What the pointers are doing. `press`: down on something, not moved yet. */
type Act =
  | { readonly kind: 'none' }
  | { readonly kind: 'press'; readonly at: Point; readonly reach: number; readonly grabs: boolean }
  | { readonly kind: 'drag'; readonly from: Point; readonly field: SnapField }
  | { readonly kind: 'pan'; readonly last: Point }
  | { readonly kind: 'pinch'; readonly middle: Point; readonly apart: number };

/** How near to an insert takes hold of it, and how far a press moves before it is a drag [px]. */
const REACH = { mouse: 15, touch: 26 };
const STARTS = { mouse: 3, touch: 8 };
/** How near something pulls [px]. */
const PULLS = 7;
const WHEEL_STEP = 0.0016;

const minus = ([ax, ay]: Point, [bx, by]: Point): Point => [ax - bx, ay - by];

/**
 * What hands do on the drawing: take, move, pan, zoom. A move of the pointer is only noted; what follows of it is worked out once a frame, from the
 * last place.
 */
export class CanvasHand {
  readonly camera: Signal<Camera>;
  /** Where the pointer is while something is being placed [mm of the view]; null: elsewhere. */
  readonly hover: Signal<Point | null> = signal(null);
  readonly #desk: PanelDesk;
  readonly #placing: Signal<Placing | null>;
  readonly #pointers = new Map<number, Point>();
  #act: Act = { kind: 'none' };
  #latest: Point = [0, 0];
  #frame: number | null = null;
  #isSpaceDown = false;
  #box: { readonly left: number; readonly top: number } = { left: 0, top: 0 };

  constructor(desk: PanelDesk, placing: Signal<Placing | null>, camera: Signal<Camera>) {
    this.#desk = desk;
    this.#placing = placing;
    this.camera = camera;
  }

  readonly down = (event: PointerEvent): void => {
    const svg = event.currentTarget;
    if (!(svg instanceof SVGSVGElement)) return;
    this.enter(event);
    svg.setPointerCapture(event.pointerId);
    svg.focus({ preventScroll: true });
    const at = this.#placeOf(event);
    this.#pointers.set(event.pointerId, at);
    this.#latest = at;
    if (this.#pointers.size === 2) {
      this.cancel();
      this.#act = this.#pinch();
      return;
    }
    if (this.#pointers.size > 2) return;
    if (this.#isSpaceDown || event.button === 1) {
      this.#act = { kind: 'pan', last: at };
      return;
    }
    if (event.button !== 0) return;
    if (this.#placing.peek() !== null) {
      this.#act = { kind: 'press', at, reach: STARTS.touch, grabs: false };
      return;
    }
    this.#press(event, at);
  };

  readonly move = (event: PointerEvent): void => {
    const at = this.#placeOf(event);
    if (this.#placing.peek() !== null && this.#act.kind === 'none') this.#note(at);
    if (!this.#pointers.has(event.pointerId)) return;
    this.#pointers.set(event.pointerId, at);
    this.#note(at);
  };

  readonly up = (event: PointerEvent): void => {
    const at = this.#placeOf(event);
    const isLast = this.#pointers.delete(event.pointerId);
    if (!isLast) return;
    const act = this.#act;
    if (act.kind === 'drag') {
      // The last place counts, also where no frame came since.
      this.#latest = at;
      this.#runFrame();
      this.#desk.drop(at);
    } else if (act.kind === 'press') this.#click(at);
    const [left] = this.#pointers.values();
    this.#act = left === undefined || act.kind !== 'pinch' ? { kind: 'none' } : { kind: 'pan', last: left };
  };

  readonly lost = (event: PointerEvent): void => {
    this.#pointers.delete(event.pointerId);
    this.cancel();
  };

  readonly leave = (): void => {
    this.hover.value = null;
  };

  readonly wheel = (event: WheelEvent): void => {
    event.preventDefault();
    this.enter(event);
    const step = event.deltaMode === WheelEvent.DOM_DELTA_LINE ? 16 : 1;
    const factor = Math.exp(-event.deltaY * step * WHEEL_STEP * (event.ctrlKey ? 4 : 1));
    this.camera.value = zoomCamera(this.camera.peek(), factor, this.#placeOf(event));
  };

  /** Space down: the next drag pans. */
  holdSpace(isDown: boolean): void {
    this.#isSpaceDown = isDown;
  }

  /** Gives a drag up; everything goes back. @returns whether there was one */
  cancel(): boolean {
    const was = this.#act.kind === 'drag';
    this.#act = { kind: 'none' };
    if (this.#frame !== null) cancelAnimationFrame(this.#frame);
    this.#frame = null;
    if (was) this.#desk.giveUp();
    return was;
  }

  /** Measured when hands come to the drawing, not at each move: nothing is laid out for it while something is dragged. */
  readonly enter = (event: MouseEvent): void => {
    if (event.currentTarget instanceof Element) this.#box = event.currentTarget.getBoundingClientRect();
  };

  /** Relative to the drawing's own corner. */
  #placeOf(event: MouseEvent): Point {
    return [event.clientX - this.#box.left, event.clientY - this.#box.top];
  }

  #press(event: PointerEvent, at: Point): void {
    const kind = event.pointerType === 'touch' ? 'touch' : 'mouse';
    const singly = takesSingly.peek() !== event.altKey;
    const found = this.#findInsert(at, REACH[kind]);
    const plate = event.target instanceof Element ? event.target.closest('[data-plate]') : null;
    const mark = plate?.getAttribute('data-plate') ?? null;
    if (found !== null && event.shiftKey) this.#desk.takeAlso(found);
    else if (found !== null) this.#desk.take(found, singly);
    else if (mark !== null) this.#desk.takeConnection(mark);
    else {
      this.#act = { kind: 'press', at, reach: STARTS[kind], grabs: false };
      return;
    }
    this.#act = { kind: 'press', at, reach: STARTS[kind], grabs: !event.shiftKey };
  }

  #findInsert(at: Point, reach: number): string | null {
    const camera = this.camera.peek();
    let found: string | null = null;
    let least = reach;
    for (const { castIn, at: place } of this.#desk.items.peek()) {
      const [x, y] = toScreen(camera, place);
      const off = Math.hypot(x - at[0], y - at[1]);
      if (off > least) continue;
      least = off;
      found = castIn.id;
    }
    return found;
  }

  /** A press that never moved. */
  #click(at: Point): void {
    const placing = this.#placing.peek();
    if (placing !== null) {
      const why = placing.put(this.#restOnGrid(fromScreen(this.camera.peek(), at)));
      if (why !== null) this.#desk.refuse(why, at);
      return;
    }
    if (this.#act.kind === 'press' && !this.#act.grabs && this.#findInsert(at, REACH.mouse) === null) {
      this.#desk.select({ ids: [], connection: null, isWhole: false });
    }
  }

  /** A place of the view on the drawn face, on the grid where things rest on it. */
  #restOnGrid(view: Point): Point {
    const { toDrawn, toRead, fromRead } = this.#desk.sight.peek();
    const [x, y] = toRead(toDrawn(view));
    const grid = isSnapping.peek() ? gridOf() : 1;
    return fromRead([Math.round(x / grid) * grid, Math.round(y / grid) * grid]);
  }

  #note(at: Point): void {
    this.#latest = at;
    this.#frame ??= requestAnimationFrame(() => {
      this.#frame = null;
      this.#runFrame();
    });
  }

  #runFrame(): void {
    const at = this.#latest;
    const act = this.#act;
    switch (act.kind) {
      case 'none':
        if (this.#placing.peek() !== null) this.hover.value = fromScreen(this.camera.peek(), at);
        return;
      case 'press':
        if (Math.hypot(at[0] - act.at[0], at[1] - act.at[1]) >= act.reach) this.#start(act.at, act.grabs);
        return;
      case 'drag':
        this.#dragTo(at, act.from, act.field);
        return;
      case 'pan':
        this.camera.value = panCamera(this.camera.peek(), minus(at, act.last));
        this.#act = { kind: 'pan', last: at };
        return;
      case 'pinch':
        this.#spread(act.middle, act.apart);
    }
  }

  #start(at: Point, grabs: boolean): void {
    const desk = this.#desk;
    const castIns = desk.castIns;
    const [first] = castIns;
    if (!grabs || first === undefined) {
      this.#act = { kind: 'pan', last: at };
      this.#runFrame();
      return;
    }
    if (desk.isHanded) {
      desk.refuse(desk.handedWords, at);
      this.#act = { kind: 'none' };
      return;
    }
    const { index, panel, region } = desk.live.peek();
    const moving = new Set(castIns.map(({ id }) => id));
    const others = index
      .castInsOf(panel.mark)
      .filter(({ id, face, edge }) => !moving.has(id) && face === first.face && edge === first.edge && face !== 'edge')
      .map(({ x_mm, y_mm }): Point => [x_mm, y_mm]);
    const snaps = isSnapping.peek();
    const reach = snaps ? PULLS / this.camera.peek().scale : -1;
    const field = makeSnapField(others, region, snaps ? gridOf() : 0, reach);
    this.#act = { kind: 'drag', from: at, field };
    this.#runFrame();
  }

  #dragTo(at: Point, from: Point, field: SnapField): void {
    const desk = this.#desk;
    const camera = this.camera.peek();
    const { toDrawn, fromRead } = desk.sight.peek();
    const { panel } = desk.live.peek();
    const castIns = desk.castIns;
    const [first] = castIns;
    if (first === undefined) return;
    const moved = minus(toDrawn(fromScreen(camera, at)), toDrawn(fromScreen(camera, from)));
    const step = stepOnFace(panel, first, moved);
    const places = castIns.map(({ x_mm, y_mm }): Point => [x_mm + step[0], y_mm + step[1]]);
    const isEdge = first.face === 'edge';
    const used: SnapField = isEdge ? { ...field, reach: -1 } : field;
    const snap = findSnap(used, places, isEdge ? [0, first.y_mm] : fromRead([0, 0]));
    const parts = desk.partsMovedBy([step[0] + snap.by[0], step[1] + snap.by[1]]);
    if (parts !== null && !desk.holdsAt(parts)) desk.hold(parts, snap.guides);
  }

  #pinch(): Act {
    const [a, b] = [...this.#pointers.values()];
    if (a === undefined || b === undefined) return { kind: 'none' };
    return {
      kind: 'pinch',
      middle: [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2],
      apart: Math.hypot(a[0] - b[0], a[1] - b[1]),
    };
  }

  #spread(middle: Point, apart: number): void {
    const now = this.#pinch();
    if (now.kind !== 'pinch') return;
    const moved = panCamera(this.camera.peek(), minus(now.middle, middle));
    this.camera.value = zoomCamera(moved, now.apart / Math.max(1, apart), now.middle);
    this.#act = now;
  }
}
