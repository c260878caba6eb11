import type { Signal } from '@preact/signals';
import { placeOnDocument } from '../../../../../drawing/screen/panel-sight.ts';
import type { Point } from '../../../../../engine/geometry/point.ts';
import type { ThreadName } from '../../../../../engine/hardware/threads.ts';
import type { Panel } from '../../../../../job/documents/panel.ts';
import {
  addConnection,
  addInsert,
  changePanel,
  type HolePattern,
  makePatternPlate,
  type NewConnection,
  nextConnectionMark,
} from '../../../../../job/edit/commands/edit-face.ts';
import { drawUuid } from '../../../../parts/draw-uuid.ts';
import type { PanelDesk } from '../desk/panel-desk.ts';
import type { Placing } from './placing.ts';

export type What = 'pattern' | 'detail' | 'single' | 'loose' | 'opening';

/** What a person wants to place, as far as it is chosen. Lengths mm. */
export interface Wish {
  readonly what: What;
  readonly item: string;
  readonly detail: string;
  readonly face: 'outside' | 'inside' | 'edge';
  readonly edge: number;
  readonly pattern: HolePattern;
  /** Of an opening, along the axes that one sees. */
  readonly size: Point;
}

/** An opening's size is typed along the axes that one sees; on the drawn face they may be the other ones. */
export function sizeOnFace(desk: PanelDesk, [x, y]: Point): Point {
  const { fromRead } = desk.sight.value;
  const [[x0, y0], [x1, y1]] = [fromRead([0, 0]), fromRead([x, y])];
  return [x1 - x0, y1 - y0];
}

function plateOf(desk: PanelDesk, { what, item, detail, pattern }: Wish): NewConnection['plate'] | string {
  const { catalogue, details } = desk.live.value.index.file.library;
  if (what === 'detail') {
    const isThere = details.details.some(({ id }) => id === detail);
    return isThere ? { kind: 'detail', id: detail } : 'the job has no standard detail yet: make one under Details';
  }
  if (what === 'single') return { kind: 'none' };
  const thread: ThreadName | undefined = catalogue.items.find(({ id }) => id === item)?.thread;
  if (thread === undefined) return 'the catalogue has no insert yet: add one under Catalogue';
  return { kind: 'own', fixture: makePatternPlate(pattern, thread) };
}

/** Puts it at a place of its face, as documents give it. */
export function putWish(desk: PanelDesk, wish: Wish, at: Point): string | null {
  if (desk.isHanded) return desk.handedWords;
  const { index, panel } = desk.live.value;
  const place = { face: wish.face, edge: wish.face === 'edge' ? wish.edge : null, at };
  if (wish.what === 'loose')
    return desk.commit(`Insert put into ${desk.mark}`, addInsert(desk.mark, wish.item, place, drawUuid()));
  const plate = plateOf(desk, wish);
  if (typeof plate === 'string') return plate;
  const ofDetail = index.file.library.details.details.find(({ id }) => plate.kind === 'detail' && id === plate.id);
  const item = ofDetail?.item ?? wish.item;
  const mark = nextConnectionMark(index.file);
  const why = desk.commit(
    `${mark} placed on ${desk.mark}`,
    addConnection(panel, mark, { ...place, item, plate }, drawUuid),
  );
  if (why === null) desk.takeConnection(mark);
  return why;
}

/** Makes a rectangular opening from a corner and a size, on the drawn face. */
export function putOpening(desk: PanelDesk, [x, y]: Point, [width, height]: Point): string | null {
  if (desk.isHanded) return desk.handedWords;
  const [x0, x1] = [Math.min(x, x + width), Math.max(x, x + width)];
  const [y0, y1] = [Math.min(y, y + height), Math.max(y, y + height)];
  return desk.commit(
    `Opening in ${desk.mark}`,
    changePanel(desk.mark, (panel) => {
      const ring: Panel['openings_mm'][number] = [
        [x0, y0],
        [x1, y0],
        [x1, y1],
        [x0, y1],
      ];
      panel.openings_mm = [...panel.openings_mm, ring];
    }),
  );
}

/** Waits for a click; an opening for two. @returns why it cannot be placed at all */
export function startPlacing(desk: PanelDesk, wish: Wish, placing: Signal<Placing | null>): string | null {
  if (desk.isHanded) return desk.handedWords;
  const finish = (why: string | null) => {
    if (why === null) placing.value = null;
    return why;
  };
  if (wish.what === 'opening') {
    placing.value = {
      words: 'Point at the first corner of the opening',
      corner: null,
      put: (first) => {
        placing.value = {
          words: 'Point at the opposite corner',
          corner: first,
          put: ([x, y]) => finish(putOpening(desk, first, [x - first[0], y - first[1]])),
        };
        return null;
      },
    };
    return null;
  }
  const plate = wish.what === 'loose' ? null : plateOf(desk, wish);
  if (typeof plate === 'string') return plate;
  const { panel } = desk.live.value;
  placing.value = {
    words:
      wish.face === 'edge'
        ? `Point at the place along edge ${wish.edge}`
        : `Point at its middle, on the ${wish.face} face`,
    corner: null,
    put: (drawn) => finish(putWish(desk, wish, placeOnDocument(panel, wish.face, wish.edge, drawn))),
  };
  return null;
}
