import { useSignal } from '@preact/signals';
import type { Combination } from '../../../../job/documents/connection.ts';
import { Button } from '../../../parts/button.tsx';
import { Dialog } from '../../../parts/dialog.tsx';
import { unitOf } from '../../../parts/units.ts';
import styles from './loads-part.module.css';
import { readPastedLoads } from './read-pasted-loads.ts';

/** Rows of a spreadsheet are pasted, looked at, and taken whole or not at all. */
export function PasteDialog({
  text,
  onTake,
  onClose,
}: {
  readonly text: string;
  /** A text: why they may not be so. */
  readonly onTake: (rows: readonly Combination[], replaces: boolean) => string | null;
  readonly onClose: () => void;
}) {
  const typed = useSignal(text);
  const refused = useSignal<string | null>(null);
  const { rows, faults } = readPastedLoads(typed.value);
  const isReady = rows.length > 0 && faults.length === 0;
  const take = (replaces: boolean) => {
    refused.value = onTake(rows, replaces);
    if (refused.value === null) onClose();
  };
  return (
    <Dialog
      title="Loads from a spreadsheet"
      isWide
      onClose={onClose}
      foot={
        <>
          <Button isDisabled={!isReady} onPress={() => take(false)}>
            Add {rows.length} rows
          </Button>
          <Button kind="main" isDisabled={!isReady} onPress={() => take(true)}>
            Replace all loads
          </Button>
        </>
      }
    >
      <label for="pasted-loads">
        Columns: name, N, Vx, Vy in {unitOf('force')}, then Mx, My, T in {unitOf('moment')}; those at the end may be
        left out. Design (factored) values.
      </label>
      <textarea
        id="pasted-loads"
        class={styles.text}
        value={typed.value}
        onInput={(event) => {
          typed.value = event.currentTarget.value;
        }}
      />
      {(faults.length > 0 || refused.value !== null) && (
        <ul class={styles.faults} role="alert">
          {[...faults, ...(refused.value === null ? [] : [refused.value])].map((fault) => (
            <li key={fault}>{fault}</li>
          ))}
        </ul>
      )}
      <p role="status">{rows.length} rows can be read.</p>
    </Dialog>
  );
}
