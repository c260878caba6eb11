import { useComputed } from '@preact/signals';
import type { NearDistance } from '../../../../../drawing/screen/near-distances.ts';
import { placeDrawn } from '../../../../../drawing/screen/panel-sight.ts';
import { writeQuantity } from '../../../../parts/units.ts';
import { listEdgeDistances } from '../desk/dimensions.ts';
import type { PanelDesk } from '../desk/panel-desk.ts';
import { nameCoordinates, SIDES } from './place-words.ts';
import styles from './side.module.css';

/** A length as it stands where its field is while nothing is held, in a box that is laid out alone. */
function HeldLength({ label, value }: { readonly label: string; readonly value: number | null }) {
  return (
    <div>
      <span class={styles.heldLabel}>{label}</span>
      <div class={styles.heldBox}>{value === null ? '–' : writeQuantity('length', value)}</div>
    </div>
  );
}

/** Where the hand holds it: what the fields of a place show else, without the fields, whose layout costs more than all the rest of a frame. */
export function HeldFields({ desk }: { readonly desk: PanelDesk }) {
  const first = useComputed(() => desk.shownCastIns[0]);
  const distances = useComputed(() => listEdgeDistances(desk));
  const castIn = first.value;
  if (castIn === undefined) return null;
  const [nameX, nameY] = nameCoordinates(castIn, desk.sight.value.kind);
  const isEdge = castIn.face === 'edge';
  const [x, y] = isEdge
    ? [castIn.x_mm, castIn.y_mm]
    : desk.sight.value.toRead(placeDrawn(desk.live.value.panel, castIn));
  const lengthToward = (toward: NearDistance['toward']) =>
    distances.value.find((one) => one.toward === toward)?.length ?? null;
  return (
    <>
      <div class={styles.pair}>
        <HeldLength label={nameX} value={x} />
        <HeldLength label={nameY} value={y} />
      </div>
      {!isEdge && (
        <>
          <h3>To the edges, from the outermost insert</h3>
          <div class={styles.pair}>
            {(Object.keys(SIDES) as NearDistance['toward'][]).map((toward) => (
              <HeldLength key={toward} label={SIDES[toward]} value={lengthToward(toward)} />
            ))}
          </div>
        </>
      )}
    </>
  );
}
