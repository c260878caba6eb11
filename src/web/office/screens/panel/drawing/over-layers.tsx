import { type ReadonlySignal, useComputed } from '@preact/signals';
import type { Polygon } from '../../../../../engine/geometry/point.ts';
import { frameOf } from '../../../../../job/face-frame.ts';
import { writeQuantity } from '../../../../parts/units.ts';
import type { CanvasView } from '../desk/canvas-view.ts';
import type { ShownDimension } from '../desk/dimensions.ts';
import type { PanelDesk } from '../desk/panel-desk.ts';
import { showsConcrete } from '../desk/settings.ts';
import styles from './drawing.module.css';
import { writeRings } from './symbol-shape.tsx';

/** The concrete that counts for the selected connection: the cone in tension, the body toward the governing edge in shear. */
export function ConcreteLayer({ desk }: { readonly desk: PanelDesk }) {
  const paths = useComputed(() => {
    const connection = desk.connection.value;
    const areas = desk.answer.value?.areas ?? null;
    if (!showsConcrete.value || connection === null || areas === null || connection.face === 'edge') return null;
    const { toFace } = frameOf(desk.live.value.panel, connection);
    const { toView } = desk.sight.value;
    // A frame turns positions of the documents into those of the face, and is its own inverse.
    const write = (rings: readonly Polygon[]) => writeRings(rings.map((ring) => ring.map((at) => toView(toFace(at)))));
    return {
      cone: write(areas.cone.flatMap(({ rings }) => rings)),
      shear: write(areas.shear?.rings ?? []),
    };
  });
  const cone = useComputed(() => paths.value?.cone ?? '');
  const shear = useComputed(() => paths.value?.shear ?? '');
  return (
    <g class={styles.counted}>
      <path class={styles.cone} d={cone} fill-rule="evenodd" />
      <path class={styles.shear} d={shear} />
    </g>
  );
}

/** Lines that the held thing rests on. */
export function GuidesLayer({ desk }: { readonly desk: PanelDesk }) {
  const d = useComputed(() => {
    const { region } = desk.live.value;
    const { toView } = desk.sight.value;
    return (desk.held.value?.guides ?? [])
      .map(({ axis, at }) => {
        const ends =
          axis === 'x'
            ? ([
                [at, region.minY],
                [at, region.maxY],
              ] as const)
            : ([
                [region.minX, at],
                [region.maxX, at],
              ] as const);
        const [from, to] = [toView(ends[0]), toView(ends[1])];
        return `M${from[0]} ${from[1]}L${to[0]} ${to[1]}`;
      })
      .join('');
  });
  return <path class={styles.guides} d={d} />;
}

/** A line shorter than this has no room for its length [px]: it stands beyond its end. */
const SHORT = 64;
/** From the end of a line to the length beyond it [px]. */
const BEYOND = 7;

function Dimension({ from, to, length, kind, scale }: ShownDimension & { readonly scale: number }) {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const isUp = Math.abs(dx) < Math.abs(dy);
  const isShort = Math.hypot(dx, dy) * scale < SHORT;
  // A datum is where one measures from: its end is at the insert, and beyond that is room.
  const at = isShort ? to : [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
  const anchor = isUp ? (isShort ? 'middle' : 'start') : !isShort ? 'middle' : dx > 0 ? 'start' : 'end';
  const x = isUp ? (isShort ? 0 : 5) : isShort ? Math.sign(dx) * BEYOND : 0;
  const y = isUp ? (isShort ? (dy > 0 ? -BEYOND : BEYOND + 10) : 4) : isShort ? 4 : -5;
  return (
    <g class={styles.dimension}>
      <path class={kind === 'neighbour' ? styles.neighbour : ''} d={`M${from[0]} ${from[1]}L${to[0]} ${to[1]}`} />
      <g transform={`translate(${at[0]} ${at[1]})`}>
        <g class={styles.upright}>
          <text class={styles.length} x={x} y={y} text-anchor={anchor}>
            {writeQuantity('length', length)}
          </text>
        </g>
      </g>
    </g>
  );
}

/** What is measured of the selection. */
export function DimensionsLayer({
  dimensions,
  view,
}: {
  readonly dimensions: ReadonlySignal<readonly ShownDimension[]>;
  readonly view: CanvasView;
}) {
  const { scale } = view.camera.value;
  return (
    <g>
      {dimensions.value.map((one, k) => (
        <Dimension key={k} {...one} scale={scale} />
      ))}
    </g>
  );
}
