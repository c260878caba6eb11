import { askJobWorker } from '../../../parts/worker-client.ts';
import type { StateOfJob } from '../../../worker/compare-states.ts';
import { useAsked } from '../../state/use-asked.ts';
import styles from './revisions.module.css';

/** In what a later state differs from an earlier one: a line, and behind it what changed panel by panel. */
export function Difference({
  job,
  before,
  after,
  on,
}: {
  readonly job: string;
  readonly before: StateOfJob;
  readonly after: StateOfJob;
  /** What the question depends on. */
  readonly on: readonly unknown[];
}) {
  const { value, why } = useAsked(() => askJobWorker((worker) => worker.compare(job, before, after)), on);
  if (why !== null) return <p class={styles.failed}>{why}</p>;
  if (value === null) return <p aria-busy="true">Comparing …</p>;
  const { summary, panels, others, isSame } = value;
  const text = `${summary.charAt(0).toUpperCase()}${summary.slice(1)}.`;
  if (isSame) return <p class={styles.summary}>{text}</p>;
  return (
    <details class={styles.difference}>
      <summary class={styles.summary}>{text}</summary>
      <dl class={styles.lines}>
        {panels.map(({ mark, lines }) => (
          <div key={mark} class={styles.panel}>
            <dt>{mark}</dt>
            <dd>
              <ul>
                {lines.map((line) => (
                  <li key={line}>{line}</li>
                ))}
              </ul>
            </dd>
          </div>
        ))}
        {others.length > 0 && (
          <div class={styles.panel}>
            <dt>For all</dt>
            <dd>
              <ul>
                {others.map((line) => (
                  <li key={line}>{line}</li>
                ))}
              </ul>
            </dd>
          </div>
        )}
      </dl>
    </details>
  );
}
