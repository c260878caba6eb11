import { useComputed } from '@preact/signals';
import type { ExplainedMode } from '../../../../../assess/explain/explanation.ts';
import { turnToView } from '../../../../../drawing/screen/view-direction.ts';
import { nameInserts, nameModeLine } from '../../../../../say/mode-words.ts';
import { showRatio } from '../../../../../say/numbers.ts';
import { type ShownState, STATE_SHAPES } from '../../../../parts/state-mark.tsx';
import type { PanelDesk } from '../desk/panel-desk.ts';
import { stateClass } from '../drawing/plate-node.tsx';
import styles from './side.module.css';

/** A bar longer than this says no more. */
const LONGEST = 1.5;

/** Of each mode the line that is used most, in their order: the governing one first. */
function keepModes(modes: readonly ExplainedMode[]): readonly ExplainedMode[] {
  const seen = new Set<string>();
  return modes.filter(({ mode }) => {
    const isNew = !seen.has(mode);
    seen.add(mode);
    return isNew;
  });
}

function Row({ mode, see }: { readonly mode: ExplainedMode; readonly see: (direction: number) => number }) {
  const { ratio, state, governs } = mode;
  const shown: ShownState = state;
  return (
    <li
      class={`${styles.mode} ${stateClass(shown)} ${governs ? styles.governs : ''}`}
      title={nameInserts(mode.inserts)}
    >
      <div class={styles.modeLine}>
        <svg viewBox="0 0 16 16" class={styles.shape} role="img" aria-label={state}>
          <path d={STATE_SHAPES[shown]} />
        </svg>
        <span class={styles.modeName}>{nameModeLine(mode, see)}</span>
        <span class={styles.ratio}>{ratio === null ? '–' : showRatio(ratio)}</span>
        <span class={styles.track}>
          <span class={styles.bar} style={{ transform: `scaleX(${Math.min(ratio ?? 0, LONGEST) / LONGEST})` }} />
        </span>
      </div>
    </li>
  );
}

/** The selected connection by mode, governing first, as it is held at this moment. Its room stays, whatever comes. */
export function Results({ desk }: { readonly desk: PanelDesk }) {
  const modes = useComputed(() => keepModes(desk.answer.value?.explanation.modes ?? []));
  // Left and right as they are in the drawing beside it.
  const see = useComputed(() => {
    const { panel } = desk.live.value;
    const connection = desk.connection.value;
    const sight = desk.sight.value;
    return (direction: number) => (connection === null ? direction : turnToView(panel, connection, sight, direction));
  });
  const reason = useComputed(() => {
    const held = desk.held.value;
    if (held !== null && held.misplaced !== null) return `It cannot stay there: ${held.misplaced}`;
    return desk.answer.value?.explanation.answer.reasons[0] ?? null;
  });
  return (
    <div>
      <h3>By mode, governing first</h3>
      <ol class={styles.modes}>
        {modes.value.map((mode) => (
          <Row key={mode.mode} mode={mode} see={see.value} />
        ))}
      </ol>
      <p class={styles.key}>Full bar: {showRatio(LONGEST)} · tick: 100 % of the resistance</p>
      <p class={styles.reason}>{reason.value}</p>
    </div>
  );
}
