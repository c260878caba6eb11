import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { useLocation } from 'wouter-preact';
import { places } from '../../../pieces/places.ts';
import { useYard } from '../../../pieces/yard.ts';
import { BigKey } from '../../parts/big-key.tsx';
import { FrameKeys } from '../../parts/frame-keys.tsx';
import { listHeads } from '../../state/pieces/list-heads.ts';
import { spellMark } from '../../state/pieces/spell-mark.ts';
import styles from './piece-choice.module.css';

/** The pieces of a mark, a key each; scrapped ones too: somebody may stand before one. */
export function SerialChoice({ mark, onBack }: { readonly mark: string; readonly onBack: () => void }) {
  const yard = useYard();
  const [, go] = useLocation();
  const { device } = yard;
  useEffect(() => {
    void device.openPieces(device.knownPieces.value);
  }, [device, device.knownPieces.value]);
  const heads = listHeads(yard).filter((head) => head.mark === mark);
  return (
    <section class={styles.choice} aria-labelledby="which-piece">
      <h2 id="which-piece">Which {mark}? The number painted on the piece, or on its bench label</h2>
      {heads.length === 0 && (
        <p>
          No pour plans a piece of {mark}, and no record names one. Ask the office to plan it, or begin it from another
          casting of the mark.
        </p>
      )}
      <div class={styles.keys}>
        {heads.map((head) => (
          <BigKey
            key={head.piece}
            onPress={() => go(places.piece(head.piece))}
            more={head.pour === null ? 'in no pour' : `pour ${head.pour}`}
          >
            no. {head.serial}
          </BigKey>
        ))}
      </div>
      <FrameKeys>
        <BigKey onPress={onBack}>Back</BigKey>
      </FrameKeys>
    </section>
  );
}

/** Names a piece by its mark: keys only for signs that lead to a mark that exists. */
export function MarkChoice({
  onMark,
  onBack,
}: {
  readonly onMark: (mark: string) => void;
  readonly onBack: () => void;
}) {
  const spelled = useSignal('');
  const marks = useYard().context.value?.index.file.job.panels.map(({ mark }) => mark) ?? [];
  const { next, found } = spellMark(marks, spelled.value);
  return (
    <section class={styles.choice} aria-labelledby="which-mark">
      <h2 id="which-mark">
        Mark: <output class={styles.typed}>{spelled.value === '' ? '…' : spelled.value}</output>
      </h2>
      <div class={styles.keys}>
        {/* A mark that others begin with has a key of its own beside theirs. */}
        {(next.length === 0 ? found : found.filter((mark) => mark === spelled.value)).map((mark) => (
          <BigKey key={mark} onPress={() => onMark(mark)}>
            {mark}
          </BigKey>
        ))}
        {next.map((start) => (
          <BigKey key={start} onPress={() => (spelled.value = start)}>
            {start} …
          </BigKey>
        ))}
      </div>
      <FrameKeys>
        {spelled.value === '' ? (
          <BigKey onPress={onBack}>Back</BigKey>
        ) : (
          <BigKey onPress={() => (spelled.value = '')}>From the start</BigKey>
        )}
      </FrameKeys>
    </section>
  );
}
