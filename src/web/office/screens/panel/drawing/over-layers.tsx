import { useComputed } from '@preact/signals';
import type { Polygon } from '../../../../../engine/geometry/point.ts';
import { frameOf } from '../../../../../job/face-frame.ts';
import { writeQuantity } from '../../../../parts/units.ts';
import { listDimensions, type ShownDimension } from '../desk/dimensions.ts';
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

function Dimension({ from, to, length, kind }: ShownDimension) {
  const [x, y] = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
  const isUp = Math.abs(to[0] - from[0]) < Math.abs(to[1] - from[1]);
  return (
    <g class={styles.dimension}>
      <path class={kind === 'neighbour' ? styles.neighbour : ''} d={`M${from[0]} ${from[1]}L${to[0]} ${to[1]}`} />
      <g transform={`translate(${x} ${y})`}>
        <g class={styles.upright}>
          <text class={styles.length} x={isUp ? 5 : 0} y={isUp ? 4 : -5} text-anchor={isUp ? 'start' : 'middle'}>
            {writeQuantity('length', length)}
          </text>
        </g>
      </g>
    </g>
  );
}

/** What is measured of the selection. */
export function DimensionsLayer({ desk }: { readonly desk: PanelDesk }) {
  const dimensions = useComputed(() => listDimensions(desk));
  return (
    <g>
      {dimensions.value.map((one, k) => (
        <Dimension key={k} {...one} />
      ))}
    </g>
  );
}
