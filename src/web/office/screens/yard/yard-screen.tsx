import { listPieces } from '../../../../assess/yard/list-pieces.ts';
import type { Pour } from '../../../../job/documents/pour.ts';
import { countOf } from '../../../../say/part-words.ts';
import { writeDay } from '../../../parts/day-field.tsx';
import { Empty, Notice } from '../../../parts/notice.tsx';
import { Page, Section } from '../../../parts/page.tsx';
import type { OpenPiece } from '../../../pieces/read-piece.ts';
import { usePieces } from '../../../pieces/use-pieces.ts';
import type { Yard } from '../../../pieces/yard.ts';
import { addresses } from '../../state/addresses.ts';
import { useOffice } from '../../state/office.ts';
import type { JobSession } from '../../state/session.ts';
import { JobPullsPart } from '../bolt-up/job-pulls-part.tsx';
import { DeskFrame } from './desk-frame.tsx';
import { EffectPart } from './effect-part.tsx';
import { FlagsPart } from './flags-part.tsx';
import { HitsPart } from './hits-part.tsx';
import { PourPieces } from './pour-pieces.tsx';
import { WhoWorks } from './who-works.tsx';
import styles from './yard.module.css';

/** A pour in a line: its day, its bed, and how many of its pieces are how far. */
function tellPour({ date, bed }: Pour, beds: ReadonlyMap<string, string>, pieces: readonly OpenPiece[]): string {
  const counts = new Map<string, number>();
  for (const { report } of pieces) counts.set(report.phase, (counts.get(report.phase) ?? 0) + 1);
  const stand = [...counts].map(([phase, count]) => `${count} ${phase}`).join(', ');
  return `${writeDay(date)}, ${beds.get(bed) ?? bed}${stand === '' ? '' : `: ${stand}`}`;
}

function Pours({
  job,
  pours,
  pieces,
}: {
  readonly job: string;
  readonly pours: readonly Pour[];
  readonly pieces: readonly OpenPiece[];
}) {
  const { session } = useOffice();
  const beds = new Map(session.shown.value.library.yard.beds.map(({ id, name }) => [id, name]));
  const planned = new Set(pours.map(({ id }) => id));
  const others = pieces.filter(({ head }) => head.pour === null || !planned.has(head.pour));
  return (
    <>
      {pours.map((pour) => {
        const own = pieces.filter(({ head }) => head.pour === pour.id);
        if (own.length === 0) return null;
        return (
          <Section key={pour.id} title={`Pour ${pour.id}`} lead={tellPour(pour, beds, own)}>
            <PourPieces job={job} caption={`Pieces of pour ${pour.id}`} pieces={own} />
          </Section>
        );
      })}
      {others.length > 0 && (
        <Section
          title="In no pour"
          lead="Begun in the yard, or marked anew; no pour of the revision in force plans them."
        >
          <PourPieces job={job} caption="Pieces in no pour" pieces={others} />
        </Section>
      )}
    </>
  );
}

function YardOpen({
  session,
  yard,
  letter,
}: {
  readonly session: JobSession;
  readonly yard: Yard;
  readonly letter: string;
}) {
  const job = session.id;
  const of = yard.device.job.value;
  const context = yard.context.value;
  const { pieces: unsorted, absent, reading } = usePieces(yard);
  if (of === null || context === null) return null;
  const listed = listPieces(job, context.index, new Map(unsorted.map(({ id, state }) => [id, state])));
  const byId = new Map(unsorted.map((piece) => [piece.id, piece]));
  const pieces = listed.flatMap(({ head }) => byId.get(head.piece) ?? []);
  const { pours } = context.index.file.job;
  return (
    <Page
      title="Yard"
      lead={`What was checked, decided and poured of each piece, by revision ${letter}, which is in force. It follows the tablets every few seconds; what a tablet has not sent yet cannot be here.`}
      actions={
        // A page of its own, made for wet gloves.
        <a href={addresses.tablet()}>Yard tablet</a>
      }
    >
      <WhoWorks yard={yard} />
      <FlagsPart job={job} pieces={pieces} of={of} listed={listed} />
      {reading > 0 && <p aria-busy="true">{`Reading ${countOf(reading, 'piece')} …`}</p>}
      {pieces.length === 0 && reading === 0 ? (
        <Empty title="No pour has a piece yet">
          <p>Plan the pours of the job and issue it for construction; then its pieces stand here and on the tablets.</p>
        </Empty>
      ) : (
        <Pours job={job} pours={pours} pieces={pieces} />
      )}
      {reading === 0 && <EffectPart session={session} letter={letter} inForce={context.index} pieces={listed} />}
      {reading === 0 && <JobPullsPart pieces={pieces} />}
      {reading === 0 && <HitsPart pieces={pieces} people={context.people} />}
      {absent.map(({ id, why }) => (
        <Notice key={id} kind="fault" title="A piece that records name cannot be shown">
          {why}
        </Notice>
      ))}
      <p class={styles.when}>
        Records are facts and stay as they are; a slip is withdrawn by another record, and both are kept.
      </p>
    </Page>
  );
}

/** The yard as the office sees it: every piece, what must not be overlooked first. */
export function YardScreen() {
  const { session } = useOffice();
  return (
    <DeskFrame job={session.id}>
      {(yard, letter) => <YardOpen session={session} yard={yard} letter={letter} />}
    </DeskFrame>
  );
}
