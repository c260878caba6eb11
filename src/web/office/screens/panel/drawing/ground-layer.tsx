import { useComputed } from '@preact/signals';
import { laySceneGround } from '../../../../../drawing/screen/panel-scene.ts';
import type { PanelDesk } from '../desk/panel-desk.ts';
import { showsBars } from '../desk/settings.ts';
import styles from './drawing.module.css';
import { writeRing, writeRings } from './symbol-shape.tsx';

/** What lies still: the concrete with its openings, zones, bars, and where x and y are counted from. */
export function GroundLayer({ desk }: { readonly desk: PanelDesk }) {
  const ground = useComputed(() => laySceneGround(desk.live.value.panel, desk.sight.value));
  const { outline, openings, zones, bars } = ground.value;
  const { originAt, kind } = desk.sight.value;
  return (
    <g>
      <path class={styles.concrete} d={writeRings([outline, ...openings])} fill-rule="evenodd" />
      {zones.map((zone) => (
        <path key={zone.name} class={styles.zone} d={writeRing(zone.outline)}>
          <title>{zone.name}</title>
        </path>
      ))}
      {showsBars.value && (
        <path class={styles.bars} d={bars.map(({ from, to }) => `M${from[0]} ${from[1]}L${to[0]} ${to[1]}`).join('')} />
      )}
      <path class={styles.openings} d={openings.map((ring) => writeRing(ring) + writeCross(ring)).join('')} />
      <g transform={`translate(${originAt[0]} ${originAt[1]})`}>
        <g class={styles.upright}>
          {kind === 'form' ? (
            <path class={styles.datum} d="M-7 -7H7V7H-7Z" />
          ) : (
            <path class={styles.origin} d="M-9 0H9M0 -9V9" />
          )}
        </g>
      </g>
    </g>
  );
}

/** The trade's sign for an opening: lines from corner to corner of a rectangle. */
function writeCross(ring: readonly (readonly [number, number])[]): string {
  const [a, b, c, d] = ring;
  if (ring.length !== 4 || a === undefined || b === undefined || c === undefined || d === undefined) return '';
  return `M${a[0]} ${a[1]}L${c[0]} ${c[1]}M${b[0]} ${b[1]}L${d[0]} ${d[1]}`;
}
