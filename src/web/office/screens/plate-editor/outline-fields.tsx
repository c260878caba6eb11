import { useSignal } from '@preact/signals';
import type { Polygon } from '../../../../engine/geometry/point.ts';
import { findRectangle, makeRectangle } from '../../../../job/edit/plate/rectangle.ts';
import { Button } from '../../../parts/button.tsx';
import { QuantityField } from '../../../parts/field.tsx';
import { Fields } from '../../../parts/page.tsx';
import { Corners } from './corners.tsx';

/** A shape of a plate: width and height where it is a rectangle, its corners where it is not or on request. */
export function OutlineFields({
  name,
  outline,
  onChange,
}: {
  readonly name: string;
  readonly outline: Polygon;
  readonly onChange: (outline: [number, number][]) => string | null;
}) {
  const wantsCorners = useSignal(false);
  const rectangle = findRectangle(outline);
  const put = (side: 'width' | 'height', value: number | null) =>
    rectangle === null || value === null ? null : onChange(makeRectangle({ ...rectangle, [side]: value }));
  if (rectangle === null || wantsCorners.value)
    return (
      <>
        <Corners name={name} corners={outline} onChange={onChange} />
        {rectangle !== null && (
          <div>
            <Button
              kind="quiet"
              onPress={() => {
                wantsCorners.value = false;
              }}
            >
              As width and height
            </Button>
          </div>
        )}
      </>
    );
  return (
    <>
      <Fields>
        <QuantityField
          label={`Width of the ${name}`}
          quantity="length"
          value={rectangle.width}
          onChange={(value) => put('width', value)}
        />
        <QuantityField
          label={`Height of the ${name}`}
          quantity="length"
          value={rectangle.height}
          onChange={(value) => put('height', value)}
        />
      </Fields>
      <div>
        <Button
          kind="quiet"
          name={`As corners: ${name}`}
          onPress={() => {
            wantsCorners.value = true;
          }}
        >
          As corners
        </Button>
      </div>
    </>
  );
}
