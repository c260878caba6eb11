import { Button } from '../../../../parts/button.tsx';
import { download, fileNameOf } from '../../../../parts/download.ts';
import { DrawingView } from '../../../../parts/drawing-view.tsx';
import { askJobWorker } from '../../../../parts/worker-client.ts';
import type { SetOutView } from '../../../../worker/set-out-view.ts';
import { tell } from '../../../state/messages.ts';
import { type Asked, tellError } from '../../../state/use-asked.ts';
import type { PanelDesk } from '../desk/panel-desk.ts';
import styles from './tables.module.css';

const TYPES = { dxf: 'image/vnd.dxf', svg: 'image/svg+xml' } as const;

async function give(mark: string, format: 'dxf' | 'svg'): Promise<void> {
  try {
    const file = await askJobWorker(async (worker) => worker.setOutFile(mark, format));
    if (file.kind === 'not drawn') {
      tell('fault', `The set-out of ${mark} cannot be drawn: ${file.why}`);
      return;
    }
    download(`${fileNameOf(mark)}-set-out.${format}`, file.text, TYPES[format]);
    for (const note of file.notes) tell('note', note);
  } catch (error) {
    tell('fault', `The set-out of ${mark} could not be written: ${tellError(error)}`);
  }
}

/** How the panel lies, what stands against it in the form, its set-out to look at and to take along. */
export function FormTable({ desk, setOut }: { readonly desk: PanelDesk; readonly setOut: Asked<SetOutView> }) {
  const { mark } = desk;
  const { value, isBusy, why } = setOut;
  if (why !== null) return <p class={styles.fault}>The panel could not be set out: {why}</p>;
  if (value === null) return <p aria-busy="true">Setting out …</p>;
  const stops = value.findings.filter(({ isStop }) => isStop).length;
  return (
    <div class={styles.form} aria-busy={isBusy}>
      <div class={styles.found}>
        <p>
          {value.lie.join(' ')} Datum corner: {value.datum}.
        </p>
        <h3>
          {value.findings.length === 0
            ? 'Nothing stands against it in the form'
            : `${stops} to stop the pour, ${value.findings.length - stops} to look at`}
        </h3>
        <ul class={styles.findings}>
          {value.findings.map(({ isStop, insert, text }) => (
            <li key={`${insert} ${text}`} class={isStop ? styles.stop : ''}>
              {insert === null ? (
                <span class={styles.finding}>{text}</span>
              ) : (
                <button type="button" class={styles.finding} onClick={() => desk.take(insert, true)}>
                  <strong>
                    {isStop ? 'Stop, ' : ''}no. {value.numbers.get(insert)} (insert {insert}):
                  </strong>{' '}
                  {text}
                </button>
              )}
            </li>
          ))}
        </ul>
        <div class={`${styles.acts} not-printed`}>
          <Button onPress={() => void give(mark, 'dxf')}>DXF of the set-out</Button>
          <Button onPress={() => void give(mark, 'svg')}>SVG of the set-out</Button>
        </div>
      </div>
      <figure class={styles.sheet}>
        {value.why !== null && <p class={styles.fault}>It cannot be drawn: {value.why}</p>}
        {value.sheet !== null && <DrawingView drawing={value.sheet} title={`Set-out of panel ${mark}`} isPaper />}
        <figcaption>
          The plan of the set-out sheet, to look at. What the yard works from is printed with the pour folder.
        </figcaption>
      </figure>
    </div>
  );
}
