import { showRatio } from '../../../../say/numbers.ts';
import { nameMode } from '../../../../say/words.ts';
import { Notice } from '../../../parts/notice.tsx';
import { StateMark } from '../../../parts/state-mark.tsx';
import { Table } from '../../../parts/table.tsx';
import { useOffice } from '../../state/office.ts';
import { useAsked } from '../../state/use-asked.ts';
import { askEditions } from './connection-client.ts';

/** The same connection by every edition, side by side; the job keeps the standard of its rules. */
export function EditionsPart({ mark }: { readonly mark: string }) {
  const { file } = useOffice().session;
  const { value, why } = useAsked(() => askEditions(mark), [mark, file]);
  if (why !== null) return <Notice kind="fault">{why}</Notice>;
  if (value === null) return <p aria-busy="true">Computing by each edition …</p>;
  const { standards, answers, modes } = value;
  return (
    <>
      <p>Loads stay as they are given: they are factored by the code of the job. {standards[0]} is the job's own.</p>
      <Table
        caption="The answer by each edition"
        rows={standards.map((standard, k) => ({ standard, answer: answers[k]! }))}
        keyOf={({ standard }) => standard}
        columns={[
          { head: 'edition', cell: ({ standard }) => standard, isName: true },
          { head: 'answer', cell: ({ answer }) => <StateMark state={answer.state} /> },
          { head: 'used', cell: ({ answer }) => showRatio(answer.ratio), kind: 'number' },
          {
            head: 'governs',
            cell: ({ answer }) =>
              answer.governing === null ? '–' : `${nameMode(answer.governing.mode)} (${answer.governing.combination})`,
            kind: 'wide',
          },
        ]}
      />
      <Table
        caption="Ways to fail by each edition"
        rows={modes}
        keyOf={({ mode }) => mode}
        columns={[
          { head: 'largest ratio of', cell: ({ mode }) => nameMode(mode), isName: true },
          ...standards.map((standard, k) => ({
            head: standard,
            cell: ({ ratios }: (typeof modes)[number]) => showRatio(ratios[k] ?? null),
            kind: 'number' as const,
          })),
        ]}
      />
    </>
  );
}
