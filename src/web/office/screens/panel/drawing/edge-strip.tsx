import { useComputed } from '@preact/signals';
import { useRef } from 'preact/hooks';
import type { Point } from '../../../../../engine/geometry/point.ts';
import type { CastIn } from '../../../../../job/documents/cast-in.ts';
import { frameOf, panelSide, placeOnFace } from '../../../../../job/face-frame.ts';
import type { PanelDesk } from '../desk/panel-desk.ts';
import { gridOf, isSnapping, showsConcrete } from '../desk/settings.ts';
import styles from './drawing.module.css';
import { writeRing, writeRings } from './symbol-shape.tsx';

/** Room around the strip [share of its length]. */
const ROOM = 0.03;

/** The edge that the selection is on, seen from its front; nothing for the large faces. */
export function EdgeStrip({ desk }: { readonly desk: PanelDesk }) {
  const edge = useComputed(() => {
    const [first] = desk.castIns;
    return first?.face === 'edge' ? first.edge : null;
  });
  return edge.value === null ? null : <Strip desk={desk} edge={edge.value} />;
}

function Strip({ desk, edge }: { readonly desk: PanelDesk; readonly edge: number }) {
  const svg = useRef<SVGSVGElement>(null);
  const { panel, index } = desk.live.value;
  const { length } = panelSide(panel, edge);
  const frame = frameOf(panel, { face: 'edge', edge });
  const thickness = panel.thickness_mm;
  const room = Math.max(ROOM * length, thickness / 3);
  const radius = Math.min(thickness / 7, length / 60);
  const flip = ([x, y]: Point): Point => [x, thickness - y];
  const toStrip = (at: Point) => flip(frame.toFace(at));
  const here = ({ face, edge: own }: { readonly face: string; readonly edge: number | null }) =>
    face === 'edge' && own === edge;
  const items = index.castInsOf(desk.mark).filter(here);
  const plates = useComputed(() => {
    const moved = desk.held.value?.parts.connection ?? null;
    return index
      .connectionsOf(desk.mark)
      .filter(here)
      .map((one) => (one.mark === moved?.mark ? moved : one))
      .flatMap((one) => {
        const fixture = index.fixtureOf(one);
        return fixture === null
          ? []
          : [writeRing(fixture.outline_mm.map((at) => flip(placeOnFace(frame, one.origin_mm, one.turn_deg, at))))];
      })
      .join('');
  });
  const counted = useComputed(() => {
    const rings = desk.answer.value?.areas?.cone.flatMap((one) => one.rings) ?? [];
    return showsConcrete.value ? writeRings(rings.map((ring) => ring.map(flip))) : '';
  });
  const drag = useStripDrag(desk, svg, frame.toFace);
  return (
    <figure class={styles.strip}>
      <figcaption>
        Edge {edge}, seen from its front, the {panel.drawnFace} face up
      </figcaption>
      <svg
        ref={svg}
        class={styles.stripDrawing}
        viewBox={`${-room} ${-room} ${length + 2 * room} ${thickness + 2 * room}`}
        role="img"
        aria-label={`Edge ${edge} of panel ${desk.mark} with ${items.length} inserts`}
        {...drag}
      >
        <path class={styles.concrete} d={`M0 0H${length}V${thickness}H0Z`} />
        <path class={styles.cone} d={counted} fill-rule="evenodd" />
        <path class={styles.steel} d={plates} />
        {items.map((castIn) => (
          <StripItem key={castIn.key} desk={desk} castIn={castIn} radius={radius} toStrip={toStrip} />
        ))}
      </svg>
    </figure>
  );
}

function StripItem({
  desk,
  castIn,
  radius,
  toStrip,
}: {
  readonly desk: PanelDesk;
  readonly castIn: CastIn;
  readonly radius: number;
  readonly toStrip: (at: Point) => Point;
}) {
  const place = useComputed(() => {
    const now = desk.held.value?.parts.castIns.find(({ id }) => id === castIn.id) ?? castIn;
    const [x, y] = toStrip([now.x_mm, now.y_mm]);
    return `translate(${x} ${y})`;
  });
  const isSelected = useComputed(() => desk.selection.value.ids.includes(castIn.id)).value;
  return (
    <g transform={place} data-strip={castIn.id} class={styles.item}>
      {isSelected && <circle class={styles.halo} r={radius * 1.6} />}
      <circle class={styles.open} r={radius} />
      <text class={styles.stripNumber} x={radius * 1.5} y={-radius * 1.1} font-size={radius * 2.2}>
        {castIn.id}
      </text>
    </g>
  );
}

/** Drags on the strip: along the edge and across its thickness. Worked out once a frame. */
function useStripDrag(desk: PanelDesk, svg: { readonly current: SVGSVGElement | null }, toFace: (at: Point) => Point) {
  const state = useRef<{ from: Point | null; latest: Point; frame: number | null }>({
    from: null,
    latest: [0, 0],
    frame: null,
  });
  const placeOf = (event: PointerEvent): Point => {
    const matrix = svg.current?.getScreenCTM()?.inverse();
    const { x, y } = new DOMPoint(event.clientX, event.clientY).matrixTransform(matrix ?? undefined);
    return [x, -y];
  };
  const run = () => {
    const { from, latest } = state.current;
    const [first] = desk.castIns;
    if (from === null || first === undefined) return;
    // A frame shifts and mirrors: of two places it turns the difference.
    const [[x0, y0], [x1, y1]] = [toFace(from), toFace(latest)];
    const grid = isSnapping.peek() ? gridOf() : 0;
    const rest = (start: number, by: number) => (grid > 0 ? Math.round((start + by) / grid) * grid - start : by);
    const parts = desk.partsMovedBy([rest(first.x_mm, x1 - x0), rest(first.y_mm, y1 - y0)]);
    if (parts !== null) desk.hold(parts, []);
  };
  return {
    onPointerDown: (event: PointerEvent) => {
      const node = event.target instanceof Element ? event.target.closest('[data-strip]') : null;
      const id = node?.getAttribute('data-strip') ?? null;
      if (id === null || event.button !== 0) return;
      desk.take(id, event.altKey);
      if (desk.isHanded) {
        desk.refuse(desk.handedWords, null);
        return;
      }
      svg.current?.setPointerCapture(event.pointerId);
      state.current = { from: placeOf(event), latest: placeOf(event), frame: null };
    },
    onPointerMove: (event: PointerEvent) => {
      if (state.current.from === null) return;
      state.current.latest = placeOf(event);
      state.current.frame ??= requestAnimationFrame(() => {
        state.current.frame = null;
        run();
      });
    },
    onPointerUp: () => {
      if (state.current.from === null) return;
      if (state.current.frame !== null) cancelAnimationFrame(state.current.frame);
      run();
      state.current = { from: null, latest: [0, 0], frame: null };
      desk.drop(null);
    },
    onPointerCancel: () => {
      state.current = { from: null, latest: [0, 0], frame: null };
      desk.giveUp();
    },
  };
}
