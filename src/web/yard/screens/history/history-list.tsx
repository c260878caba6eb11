import type { HistoryLine } from '../../../../say/history-lines.ts';
import { PhotoView } from '../../photo/photo-view.tsx';
import { sayMoment } from '../../state/say-moment.ts';
import styles from './history.module.css';

/** When it was done, when and by whom it was typed in, on which device and under which running number. */
function tellWhen({ measuredAt, typedAt, isLate, typedBy, clock, chain }: HistoryLine): string {
  const isApart = isLate || typedBy !== null;
  return [
    sayMoment(measuredAt),
    ...(isApart ? [`typed ${sayMoment(typedAt)}${typedBy === null ? '' : ` by ${typedBy}`}`] : []),
    `device and no. ${chain}`,
    ...(clock === null ? [] : [clock]),
  ].join(' · ');
}

/** The acts of a piece in order; what was withdrawn stays in its place, struck through. */
export function HistoryList({
  lines,
  hasPhotos,
}: {
  readonly lines: readonly HistoryLine[];
  readonly hasPhotos: boolean;
}) {
  return (
    <ol class={styles.lines}>
      {lines.map((line, k) => {
        const [first] = line.records;
        return (
          <li key={first?.id} class={line.withdrawn === null ? '' : styles.withdrawn}>
            <span class={styles.number}>{k + 1}</span>
            <div>
              <p>{line.withdrawn === null ? line.words : <s>{line.words}</s>}</p>
              {line.withdrawn !== null && (
                <p>
                  <strong>Does not count: {line.withdrawn}</strong>
                </p>
              )}
              <p class={styles.when}>{tellWhen(line)}</p>
              {hasPhotos && first?.kind === 'photo' && <PhotoView record={first} words={line.words} />}
            </div>
          </li>
        );
      })}
    </ol>
  );
}
