import { useMemo } from 'preact/hooks';
import { Link } from 'wouter-preact';
import type { ConnectionChance } from '../../../../assess/learn/connection-chance.ts';
import type { Learned } from '../../../../assess/learn/learn-scatter.ts';
import { tellChance, tellChanceError, tellNeed, tellTaken } from '../../../../say/learn-words.ts';
import { countOf } from '../../../../say/part-words.ts';
import { Empty, Notice } from '../../../parts/notice.tsx';
import { Page, Section } from '../../../parts/page.tsx';
import { Table } from '../../../parts/table.tsx';
import { useLearned } from '../../../pieces/learn/use-learned.ts';
import { usePieces } from '../../../pieces/use-pieces.ts';
import type { Yard } from '../../../pieces/yard.ts';
import { addresses } from '../../state/addresses.ts';
import { useOffice } from '../../state/office.ts';
import { DeskFrame } from '../yard/desk-frame.tsx';
import styles from './learn.module.css';
import { writeLength } from './learn-names.ts';
import { LeftOut } from './learn-screen.tsx';
import { useChances } from './use-chances.ts';

const WHY: Readonly<Record<NonNullable<ConnectionChance['why']>, string>> = {
  'no plate': 'it has no plate with holes, or an insert without a type: nothing to compute',
  'one bolt': 'a single bolt: the plate always follows its insert',
  'no way of holding': 'of one of its inserts no way of holding is named: choose one, then it can be computed',
};

/** Where scatters are from, each said once. */
function tellScatters({ chance }: ConnectionChance): readonly string[] {
  return [...new Set(chance?.scatter.map((taken) => tellTaken(taken, writeLength)))];
}

function tellHoles({ overBolt, hasSlots }: ConnectionChance): string {
  if (overBolt === null) return '–';
  const [least, most] = overBolt;
  const over = least === most ? writeLength(least) : `${writeLength(least)} to ${writeLength(most)}`;
  return `${over}${hasSlots ? ', with slots' : ''}`;
}

function ChancesTable({
  job,
  rows,
  asked,
}: {
  readonly job: string;
  readonly rows: readonly ConnectionChance[];
  readonly asked: string | null;
}) {
  return (
    <Table<ConnectionChance>
      caption="Chance that a plate goes on first time, the worst first"
      rows={rows}
      keyOf={({ key }) => key}
      groupOf={({ mark }) =>
        asked === null
          ? 'the worst first'
          : mark === asked
            ? 'the one that was asked for'
            : 'all others, the worst first'
      }
      columns={[
        {
          head: 'connection',
          isName: true,
          cell: ({ mark, panel }) => (
            <span class={styles.estimate}>
              <Link href={addresses.connection(job, mark)}>{mark}</Link>
              <span class={styles.interval}>panel {panel}</span>
            </span>
          ),
        },
        { head: 'bolts', kind: 'number', cell: ({ bolts }) => bolts },
        { head: 'holes over bolt now', kind: 'short', cell: tellHoles },
        {
          head: 'goes on first time',
          kind: 'number',
          cell: ({ chance }) =>
            chance === null ? (
              '–'
            ) : (
              <span class={styles.estimate}>
                <strong>{tellChance(chance)}</strong>
                <span class={styles.interval}>{tellChanceError(chance)}</span>
              </span>
            ),
        },
        {
          head: 'for 99 of 100',
          kind: 'short',
          cell: ({ chance }) => (chance === null ? '–' : tellNeed(chance, writeLength)),
        },
        {
          head: 'on one template board',
          kind: 'number',
          cell: ({ onBoard }) => (onBoard === null ? '–' : tellChance(onBoard)),
        },
        {
          head: 'scatter that was taken',
          kind: 'wide',
          cell: (row) =>
            row.why === null ? (
              <ul class={styles.lines}>
                {tellScatters(row).map((line) => (
                  <li key={line}>{line}</li>
                ))}
              </ul>
            ) : (
              WHY[row.why]
            ),
        },
      ]}
    />
  );
}

/** What is asked for first, then the worst; what cannot be computed last. */
function sortWorst(found: readonly ConnectionChance[], asked: string | null): readonly ConnectionChance[] {
  const rank = ({ mark, chance }: ConnectionChance) => (mark === asked ? -1 : (chance?.fits ?? 2));
  return found.toSorted((a, b) => rank(a) - rank(b));
}

function Plates({
  learned,
  asked,
}: {
  readonly learned: Pick<Learned, 'groups'> | null;
  readonly asked: string | null;
}) {
  const { session } = useOffice();
  const { found, done, of, isBusy, why } = useChances(learned, session.file);
  const rows = sortWorst(found, asked);
  const computed = rows.flatMap(({ chance }) => chance ?? []);
  const below = computed.filter(({ fits, target }) => fits < target).length;
  if (why !== null) return <Notice kind="fault">{why}</Notice>;
  return (
    <Section
      title={
        isBusy
          ? 'Computing'
          : `${below} of ${countOf(computed.length, 'plate')} ${below === 1 ? 'is' : 'are'} below 99 of 100`
      }
      lead="The plate may shift and turn. What counts is how the inserts of a connection lie to each other: what moves all of them together takes the plate along. ±: two standard errors of the computing; how well the scatter is known is not in it. Larger holes change strength and bearing: the connection says by how much."
    >
      {isBusy && <p role="status">{of === 0 ? 'Beginning …' : `${done} of ${countOf(of, 'connection')} …`}</p>}
      {rows.length > 0 && <ChancesTable job={session.id} rows={rows} asked={asked} />}
      {!isBusy && rows.length === 0 && (
        <Empty title="No connection yet">
          <p>Add connections to the panels; then the chance of each plate stands here.</p>
          <Link href={addresses.panels(session.id)}>Panels</Link>
        </Empty>
      )}
    </Section>
  );
}

function LearnedPlates({ yard, asked }: { readonly yard: Yard; readonly asked: string | null }) {
  const { pieces, reading } = usePieces(yard);
  const learned = useLearned(reading === 0 ? pieces : null);
  const context = yard.context.value;
  return (
    <>
      {learned === null && <p aria-busy="true">{`Reading what was measured of ${countOf(reading, 'piece')} …`}</p>}
      {learned !== null && context !== null && <LeftOut learned={learned} context={context} />}
      <Plates learned={learned} asked={asked} />
    </>
  );
}

/** Nothing is issued, so that nothing can have been measured. */
function UsualPlates({ asked }: { readonly asked: string | null }) {
  const learned = useMemo(() => ({ groups: [] }), []);
  return (
    <>
      <Notice kind="note" title="Nothing was measured yet">
        No revision is for construction: the scatter of every insert is that of common practice.
      </Notice>
      <Plates learned={learned} asked={asked} />
    </>
  );
}

/** Whether plates go on first time, by the yard's own scatter where it is known. @param asked mark of a connection that stands first */
export function PlatesScreen({ asked }: { readonly asked: string | null }) {
  const { session } = useOffice();
  return (
    <Page
      title="Does the plate go on first time?"
      lead="The chance of every plate of the draft, by how inserts of this yard really scatter, else by common practice, and what would change it: larger holes, or one board for all inserts."
      actions={<Link href={addresses.learned(session.id)}>What the yard learns</Link>}
    >
      <DeskFrame job={session.id} notInForce={() => <UsualPlates asked={asked} />}>
        {(yard) => <LearnedPlates yard={yard} asked={asked} />}
      </DeskFrame>
    </Page>
  );
}
