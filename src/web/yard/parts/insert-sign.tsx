import type { SetOutItem } from '../../../assess/set-out/set-out.ts';
import type { Mark } from '../../../drawing/drawing.ts';
import { shapeOf } from '../../../drawing/symbol-shapes.ts';
import type { Point } from '../../../engine/geometry/point.ts';
import styles from './insert-sign.module.css';

function Part({ mark }: { readonly mark: Mark }) {
  if (mark.kind === 'line')
    return <path class={styles.line} d={`M${mark.from[0]} ${-mark.from[1]}L${mark.to[0]} ${-mark.to[1]}`} />;
  if (mark.kind !== 'area') return null;
  const d = mark.rings.map((ring) => `M${ring.map(([x, y]) => `${x} ${-y}`).join('L')}Z`).join('');
  return <path class={mark.fill === 'black' ? styles.solid : styles.open} fill-rule="evenodd" d={d} />;
}

/** The mark of an insert, the same as on the sheets: its shape is that of the role, its fill that of the face. */
export function InsertSign({
  item,
  at,
  radius,
}: {
  readonly item: Pick<SetOutItem, 'castIn' | 'place' | 'inward'>;
  readonly at: Point;
  readonly radius: number;
}) {
  const turn = item.inward === null ? 0 : (-Math.atan2(item.inward[1], item.inward[0]) * 180) / Math.PI;
  return (
    <g transform={`translate(${at[0]} ${at[1]}) rotate(${turn}) scale(${radius})`}>
      {shapeOf(item.castIn.role, item.place).map((mark, k) => (
        <Part key={k} mark={mark} />
      ))}
    </g>
  );
}
