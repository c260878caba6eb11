import { useSignal } from '@preact/signals';
import type { Fault } from '../../../../job/fault.ts';
import { countOf } from '../../../../say/part-words.ts';
import { Button } from '../../../parts/button.tsx';
import { FaultTable } from '../../../parts/fault-table.tsx';
import { ChooseFiles, FileDrop } from '../../../parts/files.tsx';
import { Notice } from '../../../parts/notice.tsx';
import { Section } from '../../../parts/page.tsx';
import { askJobWorker } from '../../../parts/worker-client.ts';
import { tell } from '../../state/messages.ts';
import { tellError } from '../../state/use-asked.ts';
import styles from './parts.module.css';
import { type KeptStock, keepStock } from './stock-store.ts';

/** Takes the yard's stock list and says what of it is wrong. */
export function StockBlock({
  job,
  stock,
  onStock,
}: {
  readonly job: string;
  readonly stock: KeptStock | null;
  readonly onStock: (stock: KeptStock | null) => void;
}) {
  const refused = useSignal<{ readonly name: string; readonly faults: readonly Fault[] } | null>(null);
  const take = async ([file]: readonly File[]) => {
    if (file === undefined) return;
    try {
      const content = await file.text();
      const read = await askJobWorker(async (worker) => worker.readStock(file.name, content));
      if (!read.ok) {
        refused.value = { name: file.name, faults: read.faults };
        return;
      }
      refused.value = null;
      const kept = { name: file.name, readAt: new Date().toISOString(), rows: [...read.rows] };
      if (!keepStock(job, kept))
        tell('fault', 'This device has no room for the stock list: it counts until the page is left.');
      onStock(kept);
    } catch (error) {
      tell('fault', `${file.name} was not read: ${tellError(error)}`);
    }
  };
  const choose = (files: readonly File[]) => void take(files);
  return (
    <Section
      title="Stock of the yard"
      lead="A CSV file with the columns id, in_stock, on_order and arrives (YYYY-MM-DD). It stays on this device and is no part of the job."
      actions={
        <>
          <ChooseFiles accept=".csv,.txt" onFiles={choose}>
            {stock === null ? 'Choose a stock list' : 'Choose another'}
          </ChooseFiles>
          {stock !== null && (
            <Button
              onPress={() => {
                keepStock(job, null);
                onStock(null);
              }}
            >
              Count without it
            </Button>
          )}
        </>
      }
    >
      <FileDrop words="Let go: read as the stock of the yard" onFiles={choose} />
      {stock !== null && (
        <p class={styles.known}>
          <strong>{stock.name}</strong>, {countOf(stock.rows.length, 'row')}, read{' '}
          {new Date(stock.readAt).toLocaleString([], { dateStyle: 'medium', timeStyle: 'short' })}
        </p>
      )}
      {refused.value !== null && (
        <>
          <Notice
            kind="fault"
            title={`${refused.value.name}: ${countOf(refused.value.faults.length, 'fault')}, nothing was read`}
          >
            Put right in the file what is listed, save it, and choose it again.
          </Notice>
          <FaultTable caption={`What is wrong in ${refused.value.name}`} faults={refused.value.faults} />
        </>
      )}
    </Section>
  );
}
