import type { HolePattern } from '../../../../../job/edit/commands/edit-face.ts';
import styles from './place.module.css';

/** A pattern to scale, so that what is typed is seen. */
export function PatternPicture({ pattern }: { readonly pattern: HolePattern }) {
  const { rows, columns, columnSpacing, rowSpacing, margin } = pattern;
  const width = (columns - 1) * columnSpacing + 2 * margin;
  const height = (rows - 1) * rowSpacing + 2 * margin;
  const reach = Math.max(width, height) / 2;
  const radius = reach / 16;
  return (
    <svg
      class={styles.picture}
      viewBox={`${-reach * 1.05} ${-reach * 1.05} ${2.1 * reach} ${2.1 * reach}`}
      role="img"
      aria-label={`Plate with ${rows} rows and ${columns} columns`}
    >
      <rect class={styles.plate} x={-width / 2} y={-height / 2} width={width} height={height} />
      {Array.from({ length: rows * columns }, (_, k) => (
        <circle
          key={k}
          class={styles.hole}
          cx={((k % columns) - (columns - 1) / 2) * columnSpacing}
          cy={(Math.floor(k / columns) - (rows - 1) / 2) * rowSpacing}
          r={radius}
        />
      ))}
    </svg>
  );
}
