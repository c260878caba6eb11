import { useEffect } from 'preact/hooks';
import { Modal } from '../../../parts/modal.tsx';
import { BigKey } from '../../parts/big-key.tsx';
import type { CodeJudgement, VoidReason } from './judge-code.ts';
import styles from './void-shout.module.css';
import { sayVoid } from './void-words.ts';

type VoidSheet = Extract<CodeJudgement, { readonly kind: 'void' }>;

/** A shape for each reason, on a field of 100: told apart in grey, and from across the shed. */
const SHAPES: Readonly<Record<VoidReason['why'], string>> = {
  older: 'M31 6h38l25 25v38L69 94H31L6 69V31zM24 24l52 52',
  'not for construction': 'M50 8L95 90H5zM50 38v26M50 74v6',
  'never issued': 'M50 5l45 45-45 45L5 50zM40 40a10 10 0 1 1 10 12v8M50 68v6',
  'other project': 'M8 20h40v44H8zM52 36h40v44H52zM14 92L86 8',
};

export interface VoidShoutProps {
  readonly sheet: VoidSheet;
  /** The deliberate way on; null: the revision in force has no such piece. */
  readonly onGo: (() => void) | null;
  /** On the key of that way. */
  readonly goWords: string;
  readonly goMore: string;
  readonly onAnother: () => void;
}

/** Fills the screen: the sheet in the hand is void. It stays until one of its two keys is chosen. */
export function VoidShout({ sheet, onGo, goWords, goMore, onAnother }: VoidShoutProps) {
  const words = sayVoid(sheet);
  useEffect(() => {
    // Where the device can shake, a hand in a glove feels it.
    navigator.vibrate?.([300, 120, 300, 120, 300]);
  }, []);
  return (
    <Modal
      class={`${styles.shout} ${sheet.reason.why === 'other project' ? styles.other : ''}`}
      role="alertdialog"
      labelledBy="void-head"
      describedBy="void-why"
      onClose={null}
    >
      <div class={styles.band} aria-hidden="true" />
      <svg viewBox="0 0 100 100" class={styles.shape} aria-hidden="true">
        <path d={SHAPES[sheet.reason.why]} />
      </svg>
      <div class={styles.words}>
        <h1 id="void-head" class={styles.head}>
          VOID <span>DO NOT USE</span>
        </h1>
        <p class={styles.sheet}>{words.sheet}</p>
        <p class={styles.now}>{words.now}</p>
        <p id="void-why">{words.why}</p>
        <p>{words.next}</p>
      </div>
      <div class={styles.keys}>
        <BigKey onPress={onAnother}>Scan another sheet</BigKey>
        {onGo !== null && (
          <BigKey onPress={onGo} more={goMore}>
            {goWords}
          </BigKey>
        )}
      </div>
    </Modal>
  );
}
