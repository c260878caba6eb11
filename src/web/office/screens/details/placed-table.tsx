import { Link } from 'wouter-preact';
import { listLocalOverrides } from '../../../../job/details/local-overrides.ts';
import type { Connection } from '../../../../job/documents/connection.ts';
import { indexJob } from '../../../../job/job-index.ts';
import { StateMark } from '../../../parts/state-mark.tsx';
import { Table } from '../../../parts/table.tsx';
import { addresses } from '../../state/addresses.ts';
import { useOffice } from '../../state/office.ts';

/** Where a detail is placed, panel by panel, and what is other than it there. */
export function PlacedTable({ placed }: { readonly placed: readonly Connection[] }) {
  const { session, answers } = useOffice();
  if (placed.length === 0) return <p>It is not placed yet. On a panel, place a connection and choose this detail.</p>;
  const index = indexJob(session.shown.value);
  return (
    <Table
      caption="Where it is placed"
      rows={placed}
      keyOf={({ key }) => key}
      groupOf={({ panel }) => `panel ${panel}`}
      columns={[
        {
          head: 'connection',
          cell: ({ mark }) => <Link href={addresses.connection(session.id, mark)}>{mark}</Link>,
          isName: true,
        },
        { head: 'answer', cell: ({ key }) => <StateMark state={answers.byKey.value.get(key)?.state ?? 'computing'} /> },
        {
          head: 'other than the detail, or beyond it',
          cell: (connection) =>
            listLocalOverrides(index, connection)
              .map(({ words }) => words)
              .join('; ') || 'as the detail',
          kind: 'wide',
        },
      ]}
    />
  );
}
