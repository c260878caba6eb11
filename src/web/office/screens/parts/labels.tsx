import type { BagLabel } from '../../../../assess/parts/bench.ts';
import type { PartLine } from '../../../../assess/parts/part-kind.ts';
import { describeKind } from '../../../../say/part-words.ts';
import { writeDay } from '../../../parts/day-field.tsx';
import styles from './parts.module.css';

function Lines({ lines }: { readonly lines: readonly PartLine[] }) {
  return (
    <dl class={styles.lines}>
      {lines.flatMap(({ kind, count }) => [
        <dt key={`count ${kind.group} ${kind.id}`}>{count}</dt>,
        <dd key={`kind ${kind.group} ${kind.id}`}>
          <strong>{kind.id}</strong> {describeKind(kind)}
        </dd>,
      ])}
    </dl>
  );
}

/** Labels of bags, one a piece, as they are stuck on. */
export function Labels({ labels }: { readonly labels: readonly BagLabel[] }) {
  return (
    <div class={styles.labels}>
      {labels.map(({ pour, date, bed, panel, serial, revision, inBag, beside }) => (
        <article key={`${panel} ${serial}`} class={styles.label} aria-label={`Bag of ${panel} no. ${serial}`}>
          <header class={styles.labelHead}>
            <span class={styles.mark}>{panel}</span>
            <span>
              no. <strong>{serial}</strong>, revision <strong>{revision}</strong>
            </span>
          </header>
          <p class={styles.facts}>
            pour {pour}, {bed}, {writeDay(date)}
          </p>
          <Lines lines={inBag} />
          {beside.length > 0 && (
            <div class={styles.beside}>
              <p class={styles.facts}>beside the bag</p>
              <Lines lines={beside} />
            </div>
          )}
        </article>
      ))}
    </div>
  );
}
