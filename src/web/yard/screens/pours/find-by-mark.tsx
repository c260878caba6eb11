import { useSignal } from '@preact/signals';
import { places } from '../../../pieces/places.ts';
import { useYard } from '../../../pieces/yard.ts';
import { BigKey, BigLink, KeyRow } from '../../parts/big-key.tsx';
import { YardFrame } from '../../shell/yard-frame.tsx';
import { listHeads } from '../../state/pieces/list-heads.ts';
import { spellMark } from '../../state/pieces/spell-mark.ts';
import styles from './pours-screen.module.css';

/** A piece by what is painted on it: keys only for signs that lead to a mark that exists. */
export function FindByMark({ onBack }: { readonly onBack: () => void }) {
  const yard = useYard();
  const spelled = useSignal('');
  const heads = listHeads(yard);
  const { found, next } = spellMark(
    heads.map(({ mark }) => mark),
    spelled.value,
  );
  const shown = next.length === 0 ? heads.filter(({ mark }) => found.includes(mark)) : [];
  return (
    <YardFrame
      title="Find by mark"
      back={places.pours()}
      onBack={onBack}
      keys={
        <>
          <BigKey isDisabled={spelled.value === ''} onPress={() => (spelled.value = '')}>
            From the start
          </BigKey>
          <BigKey kind="main" onPress={onBack}>
            Back
          </BigKey>
        </>
      }
    >
      <p class={styles.spelled} aria-live="polite">
        {spelled.value === '' ? '…' : `${spelled.value}…`}
      </p>
      {next.length > 0 && (
        <KeyRow>
          {next.map((start) => (
            <BigKey key={start} onPress={() => (spelled.value = start)}>
              {start}
            </BigKey>
          ))}
        </KeyRow>
      )}
      <div class={styles.pours}>
        {shown.map(({ piece, mark, serial, pour }) => (
          <BigLink key={piece} to={places.piece(piece)} more={pour === null ? 'in no pour' : `pour ${pour}`}>
            {mark} no. {serial}
          </BigLink>
        ))}
      </div>
    </YardFrame>
  );
}
