import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { writeDay } from '../../../parts/day-field.tsx';
import { places } from '../../../pieces/places.ts';
import { useYard } from '../../../pieces/yard.ts';
import { Answer } from '../../parts/answer.tsx';
import { BigKey, BigLink } from '../../parts/big-key.tsx';
import { YardFrame } from '../../shell/yard-frame.tsx';
import { type ListedPour, listPours } from '../../state/pieces/list-pours.ts';
import { FindByMark } from './find-by-mark.tsx';
import styles from './pours-screen.module.css';

/** What is cast when, on which bed. */
export function PoursScreen() {
  const yard = useYard();
  const isFinding = useSignal(false);
  const ids = [...yard.planned.value.keys(), ...yard.device.knownPieces.value];
  const known = ids.join(' ');
  useEffect(() => {
    void yard.device.openPieces(known === '' ? [] : known.split(' '));
  }, [yard, known]);
  if (isFinding.value) return <FindByMark onBack={() => (isFinding.value = false)} />;
  const pours = listPours(yard);
  const days = [...new Set(pours.map(({ date }) => date))];
  return (
    <YardFrame
      title="Pours"
      stage={yard.device.job.value?.name ?? ''}
      back={places.start()}
      keys={
        <>
          <BigKey onPress={() => (isFinding.value = true)} isDisabled={ids.length === 0}>
            Find by mark
          </BigKey>
          <BigLink kind="main" isTall to={places.scan()} more="its code opens the piece">
            Scan a sheet
          </BigLink>
        </>
      }
    >
      {yard.context.value === null ? (
        <Answer kind="unsure" words="No revision for construction is on this device">
          <p>Go back and choose the job, or have it issued in the office.</p>
        </Answer>
      ) : (
        pours.length === 0 && (
          <Answer kind="plain" words="No pour is planned">
            <p>In the office: Pours, add a pour with its bed, day and panels, then issue the revision.</p>
          </Answer>
        )
      )}
      {days.map((day) => (
        <section key={day ?? ''} class={styles.day}>
          <h2>{day === null ? 'In no pour' : writeDay(day)}</h2>
          <div class={styles.pours}>
            {pours.map((pour) => pour.date === day && <PourKey key={pour.id ?? ''} pour={pour} />)}
          </div>
        </section>
      ))}
    </YardFrame>
  );
}

function PourKey({ pour: { id, bedName, pieces, begun, poured } }: { readonly pour: ListedPour }) {
  const more = [
    bedName,
    `${pieces.length} ${pieces.length === 1 ? 'piece' : 'pieces'}`,
    `${begun} begun`,
    `${poured} poured`,
  ].join(' · ');
  return (
    <BigLink to={places.pour(id ?? NO_POUR)} more={more}>
      {id ?? 'Pieces that no pour plans'}
    </BigLink>
  );
}

/** In the address of pieces without a pour; no pour is called so. */
export const NO_POUR = '~';
