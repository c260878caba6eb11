import { useComputed } from '@preact/signals';
import type { Point } from '../../../../../engine/geometry/point.ts';
import { showRatio } from '../../../../../say/numbers.ts';
import { type ShownState, STATE_SHAPES } from '../../../../parts/state-mark.tsx';
import { useOffice } from '../../../state/office.ts';
import type { PanelDesk } from '../desk/panel-desk.ts';
import styles from './drawing.module.css';
import { writeRing } from './symbol-shape.tsx';

const STATE_CLASSES: Readonly<Record<ShownState, string>> = {
  passes: 'passes',
  fails: 'fails',
  'not covered': 'uncovered',
  'cannot be computed': 'stuck',
  'strength not checked': 'unchecked',
  computing: 'computing',
};

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

/** Where a connection's name stands: over the middle of what it is made of. */
function findTop(points: readonly Point[]): Point {
  const xs = points.map(([x]) => x);
  return [(Math.min(...xs) + Math.max(...xs)) / 2, Math.max(...points.map(([, y]) => y))];
}

/** A connection's mark with its state, over its plate or inserts. */
export function ConnectionLabel({ desk, mark }: { readonly desk: PanelDesk; readonly mark: string }) {
  const { answers } = useOffice();
  const isHeld = useComputed(() => desk.held.value !== null && desk.selection.value.connection === mark);
  const place = useComputed(() => {
    const outline = desk.plateOf(mark)?.value.outline;
    if (outline !== undefined) return findTop(outline);
    const moved = isHeld.value ? desk.shownCastIns : [];
    const { toView } = desk.sight.value;
    return findTop(
      desk.items.value
        .filter((item) => item.connection === mark)
        .map(({ castIn, at }) => {
          const now = moved.find(({ id }) => id === castIn.id);
          return now === undefined || now.face === 'edge' ? at : toView([now.x_mm, now.y_mm]);
        }),
    );
  });
  const answer = useComputed(() => {
    if (isHeld.value) return desk.answer.value?.explanation.answer ?? null;
    return answers.byKey.value.get(desk.findConnection(mark)?.key ?? '') ?? null;
  });
  const transform = useComputed(() => `translate(${place.value[0]} ${place.value[1]})`);
  const state: ShownState = answer.value?.state ?? 'computing';
  const ratio = answer.value?.ratio ?? null;
  const isSelected = useComputed(() => desk.selection.value.connection === mark).value;
  return (
    <g transform={transform} class={`${styles.label} ${stateClass(state)} ${isSelected ? styles.selected : ''}`}>
      <g class={styles.upright}>
        <path class={styles.stateShape} transform="translate(-20 -24)" d={STATE_SHAPES[state]} />
        <text class={styles.mark} x="0" y="-11">
          {mark}
          {ratio === null ? '' : ` ${showRatio(ratio)}`}
        </text>
      </g>
    </g>
  );
}
