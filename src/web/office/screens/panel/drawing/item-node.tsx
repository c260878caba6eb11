import { useComputed } from '@preact/signals';
import type { SceneItem } from '../../../../../drawing/screen/panel-scene.ts';
import type { PanelDesk } from '../desk/panel-desk.ts';
import styles from './drawing.module.css';
import { SymbolShape } from './symbol-shape.tsx';

/** One cast-in item. Its place is a signal that is written straight to the drawing: a drag draws nothing anew. */
export function ItemNode({ desk, item }: { readonly desk: PanelDesk; readonly item: SceneItem }) {
  const { id } = item.castIn;
  // Told apart here, so that a selection draws anew only what it touches.
  const isSelected = useComputed(() => desk.selection.value.ids.includes(id)).value;
  const isInHand = useComputed(() => desk.selection.value.ids[0] === id).value;
  // In the form an item has the number of its turn in the walk, as on the sheet; the number of the list elsewhere.
  const number = useComputed(() => {
    const walk = desk.sightKind.value === 'form' ? desk.numbers.value?.get(id) : undefined;
    return walk === undefined ? id : String(walk);
  });
  return (
    <g
      transform={desk.placeOf(id)}
      class={`${styles.item} ${isSelected ? styles.selected : ''} ${isInHand ? styles.inHand : ''}`}
      data-insert={id}
      id={`insert-${id}`}
    >
      <title>{`Insert ${id}${item.connection === null ? '' : ` of ${item.connection}`}, ${item.place}`}</title>
      {item.foot !== null && <circle class={styles.foot} r={item.foot} />}
      <g class={styles.symbol}>
        {isSelected && <circle class={styles.halo} r="1.6" />}
        <g transform={item.turn === 0 ? undefined : `rotate(${(item.turn * 180) / Math.PI})`}>
          <SymbolShape marks={item.shape} />
        </g>
      </g>
      <g class={styles.upright}>
        <text class={styles.number} x="9" y="-8">
          {number}
        </text>
      </g>
    </g>
  );
}
