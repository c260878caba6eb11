import { placeDrawn } from '../../../../../drawing/screen/panel-sight.ts';
import type { Point } from '../../../../../engine/geometry/point.ts';
import type { CastIn } from '../../../../../job/documents/cast-in.ts';
import { QuantityField } from '../../../../parts/field.tsx';
import type { PanelDesk } from '../desk/panel-desk.ts';

/** One coordinate of the selected insert, typed in its row of the table. */
export function PlaceCells({
  desk,
  castIn,
  axis,
}: {
  readonly desk: PanelDesk;
  readonly castIn: CastIn;
  readonly axis: 0 | 1;
}) {
  const { toRead, fromRead } = desk.sight.value;
  const isEdge = castIn.face === 'edge';
  const drawn: Point = isEdge ? [castIn.x_mm, castIn.y_mm] : placeDrawn(desk.live.value.panel, castIn);
  const shown = isEdge ? drawn : toRead(drawn);
  const move = (value: number | null) => {
    const wanted: Point = axis === 0 ? [value ?? shown[0], shown[1]] : [shown[0], value ?? shown[1]];
    const to = isEdge ? wanted : fromRead(wanted);
    return desk.moveBy([to[0] - drawn[0], to[1] - drawn[1]]);
  };
  return (
    <QuantityField
      isInTable
      label={`${axis === 0 ? 'x' : 'y'} of insert ${castIn.id}`}
      quantity="length"
      value={shown[axis]}
      isReadOnly={desk.isHanded}
      onChange={move}
    />
  );
}
