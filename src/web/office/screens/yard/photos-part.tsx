import { useEffect, useState } from 'preact/hooks';
import type { FactRecord, RecordOf } from '../../../../records/record.ts';
import type { RecordNames } from '../../../../say/record-tellers.ts';
import { tellRecord } from '../../../../say/record-words.ts';
import { Section } from '../../../parts/page.tsx';
import type { Yard } from '../../../pieces/yard.ts';
import { writeMoment } from '../../state/write-moment.ts';
import styles from './yard.module.css';

/** A photo from this device or the server; where neither has it yet, that is said. */
function Photo({
  yard,
  record,
  words,
}: {
  readonly yard: Yard;
  readonly record: RecordOf<'photo'>;
  readonly words: string;
}) {
  const [address, setAddress] = useState<string | null>(null);
  const [isMissing, setMissing] = useState(false);
  const { photo, width, height } = record.body;
  useEffect(() => {
    const state: { address: string | null; isGone: boolean } = { address: null, isGone: false };
    yard.device.openPhoto(photo).then(
      (blob) => {
        if (state.isGone) return;
        if (blob === null) {
          setMissing(true);
          return;
        }
        state.address = URL.createObjectURL(blob);
        setAddress(state.address);
      },
      () => {
        if (!state.isGone) setMissing(true);
      },
    );
    return () => {
      state.isGone = true;
      if (state.address !== null) URL.revokeObjectURL(state.address);
    };
  }, [yard, photo]);
  return (
    <figure class={styles.photo}>
      {address !== null && <img src={address} width={width} height={height} alt={words} loading="lazy" />}
      {isMissing && <p>The photo has not arrived yet: it is still on the tablet, or was never sent.</p>}
      <figcaption>
        {words} <span class={styles.when}>{writeMoment(record.measuredAt)}</span>
      </figcaption>
    </figure>
  );
}

/** Photos of a piece, with what they are of. */
export function PhotosPart({
  yard,
  photos,
  names,
}: {
  readonly yard: Yard;
  readonly photos: readonly FactRecord[];
  readonly names: RecordNames;
}) {
  const own = photos.filter((record) => record.kind === 'photo');
  if (own.length === 0) return null;
  return (
    <Section title="Photos">
      <div class={styles.photos}>
        {own.map((record) => (
          <Photo key={record.id} yard={yard} record={record} words={tellRecord(record, names)} />
        ))}
      </div>
    </Section>
  );
}
