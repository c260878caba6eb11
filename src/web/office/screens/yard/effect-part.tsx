import { useSignal } from '@preact/signals';
import { Link } from 'wouter-preact';
import type { ListedPiece } from '../../../../assess/yard/list-pieces.ts';
import type { ChangedInsert, RevisionEffect } from '../../../../assess/yard/revision-effect.ts';
import { describeRevisionEffect } from '../../../../assess/yard/revision-effect.ts';
import { indexJob, type JobIndex } from '../../../../job/job-index.ts';
import { writeRuns } from '../../../../say/number-runs.ts';
import { tellCall } from '../../../parts/call.ts';
import { ChoiceField } from '../../../parts/field.tsx';
import { Notice } from '../../../parts/notice.tsx';
import { Section } from '../../../parts/page.tsx';
import { Table } from '../../../parts/table.tsx';
import { addresses } from '../../state/addresses.ts';
import { calls } from '../../state/office-calls.ts';
import type { JobSession } from '../../state/session.ts';
import { useAsked } from '../../state/use-asked.ts';
import styles from './yard.module.css';

/** Values that no letter has. */
const DRAFT = ' draft';
const NOTHING = ' nothing';
/** With more pieces it takes seconds: then a person asks for it. */
const AT_ONCE = 40;

async function openRevision(job: string, letter: string): Promise<JobIndex> {
  const called = await calls.openRevision(job, letter);
  if (called.kind !== 'answered') throw new Error(`Revision ${letter} cannot be opened. ${tellCall(called) ?? ''}`);
  return indexJob(called.value.file);
}

/** Inserts of which the same is said in one go: `no. 1–4, 6 added: F16-103`. */
function tellInserts(inserts: readonly ChangedInsert[]): readonly string[] {
  const saying = new Map<string, number[]>();
  for (const { number, is, what } of inserts) {
    const words = `${is}${what.length === 0 ? '' : `: ${what.join(', ')}`}`;
    saying.set(words, [...(saying.get(words) ?? []), number]);
  }
  return [...saying].map(([words, numbers]) => `no. ${writeRuns(numbers)} ${words}`);
}

function tellWork({ is, isGone, isFormChanged, inserts }: RevisionEffect): string {
  if (isGone) return 'that revision has no such panel';
  if (!isFormChanged && inserts.length === 0) return 'nothing else to do';
  const checks = is === 'in the form' ? ' Only these are open again.' : '';
  const cast = is === 'cast' ? ' It was cast by the other revision: the design engineer decides.' : '';
  return `${[...(isFormChanged ? ['the form itself'] : []), ...tellInserts(inserts)].join('; ')}.${checks}${cast}`;
}

/** What a revision means for each piece: cast, in the form or not started, and which of its inserts are to be others. */
export function EffectPart({
  session,
  letter,
  inForce,
  pieces,
}: {
  readonly session: JobSession;
  /** Of the revision in force. */
  readonly letter: string;
  readonly inForce: JobIndex;
  readonly pieces: readonly ListedPiece[];
}) {
  const issued = session.issued.value;
  const here = issued.findIndex((one) => one.letter === letter);
  const isLater = (other: string) => issued.findIndex((one) => one.letter === other) > here;
  const earlier = issued[here - 1]?.letter ?? null;
  const chosen = useSignal(pieces.length > AT_ONCE ? NOTHING : (earlier ?? DRAFT));
  const { file } = session;
  const phases = pieces.map(({ head, phase }) => `${head.piece} ${head.panelKey} ${phase}`).join();
  const compare = async () => {
    const other = chosen.value === DRAFT ? indexJob(file) : await openRevision(session.id, chosen.value);
    const isAfter = chosen.value === DRAFT || isLater(chosen.value);
    return isAfter ? describeRevisionEffect(inForce, other, pieces) : describeRevisionEffect(other, inForce, pieces);
  };
  const asked = useAsked(chosen.value === NOTHING ? null : compare, [
    session,
    chosen.value,
    inForce,
    chosen.value === DRAFT ? file : null,
    phases,
  ]);
  const touched = asked.value?.filter(
    ({ isGone, isFormChanged, inserts }) => isGone || isFormChanged || inserts.length > 0,
  );
  return (
    <Section
      title="What a revision changes for the pieces"
      lead="Only what the yard has to do otherwise opens again; loads and names do not."
    >
      <div class={styles.bar}>
        <ChoiceField
          label="Changes"
          value={chosen.value}
          options={[
            { value: NOTHING, text: 'not told' },
            ...issued
              .filter((one) => one.letter !== letter)
              .map((one) => ({
                value: one.letter,
                text: isLater(one.letter)
                  ? `from revision ${letter}, in force, to ${one.letter}, ${one.status}`
                  : `from revision ${one.letter} to ${letter}, in force`,
              })),
            { value: DRAFT, text: `from revision ${letter}, in force, to the draft` },
          ]}
          onChange={(value) => {
            chosen.value = value;
            return null;
          }}
        />
      </div>
      {asked.why !== null && <Notice kind="fault">{asked.why}</Notice>}
      {asked.isBusy && asked.value === null && <p aria-busy="true">Comparing …</p>}
      {touched?.length === 0 && <p>It changes nothing that the yard has to do.</p>}
      {touched !== undefined && touched.length > 0 && (
        <Table<RevisionEffect>
          caption="What the revision changes for each piece"
          columns={[
            {
              head: 'piece',
              kind: 'short',
              isName: true,
              cell: ({ head }) => (
                <Link href={addresses.yardPiece(session.id, head.piece)}>
                  {head.mark} no. {head.serial}
                </Link>
              ),
            },
            { head: 'stands', kind: 'short', cell: ({ is }) => is },
            { head: 'what is to be otherwise', kind: 'wide', cell: tellWork },
          ]}
          rows={touched}
          keyOf={({ head }) => head.piece}
        />
      )}
    </Section>
  );
}
