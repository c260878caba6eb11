import { useSignal } from '@preact/signals';
import { Link } from 'wouter-preact';
import type { Grouping, Learned } from '../../../../assess/learn/learn-scatter.ts';
import type { YardContext } from '../../../../assess/yard/piece-report.ts';
import { tellLeftOut } from '../../../../say/learn-words.ts';
import { countOf } from '../../../../say/part-words.ts';
import { Empty, Notice } from '../../../parts/notice.tsx';
import { Page } from '../../../parts/page.tsx';
import { useLearned } from '../../../pieces/learn/use-learned.ts';
import { usePieces } from '../../../pieces/use-pieces.ts';
import type { Yard } from '../../../pieces/yard.ts';
import { addresses } from '../../state/addresses.ts';
import { useOffice } from '../../state/office.ts';
import { DeskFrame } from '../yard/desk-frame.tsx';
import { GroupsPart, keyOfGroup } from './groups-part.tsx';
import { namesOf } from './learn-names.ts';
import { PicturesPart } from './pictures-part.tsx';

/** What was left out, in words with the names of people. */
export function LeftOut({ learned, context }: { readonly learned: Learned; readonly context: YardContext }) {
  const names = namesOf(context.index, context.people);
  const lines = tellLeftOut(learned, (id) => names.person(id) ?? 'somebody whose name is not here');
  if (lines.length === 0) return null;
  return (
    <Notice kind="note" title="Readings that look copied are not learned from">
      {lines.map((line) => (
        <p key={line}>{line}</p>
      ))}
    </Notice>
  );
}

function Groups({ learned, context }: { readonly learned: Learned; readonly context: YardContext }) {
  const by = useSignal<Grouping>('method');
  const chosen = useSignal<string | null>(null);
  const names = namesOf(context.index, context.people);
  const groups = learned.groups.filter((group) => group.by === by.value);
  const shown =
    groups.find((group) => keyOfGroup(group) === chosen.value) ?? groups.toSorted((a, b) => b.count - a.count)[0];
  return (
    <>
      <GroupsPart
        groups={groups}
        by={by.value}
        shown={shown === undefined ? null : keyOfGroup(shown)}
        names={names}
        onGrouping={(one) => {
          by.value = one;
        }}
        onShow={(key) => {
          chosen.value = key;
        }}
      />
      {shown !== undefined && <PicturesPart group={shown} names={names} />}
    </>
  );
}

function LearnOpen({ job, yard }: { readonly job: string; readonly yard: Yard }) {
  const { pieces, reading } = usePieces(yard);
  const learned = useLearned(reading === 0 ? pieces : null);
  const context = yard.context.value;
  return (
    <Page
      title="What the yard learns"
      lead="How far inserts came out from where they were designed, from every reading and survey that counts: what causes it, and what it does to plates that are still to go on."
      actions={<Link href={addresses.plates(job)}>Do the plates go on first time?</Link>}
    >
      {learned === null || context === null ? (
        <p aria-busy="true">{reading > 0 ? `Reading ${countOf(reading, 'piece')} …` : 'Putting readings together …'}</p>
      ) : (
        <>
          <LeftOut learned={learned} context={context} />
          {learned.groups.length === 0 ? (
            <Empty title="Nothing was measured yet that counts">
              <p>
                Tape inserts on the yard tablet, or read a survey of a hard panel in at its piece. Ten of one kind give
                a first scatter.
              </p>
              <Link href={addresses.yard(job)}>Pieces in the yard</Link>
            </Empty>
          ) : (
            <Groups learned={learned} context={context} />
          )}
        </>
      )}
    </Page>
  );
}

/** Scatter and bias of the yard, from its own records. */
export function LearnScreen() {
  const { session } = useOffice();
  return <DeskFrame job={session.id}>{(yard) => <LearnOpen job={session.id} yard={yard} />}</DeskFrame>;
}
