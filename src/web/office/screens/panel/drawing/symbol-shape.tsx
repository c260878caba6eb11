import type { Mark } from '../../../../../drawing/drawing.ts';
import type { Point } from '../../../../../engine/geometry/point.ts';
import styles from './drawing.module.css';

/** A closed ring as a path. */
export function writeRing(ring: readonly Point[]): string {
  return ring.length === 0 ? '' : `M${ring.map(([x, y]) => `${x} ${y}`).join('L')}Z`;
}

export function writeRings(rings: readonly (readonly Point[])[]): string {
  return rings.map(writeRing).join('');
}

/** The symbol of a cast-in item for a radius of 1, as sheets have it too: areas, solid or open, and strokes. */
export function SymbolShape({ marks }: { readonly marks: readonly Mark[] }) {
  return (
    <>
      {marks.map((mark, k) => {
        if (mark.kind === 'area') {
          const solid = mark.fill === 'black' ? styles.solid : styles.open;
          return <path key={k} d={writeRings(mark.rings)} class={solid} fill-rule="evenodd" />;
        }
        if (mark.kind !== 'line') return null;
        const [[x1, y1], [x2, y2]] = [mark.from, mark.to];
        return <path key={k} d={`M${x1} ${y1}L${x2} ${y2}`} class={styles.stroke} />;
      })}
    </>
  );
}
