import type { ZoneSketch } from '../../../../drawing/sketch/zone-sketch.ts';
import type { Point, Polygon } from '../../../../engine/geometry/point.ts';
import { writeQuantity } from '../../../parts/units.ts';
import styles from './zone-part.module.css';

/** Sides of the picture in its own units; the mm of a zone are too few for clean lines. */
const SIZE = 1000;

/** Where an insert may sit, to scale, seen from the front of the face: boundary, what fails in it, the box, the place as designed. */
export function ZonePicture({ sketch, title }: { readonly sketch: ZoneSketch; readonly title: string }) {
  const { boundary, holes, extent, window, box, bar } = sketch;
  const scale = SIZE / (2 * extent);
  const put = ([x, y]: Point): Point => [SIZE / 2 + scale * x, SIZE / 2 - scale * y];
  const ring = (points: Polygon) =>
    `M${points
      .map((at) =>
        put(at)
          .map((part) => part.toFixed(1))
          .join(' '),
      )
      .join('L')}Z`;
  const square = (halfX: number, halfY: number) =>
    ring([
      [-halfX, -halfY],
      [halfX, -halfY],
      [halfX, halfY],
      [-halfX, halfY],
    ]);
  const [left, low] = [0.06 * SIZE, 0.94 * SIZE];
  return (
    <figure>
      <svg class={styles.picture} viewBox={`0 0 ${SIZE} ${SIZE}`} role="img" aria-label={title}>
        <path class={styles.window} d={square(window, window)} />
        <path class={styles.may} fill-rule="evenodd" d={[boundary, ...holes].map(ring).join('')} />
        {box !== null && <path class={styles.box} d={square(...box)} />}
        <path class={styles.design} d={`M${SIZE / 2 - 22} ${SIZE / 2}h44M${SIZE / 2} ${SIZE / 2 - 22}v44`} />
        <path class={styles.bar} d={`M${left} ${low}h${bar * scale}`} />
      </svg>
      <figcaption>
        Seen from the front of the face; the bar is {writeQuantity('length', bar)} long. Cross: as designed
        {box === null ? '' : '; broken line: the box for all at once'}.
      </figcaption>
    </figure>
  );
}
