import { useComputed } from '@preact/signals';
import { placeDrawn } from '../../../../../drawing/screen/panel-sight.ts';
import type { Point } from '../../../../../engine/geometry/point.ts';
import type { CastIn } from '../../../../../job/documents/cast-in.ts';
import { QuantityField } from '../../../../parts/field.tsx';
import { listEdgeDistances } from '../desk/dimensions.ts';
import type { PanelDesk } from '../desk/panel-desk.ts';
import { HeldFields } from './held-fields.tsx';
import { nameCoordinates, SIDES } from './place-words.ts';
import styles from './side.module.css';

const minus = ([ax, ay]: Point, [bx, by]: Point): Point => [ax - bx, ay - by];

/** Coordinates of the insert in the hand, to be read and typed. */
function Coordinates({ desk, castIn }: { readonly desk: PanelDesk; readonly castIn: CastIn }) {
  const { isHanded } = desk;
  const [nameX, nameY] = nameCoordinates(castIn, desk.sight.value.kind);
  if (castIn.face === 'edge')
    return (
      <>
        <QuantityField
          label={nameX}
          quantity="length"
          value={castIn.x_mm}
          isReadOnly={isHanded}
          onChange={(value) => desk.moveBy([(value ?? castIn.x_mm) - castIn.x_mm, 0])}
        />
        <QuantityField
          label={nameY}
          quantity="length"
          value={castIn.y_mm}
          isReadOnly={isHanded}
          onChange={(value) => desk.moveBy([0, (value ?? castIn.y_mm) - castIn.y_mm])}
        />
      </>
    );
  const { toRead, fromRead } = desk.sight.value;
  const drawn = placeDrawn(desk.live.value.panel, castIn);
  const [x, y] = toRead(drawn);
  const move = (to: Point) => desk.moveBy(minus(fromRead(to), drawn));
  return (
    <>
      <QuantityField
        label={nameX}
        quantity="length"
        value={x}
        isReadOnly={isHanded}
        onChange={(value) => move([value ?? x, y])}
      />
      <QuantityField
        label={nameY}
        quantity="length"
        value={y}
        isReadOnly={isHanded}
        onChange={(value) => move([x, value ?? y])}
      />
    </>
  );
}

/** Where the selection is: of the insert in the hand from the datum or the drawing's origin, of all of it to the edges. Each can be typed. */
export function PlaceFields({ desk }: { readonly desk: PanelDesk }) {
  const isHeld = useComputed(() => desk.held.value !== null).value;
  const { castIns } = desk;
  const [first] = castIns;
  if (first === undefined) return null;
  const canMove = desk.selection.value.isWhole || castIns.length === 1;
  if (!canMove) return <p class={styles.note}>Several single inserts: their places are typed one by one.</p>;
  return (
    <section class={styles.block} aria-label="Place">
      <h3>{castIns.length > 1 ? `Place of insert ${first.id}, the others go with it` : 'Place'}</h3>
      {isHeld ? <HeldFields desk={desk} /> : <TypedFields desk={desk} castIn={first} />}
    </section>
  );
}

function TypedFields({ desk, castIn }: { readonly desk: PanelDesk; readonly castIn: CastIn }) {
  const distances = listEdgeDistances(desk);
  return (
    <>
      <div class={styles.pair}>
        <Coordinates desk={desk} castIn={castIn} />
      </div>
      {distances.length > 0 && (
        <>
          <h3>To the edges, from the outermost insert</h3>
          <div class={styles.pair}>
            {distances.map(({ toward, from, to, length }) => (
              <QuantityField
                key={toward}
                label={SIDES[toward]}
                quantity="length"
                value={length}
                isReadOnly={desk.isHanded}
                onChange={(value) => {
                  const by = (length - (value ?? length)) / length;
                  return desk.moveBy([(to[0] - from[0]) * by, (to[1] - from[1]) * by]);
                }}
              />
            ))}
          </div>
        </>
      )}
    </>
  );
}
