import { useEffect, useState } from 'preact/hooks';
import type { RecordOf } from '../../../records/record.ts';
import { useYard } from '../../pieces/yard.ts';
import styles from './photo-view.module.css';

/** A photo that a record names, from this device or the server; where neither has it, that is said. */
export function PhotoView({ record, words }: { readonly record: RecordOf<'photo'>; readonly words: string }) {
  const { device } = useYard();
  const [shown, setShown] = useState<{ readonly address: string | null; readonly isMissing: boolean }>({
    address: null,
    isMissing: false,
  });
  const { photo, width, height } = record.body;
  useEffect(() => {
    const ending = new AbortController();
    const show = async () => {
      const blob = await device.openPhoto(photo).catch(() => null);
      if (ending.signal.aborted) return;
      const address = blob === null ? null : URL.createObjectURL(blob);
      if (address !== null) ending.signal.addEventListener('abort', () => URL.revokeObjectURL(address), { once: true });
      setShown({ address, isMissing: address === null });
    };
    void show();
    return () => ending.abort();
  }, [device, photo]);
  return (
    <figure class={styles.photo}>
      {shown.address !== null && <img src={shown.address} width={width} height={height} alt={words} />}
      {shown.isMissing && (
        <figcaption>The photo is not here: it is on the tablet that took it, or on the server.</figcaption>
      )}
    </figure>
  );
}
