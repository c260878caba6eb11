import type { RejectedInsert } from '../../../../assess/choose/choice.ts';
import { describeReason, groupByText } from '../../../../say/choice-words.ts';
import { showRatio } from '../../../../say/numbers.ts';
import { Table } from '../../../parts/table.tsx';
import { Disclosure } from '../connection/disclosure.tsx';

const GROUPS = [
  { why: 'fails', title: 'fail here' },
  { why: 'not covered', title: 'not covered' },
  { why: 'cannot be computed', title: 'cannot be computed' },
  { why: 'does not fit', title: 'do not fit' },
  { why: 'other role', title: 'made for another role' },
] as const satisfies readonly { readonly why: RejectedInsert['why']; readonly title: string }[];

/** Why the other inserts are not among the ranked: by kind of reason, the nearest to passing first. */
export function RejectedInserts({ rejected }: { readonly rejected: readonly RejectedInsert[] }) {
  const rows = GROUPS.flatMap(({ why, title }) => {
    const those = rejected.filter((insert) => insert.why === why).sort((a, b) => (a.ratio ?? 0) - (b.ratio ?? 0));
    const name = ({ item, ratio }: RejectedInsert) => (why === 'fails' ? `${item.id} (${showRatio(ratio)})` : item.id);
    return groupByText(those.map((insert) => [name(insert), describeReason(insert)])).map(([names, reason]) => ({
      title,
      names,
      reason,
    }));
  });
  if (rows.length === 0) return null;
  return (
    <Disclosure title="Why not the others" hint={`${rejected.length} of the catalogue`} isOpen>
      {() => (
        <Table
          caption="Inserts with which it does not pass"
          rows={rows}
          keyOf={({ names, reason }) => `${names} ${reason}`}
          groupOf={({ title }) => title}
          columns={[
            { head: 'inserts', cell: ({ names }) => names, isName: true },
            { head: 'reason', cell: ({ reason }) => reason },
          ]}
        />
      )}
    </Disclosure>
  );
}
