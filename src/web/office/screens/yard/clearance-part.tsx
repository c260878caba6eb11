import type { OpenPoint } from '../../../../assess/yard/piece-report.ts';
import { gatherPoints, LIFTER_WORDS } from '../../../../say/piece-words.ts';
import { Notice } from '../../../parts/notice.tsx';
import { Section } from '../../../parts/page.tsx';
import { Table } from '../../../parts/table.tsx';
import type { ClearanceFacts } from './clearance-facts.ts';
import styles from './yard.module.css';

/** What was decided about pouring, on what, and what stands against it now. */
export function ClearancePart({
  clearance,
  openPoints,
}: {
  readonly clearance: ClearanceFacts | null;
  readonly openPoints: readonly OpenPoint[];
}) {
  return (
    <Section
      title="Clearance"
      lead="QA clears on the tablet, in front of the form. What it was given on is kept with it."
    >
      {clearance === null ? (
        <p>Nobody has cleared or held this piece.</p>
      ) : (
        <>
          <p>
            <strong>{clearance.words}</strong>
          </p>
          <dl class={styles.facts}>
            {clearance.facts.map(({ name, value }) => [
              <dt key={name}>{name}</dt>,
              <dd key={`${name} is`}>{value}</dd>,
            ])}
          </dl>
          {clearance.open.length > 0 && (
            <Notice kind="note" title="Open when it was given">
              <ul class={styles.points}>
                {clearance.open.map((words) => (
                  <li key={words}>{words}</li>
                ))}
              </ul>
            </Notice>
          )}
        </>
      )}
      {openPoints.length > 0 && (
        <Table<ReturnType<typeof gatherPoints>[number]>
          caption="What is open"
          columns={[
            { head: 'what is open', kind: 'wide', cell: ({ words }) => words },
            { head: 'lifted by', kind: 'short', cell: ({ liftedBy }) => LIFTER_WORDS[liftedBy] },
            {
              head: 'on a condition',
              kind: 'short',
              cell: ({ isHard }) => (isHard ? 'no: only on an override' : 'may be'),
            },
          ]}
          rows={gatherPoints(openPoints)}
          keyOf={({ words }) => words}
        />
      )}
    </Section>
  );
}
