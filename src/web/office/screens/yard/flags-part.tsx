import { Link } from 'wouter-preact';
import type { ListedPiece } from '../../../../assess/yard/list-pieces.ts';
import type { AsideRecord } from '../../../../wire/records.ts';
import { Notice } from '../../../parts/notice.tsx';
import { Section } from '../../../parts/page.tsx';
import type { OpenPiece } from '../../../pieces/read-piece.ts';
import type { DeviceJob } from '../../../records/record-device.ts';
import { addresses } from '../../state/addresses.ts';
import { writeMoment } from '../../state/write-moment.ts';
import { tellFlag } from './tell-flag.ts';
import styles from './yard.module.css';

/** Texts that came as records and are none, or of an id that stands for other bytes. */
function Asides({ asides }: { readonly asides: readonly AsideRecord[] }) {
  return (
    <details>
      <summary>What was kept aside</summary>
      <ul class={styles.points}>
        {asides.map(({ id, why, at, text }) => (
          <li key={`${id} ${at} ${text.length}`}>
            {writeMoment(at)}: {id ?? 'a text without an id'}: {why}
          </li>
        ))}
      </ul>
    </details>
  );
}

/** Everything that must not be overlooked, of all pieces, before anything else on the screen. */
export function FlagsPart({
  job,
  pieces,
  of,
  listed,
}: {
  readonly job: string;
  readonly pieces: readonly OpenPiece[];
  readonly of: DeviceJob;
  readonly listed: readonly ListedPiece[];
}) {
  const flagged = pieces.filter(({ report }) => report.flags.length > 0);
  const { asides, forks } = of;
  const doubled = new Set(
    listed.flatMap(({ head, sameMark }) => (sameMark.length === 0 ? [] : [`${head.mark} no. ${head.serial}`])),
  );
  if (flagged.length === 0 && doubled.size === 0 && asides.length === 0 && forks.length === 0) return null;
  return (
    <Section title="Not to be overlooked">
      {flagged.map(({ id, head, report }) => (
        <Notice key={id} kind="fault" title={`${head.mark} no. ${head.serial}`}>
          <ul class={styles.points}>
            {report.flags.map((flag) => (
              <li key={tellFlag(flag)}>{tellFlag(flag)}</li>
            ))}
          </ul>
          <Link href={addresses.yardPiece(job, id)}>
            Open {head.mark} no. {head.serial}
          </Link>
        </Notice>
      ))}
      {[...doubled].map((name) => (
        <Notice key={name} kind="fault" title={`Two pieces go by ${name}`}>
          One of them is marked wrong: find out which, and mark it anew on the tablet. Their records stay apart.
        </Notice>
      ))}
      {forks.map(({ device, number }) => (
        <Notice key={`${device} ${number}`} kind="fault" title="A tablet was copied or put back">
          Device {device} wrote two texts under its number {number}. Both are kept; the tablet goes on under a new name.
          Look at what it recorded from there on.
        </Notice>
      ))}
      {asides.length > 0 && (
        <Notice
          kind="fault"
          title={`${asides.length === 1 ? '1 text was' : `${asides.length} texts were`} kept aside: no record, or an id with other bytes`}
        >
          <Asides asides={asides} />
        </Notice>
      )}
    </Section>
  );
}
