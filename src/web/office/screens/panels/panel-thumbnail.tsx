import type { ConnectionAnswer } from '../../../../assess/connection-answer.ts';
import type { PanelStatus } from '../../../../assess/panel-status.ts';
import { drawThumbnail, type MarkState } from '../../../../drawing/thumbnail.ts';
import { STATE_CLASSES } from '../../../parts/state-mark.tsx';
import styles from './panel-thumbnail.module.css';

/** Room for it [px]. */
const BOX = { width: 128, height: 76 };

const CLASSES: Readonly<Record<MarkState, string>> = { ...STATE_CLASSES, 'not computed': 'others' };

/** The panel as it is drawn, with each insert in the state of its connection. */
export function PanelThumbnail({
  status: { panel, castIns, connections },
  answers,
}: {
  readonly status: PanelStatus;
  readonly answers: ReadonlyMap<string, ConnectionAnswer>;
}) {
  const states = new Map<string, MarkState>();
  for (const { key, inserts } of connections) {
    const state = answers.get(key)?.state ?? 'computing';
    for (const { insert } of inserts) states.set(insert, state);
  }
  const drawn = drawThumbnail(
    panel,
    castIns,
    ({ id, role }) => states.get(id) ?? (role === 'fixing' ? 'strength not checked' : 'not computed'),
    BOX,
  );
  return (
    <div class={styles.frame}>
      <svg
        class={styles.picture}
        viewBox={`0 0 ${drawn.width} ${drawn.height}`}
        width={drawn.width}
        height={drawn.height}
        aria-hidden="true"
      >
        <path d={drawn.ground} class={styles.ground} fill-rule="evenodd" />
        {drawn.marks.map(({ state, path }) => (
          <path key={state} d={path} class={styles[CLASSES[state]]} />
        ))}
      </svg>
    </div>
  );
}
