import { useMemo } from 'preact/hooks';
import type { AsCastConnection, Remedy } from '../../../../assess/as-cast/as-cast-report.ts';
import { drawPlateAsCast } from '../../../../drawing/as-cast/plate-picture.ts';
import { DrawingView } from '../../../parts/drawing-view.tsx';
import { units, writeQuantity } from '../../../parts/units.ts';
import { findPlate } from '../../../pieces/as-cast/plate-subject.ts';
import type { OpenPiece } from '../../../pieces/read-piece.ts';
import styles from './as-cast.module.css';

const ROOM = { width: 58, height: 44, text: 2.8 } as const;

/** The plate on its bolts as cast, with a remedy, from the front of its face. */
export function PlateFigure({
  piece,
  found,
  remedy,
}: {
  readonly piece: OpenPiece;
  readonly found: AsCastConnection;
  readonly remedy: Remedy | null;
}) {
  const system = units.value;
  const drawing = useMemo(() => {
    const plate = findPlate(piece, found, remedy);
    return plate === null
      ? null
      : drawPlateAsCast({ ...plate, hasLengths: false }, ROOM, (mm) => writeQuantity('length', mm));
  }, [piece.context, piece.plan, found, remedy, system]);
  if (drawing === null) return <span class={styles.soft}>No plate is drawn for it.</span>;
  return (
    <div class={styles.plate}>
      <p class={styles.front}>from its front</p>
      <DrawingView
        drawing={drawing}
        title={`Plate of ${found.connection.mark} on its bolts as cast${remedy === null ? '' : `, ${remedy.kind}`}, from its front`}
      />
    </div>
  );
}
