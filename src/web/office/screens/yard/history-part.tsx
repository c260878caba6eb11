import type { HistoryLine } from '../../../../say/history-lines.ts';
import { Section } from '../../../parts/page.tsx';
import { writeMoment } from '../../state/write-moment.ts';
import styles from './yard.module.css';

/** When it was done, when and by whom it was typed, on which device. */
function tellWhen({ measuredAt, typedAt, isLate, typedBy, clock, chain }: HistoryLine): string {
  const typed = typedBy === null ? '' : ` by ${typedBy}`;
  const parts = [
    `measured ${writeMoment(measuredAt)}`,
    ...(isLate || typedBy !== null ? [`typed ${writeMoment(typedAt)}${typed}`] : []),
    `device ${chain}`,
    ...(clock === null ? [] : [clock]),
  ];
  return parts.join(' · ');
}

/** Everything that was recorded of a piece, in the order of what was known; withdrawn ones stay in their place. */
export function HistoryPart({ lines }: { readonly lines: readonly HistoryLine[] }) {
  return (
    <Section title="History" lead="In the order of what each record knew of: clocks do not decide it.">
      {lines.length === 0 ? (
        <p>Nothing is recorded of this piece yet.</p>
      ) : (
        <ol class={styles.history}>
          {lines.map((line, k) => (
            <li key={line.records[0]?.id} class={`${styles.act} ${line.withdrawn === null ? '' : styles.gone}`}>
              <span class={styles.number}>{k + 1}</span>
              <span class={styles.line}>
                <span class={line.withdrawn === null ? undefined : styles.struck}>{line.words}</span>
                {line.withdrawn !== null && <strong>{line.withdrawn}</strong>}
                <span class={styles.when}>{tellWhen(line)}</span>
              </span>
            </li>
          ))}
        </ol>
      )}
    </Section>
  );
}
