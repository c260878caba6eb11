import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { useLocation } from 'wouter-preact';
import { findHead, type PieceHead } from '../../../../assess/yard/piece-head.ts';
import { BigKey, KeyRow } from '../../parts/big-key.tsx';
import { places } from '../../state/places.ts';
import { useYard, type Yard } from '../../state/yard.ts';
import { countMarks, narrowMarks } from './narrow-marks.ts';
import styles from './piece-choice.module.css';

/** Pieces that a pour plans or a record names, as they are marked now; scrapped ones too: somebody may stand before one. */
function listHeads({ device, planned }: Yard): readonly PieceHead[] {
  const ids = new Set([...planned.value.keys(), ...device.knownPieces.value]);
  return [...ids].flatMap((id) => findHead(device.piece(id).value, planned.value.get(id) ?? null) ?? []);
}

const bySerial = (a: PieceHead, b: PieceHead) => a.serial.localeCompare(b.serial, 'en', { numeric: true });

/** The pieces of a mark, a key each. */
export function SerialChoice({ mark, onBack }: { readonly mark: string; readonly onBack: () => void }) {
  const yard = useYard();
  const [, go] = useLocation();
  const { device } = yard;
  useEffect(() => {
    void device.openPieces(device.knownPieces.value);
  }, [device, device.knownPieces.value]);
  const heads = listHeads(yard)
    .filter((head) => head.mark === mark)
    .sort(bySerial);
  return (
    <section class={styles.choice} aria-labelledby="which-piece">
      <h2 id="which-piece">Which {mark}? The number painted on the piece, or on its bench label</h2>
      {heads.length === 0 && (
        <p>
          No pour plans a piece of {mark}, and no record names one. Begin it on the screen of its pour: “another casting
          of this mark”.
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
      <KeyRow>
        <BigKey onPress={onBack}>Back</BigKey>
      </KeyRow>
    </section>
  );
}

/** Names a piece by its mark: only what is painted on some panel can be typed, a key a sign, until one is left. */
export function MarkChoice({
  onMark,
  onBack,
}: {
  readonly onMark: (mark: string) => void;
  readonly onBack: () => void;
}) {
  const typed = useSignal('');
  const marks = useYard().context.value?.index.file.job.panels.map(({ mark }) => mark) ?? [];
  const { next, found } = narrowMarks(marks, typed.value);
  return (
    <section class={styles.choice} aria-labelledby="which-mark">
      <h2 id="which-mark">
        Mark: <output class={styles.typed}>{typed.value === '' ? '…' : typed.value}</output>
      </h2>
      <p>{countMarks(found.length)}</p>
      {found.length <= 12 ? (
        <div class={styles.keys}>
          {found.map((mark) => (
            <BigKey key={mark} onPress={() => onMark(mark)}>
              {mark}
            </BigKey>
          ))}
        </div>
      ) : (
        <div class={styles.keys}>
          {found.includes(typed.value) && <BigKey onPress={() => onMark(typed.value)}>{typed.value}</BigKey>}
          {next.map((sign) => (
            <BigKey key={sign} onPress={() => (typed.value += sign)}>
              {typed.value}
              {sign} …
            </BigKey>
          ))}
        </div>
      )}
      <KeyRow>
        {typed.value === '' ? (
          <BigKey onPress={onBack}>Back</BigKey>
        ) : (
          <BigKey onPress={() => (typed.value = '')}>Start again</BigKey>
        )}
      </KeyRow>
    </section>
  );
}
