import { type ReadonlySignal, useComputed } from '@preact/signals';
import type { Point } from '../../../../../engine/geometry/point.ts';
import { showRatio } from '../../../../../say/numbers.ts';
import { type ShownState, STATE_CLASSES, STATE_SHAPES } from '../../../../parts/state-mark.tsx';
import { useOffice } from '../../../state/office.ts';
import type { ShownDimension } from '../desk/dimensions.ts';
import type { PanelDesk } from '../desk/panel-desk.ts';
import styles from './drawing.module.css';
import { writeRing } from './symbol-shape.tsx';

/** The colour of a state, for what is drawn of a connection; its shape and word stand beside it. */
export function stateClass(state: ShownState): string {
  return styles[STATE_CLASSES[state]] ?? '';
}

/** The plate of a connection, where it is held at this moment. */
export function PlateNode({ desk, mark }: { readonly desk: PanelDesk; readonly mark: string }) {
  const isSelected = useComputed(() => {
    const { connection, isWhole } = desk.selection.value;
    return connection === mark && isWhole;
  }).value;
  // A plate that comes later, by an edit, is heard of here.
  const isThere = desk.plates.value.some((one) => one.connection.mark === mark);
  const plate = desk.plateOf(mark)?.value;
  if (plate === undefined || !isThere) return null;
  return (
    <g
      class={`${styles.plate} ${plate.isInFront ? '' : styles.behind} ${isSelected ? styles.selected : ''}`}
      data-plate={mark}
    >
      <path class={styles.steel} d={writeRing(plate.outline)} />
      {plate.holes.map(({ at, radius }, k) => (
        <circle key={k} class={styles.hole} cx={at[0]} cy={at[1]} r={radius} />
      ))}
    </g>
  );
}

/** Where a connection's name stands: over the middle of what it is made of, or under it. */
function findEnd(points: readonly Point[], isBelow: boolean): Point {
  const xs = points.map(([x]) => x);
  const ys = points.map(([, y]) => y);
  return [(Math.min(...xs) + Math.max(...xs)) / 2, isBelow ? Math.min(...ys) : Math.max(...ys)];
}

/** A connection's mark with its state, over its plate or inserts. */
export function ConnectionLabel({
  desk,
  mark,
  dimensions,
}: {
  readonly desk: PanelDesk;
  readonly mark: string;
  readonly dimensions: ReadonlySignal<readonly ShownDimension[]>;
}) {
  const { answers } = useOffice();
  // Asked in this order, so that only the label of what is held follows the hand.
  const isHeld = useComputed(() => desk.selection.value.connection === mark && desk.held.value !== null);
  const isSelected = useComputed(() => desk.selection.value.connection === mark);
  // The place over it is needed for a dimension upward.
  const isBelow = useComputed(
    () => isSelected.value && dimensions.value.some(({ kind, from, to }) => kind === 'edge' && to[1] > from[1] + 1),
  );
  const place = useComputed(() => {
    const outline = desk.plateOf(mark)?.value.outline;
    if (outline !== undefined) return findEnd(outline, isBelow.value);
    const moved = isHeld.value ? desk.shownCastIns : [];
    const { toView } = desk.sight.value;
    return findEnd(
      desk.items.value
        .filter((item) => item.connection === mark)
        .map(({ castIn, at }) => {
          const now = moved.find(({ id }) => id === castIn.id);
          return now === undefined || now.face === 'edge' ? at : toView([now.x_mm, now.y_mm]);
        }),
      isBelow.value,
    );
  });
  const answer = useComputed(() => {
    if (isHeld.value) return desk.answer.value?.explanation.answer ?? null;
    return answers.byKey.value.get(desk.findConnection(mark)?.key ?? '') ?? null;
  });
  const transform = useComputed(() => `translate(${place.value[0]} ${place.value[1]})`);
  const state: ShownState = answer.value?.state ?? (isHeld.value ? 'cannot be computed' : 'computing');
  const ratio = answer.value?.ratio ?? null;
  const down = isBelow.value ? 40 : isSelected.value ? -12 : 0;
  return (
    <g transform={transform} class={`${styles.label} ${stateClass(state)} ${isSelected.value ? styles.selected : ''}`}>
      <g class={styles.upright}>
        <path class={styles.stateShape} transform={`translate(-20 ${down - 24})`} d={STATE_SHAPES[state]} />
        <text class={styles.mark} x="0" y={down - 11}>
          {mark}
          {ratio === null ? '' : ` ${showRatio(ratio)}`}
        </text>
      </g>
    </g>
  );
}
