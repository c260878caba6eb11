import { useComputed } from '@preact/signals';
import { Link } from 'wouter-preact';
import { governingOf } from '../../../../../say/connection-words.ts';
import { showRatio } from '../../../../../say/numbers.ts';
import { StateMark } from '../../../../parts/state-mark.tsx';
import { writeQuantity } from '../../../../parts/units.ts';
import { addresses } from '../../../state/addresses.ts';
import type { PanelDesk } from '../desk/panel-desk.ts';
import styles from './side.module.css';

/** What is selected, and its answer in one line. */
export function Headline({ desk }: { readonly desk: PanelDesk }) {
  const answer = useComputed(() => desk.answer.value?.explanation.answer ?? null);
  const cone = useComputed(() => {
    const areas = desk.answer.value?.areas?.cone ?? [];
    return areas.length === 0 ? null : areas.reduce((sum, { area }) => sum + area, 0);
  });
  const shear = useComputed(() => desk.answer.value?.areas?.shear?.area ?? null);
  const { ids, connection, isWhole } = desk.selection.value;
  const singles = ids.length === 1 ? `Insert ${ids[0]}` : `${ids.length} inserts`;
  return (
    <header>
      <div class={styles.titleRow}>
        <h2>{isWhole && connection !== null ? connection : singles}</h2>
        {connection !== null && (
          <Link class={styles.open} href={addresses.connection(desk.session.id, connection)}>
            {isWhole ? 'Open the connection' : `of ${connection}: open`}
          </Link>
        )}
      </div>
      {connection !== null && (
        <div class={styles.live}>
          <p class={styles.answer}>
            {answer.value === null ? (
              <StateMark state="cannot be computed" words="cannot stay there" />
            ) : (
              <StateMark state={answer.value.state} />
            )}
            <strong class={styles.figure}>{answer.value?.ratio == null ? '–' : showRatio(answer.value.ratio)}</strong>
          </p>
          <p class={styles.governing}>{answer.value === null ? '' : governingOf(answer.value)}</p>
          <dl class={styles.areas}>
            <div>
              <dt>
                <i class={styles.coneKey} />
                Concrete in tension, A<sub>c,N</sub>
              </dt>
              <dd>{cone.value === null ? '–' : writeQuantity('area', cone.value)}</dd>
            </div>
            <div>
              <dt>
                <i class={styles.shearKey} />
                Toward the edge in shear, A<sub>c,V</sub>
              </dt>
              <dd>{shear.value === null ? '–' : writeQuantity('area', shear.value)}</dd>
            </div>
          </dl>
        </div>
      )}
    </header>
  );
}
