import { stepOnFace } from '../../../../../drawing/screen/panel-sight.ts';
import type { Point } from '../../../../../engine/geometry/point.ts';
import { units } from '../../../../parts/units.ts';
import { NOTHING } from '../desk/held.ts';
import type { PanelDesk } from '../desk/panel-desk.ts';
import { gridOf } from '../desk/settings.ts';
import type { CanvasHand } from './canvas-hand.ts';

/** Directions of the view. */
const ARROWS: Readonly<Record<string, Point>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowDown: [0, -1],
  ArrowUp: [0, 1],
};

/** A long step with Shift, a short one with Alt [mm]; 2 in and 1/16 in. */
const LONG = { metric: 50, US: 50.8 };
const SHORT = { metric: 1, US: 25.4 / 16 };

function lengthOf(event: KeyboardEvent): number {
  if (event.shiftKey) return LONG[units.value];
  return event.altKey ? SHORT[units.value] : gridOf();
}

/** What is done on the drawing by keyboard; all else goes on to the screen. */
export class CanvasKeys {
  readonly #desk: PanelDesk;
  readonly #hand: CanvasHand;
  readonly #acts: {
    readonly open: (mark: string) => void;
    readonly remove: () => void;
    readonly stopPlacing: () => boolean;
  };

  constructor(
    desk: PanelDesk,
    hand: CanvasHand,
    acts: { readonly open: (mark: string) => void; readonly remove: () => void; readonly stopPlacing: () => boolean },
  ) {
    this.#desk = desk;
    this.#hand = hand;
    this.#acts = acts;
  }

  readonly down = (event: KeyboardEvent): void => {
    if (event.ctrlKey || event.metaKey || !this.#handle(event)) return;
    event.preventDefault();
  };

  readonly up = (event: KeyboardEvent): void => {
    if (event.key === ' ') this.#hand.holdSpace(false);
  };

  /** @returns whether the key was meant for the drawing */
  #handle(event: KeyboardEvent): boolean {
    const desk = this.#desk;
    const { ids, connection } = desk.selection.peek();
    const arrow = ARROWS[event.key];
    if (arrow !== undefined) return this.#move(arrow, lengthOf(event));
    switch (event.key) {
      case ' ':
        this.#hand.holdSpace(true);
        return true;
      case 'Escape':
        return this.#escape();
      case 'Tab':
        // At the end of the walk, and with nothing in the hand, the focus goes on as anywhere.
        return ids.length > 0 && desk.step(event.shiftKey ? -1 : 1);
      case 'Enter':
        if (connection === null) return false;
        this.#acts.open(connection);
        return true;
      case 'Delete':
      case 'Backspace':
        if (ids.length === 0) return false;
        this.#acts.remove();
        return true;
      default:
        return false;
    }
  }

  #escape(): boolean {
    if (this.#hand.cancel() || this.#acts.stopPlacing()) return true;
    const isTaken = this.#desk.selection.peek().ids.length > 0;
    this.#desk.select(NOTHING);
    return isTaken;
  }

  #move([ux, uy]: Point, length: number): boolean {
    const desk = this.#desk;
    const [first] = desk.castIns;
    if (first === undefined) return desk.step(1);
    if (desk.isHanded) {
      desk.refuse(desk.handedWords, null);
      return true;
    }
    const { toDrawn } = desk.sight.peek();
    const [x, y] = toDrawn([ux * length, uy * length]);
    const [zeroX, zeroY] = toDrawn([0, 0]);
    const by = stepOnFace(desk.live.peek().panel, first, [x - zeroX, y - zeroY]);
    if (Math.hypot(...by) > length / 1000) {
      const why = desk.moveBy(by);
      if (why !== null) desk.refuse(why, null);
    }
    return true;
  }
}
