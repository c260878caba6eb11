import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { writeDay } from '../../../parts/day-field.tsx';
import { places } from '../../../pieces/places.ts';
import { useYard } from '../../../pieces/yard.ts';
import { Answer } from '../../parts/answer.tsx';
import { BigKey, BigLink } from '../../parts/big-key.tsx';
import { YardFrame } from '../../shell/yard-frame.tsx';
import { listPours } from '../../state/pieces/list-pours.ts';
import { FindByMark } from '../pours/find-by-mark.tsx';
import { NO_POUR } from '../pours/pours-screen.tsx';
import { PieceRow } from './piece-row.tsx';
import { PourFacts } from './pour-facts.tsx';
import styles from './pour-screen.module.css';

/** One pour: every piece with what holds it, and who can lift that. */
export function PourScreen({ pour }: { readonly pour: string }) {
  const yard = useYard();
  const isFinding = useSignal(false);
  const listed = listPours(yard).find(({ id }) => (id ?? NO_POUR) === pour);
  const ids = listed?.pieces.map(({ piece }) => piece).join(' ') ?? '';
  useEffect(() => {
    if (ids !== '') void yard.device.openPieces(ids.split(' '));
  }, [yard, ids]);
  if (isFinding.value) return <FindByMark onBack={() => (isFinding.value = false)} />;
  const head = listed?.date === null || listed === undefined ? '' : `${writeDay(listed.date)} · ${listed.bedName}`;
  return (
    <YardFrame
      title={pour === NO_POUR ? 'Pieces in no pour' : `Pour ${pour}`}
      stage={head}
      back={places.pours()}
      keys={
        <>
          <BigKey onPress={() => (isFinding.value = true)}>Find by mark</BigKey>
          <BigLink kind="main" isTall to={places.scan()} more="its code opens the piece">
            Scan a sheet
          </BigLink>
        </>
      }
    >
      {listed === undefined ? (
        <Answer kind="unsure" words="This pour is not in the revision in force">
          <p>Pieces that were begun are under “In no pour”.</p>
        </Answer>
      ) : (
        <>
          <PourFacts pour={listed.id} pieces={listed.pieces} />
          <ul class={styles.pieces}>
            {listed.pieces.map(({ piece }) => (
              <PieceRow key={piece} id={piece} />
            ))}
          </ul>
        </>
      )}
    </YardFrame>
  );
}
