import { useSignal } from '@preact/signals';
import type { InsertReport } from '../../../../assess/yard/piece-report.ts';
import { describeFace, describeType } from '../../../../drawing/sheets/words.ts';
import { Button } from '../../../parts/button.tsx';
import { Section } from '../../../parts/page.tsx';
import { type Column, Table } from '../../../parts/table.tsx';
import { writeQuantity } from '../../../parts/units.ts';
import { listDecidable } from '../../../pieces/decide.ts';
import { factOf } from '../../../pieces/facts.ts';
import type { OpenPiece } from '../../../pieces/read-piece.ts';
import type { Yard } from '../../../pieces/yard.ts';
import { Computed } from './computed.tsx';
import { DecideDialog } from './decide-dialog.tsx';
import { InsertMark } from './piece-marks.tsx';
import styles from './yard.module.css';

/** Found less designed, length by length. */
function tellDeviation({ answer }: InsertReport): string {
  if (answer === null) return 'not taped';
  const parts = (['x', 'y', 'level'] as const).flatMap((axis) => {
    const by = answer.deviation[axis];
    if (by === null) return [];
    return [`${axis} ${by > 0 ? '+' : by < 0 ? '−' : '±'}${writeQuantity('length', Math.abs(by))}`];
  });
  return parts.length === 0 ? 'not taped' : parts.join(', ');
}

function Decision({ of: { decision } }: { readonly of: InsertReport }) {
  if (decision === null) return null;
  const { verdict, role, reason } = decision.body;
  return (
    <span>
      {verdict} as {role}: {reason}
    </span>
  );
}

/** Every insert of a piece: how it stands, where it was found, what that does to its connection, and what was decided. */
export function InsertsPart({ yard, piece }: { readonly yard: Yard; readonly piece: OpenPiece }) {
  const deciding = useSignal<string | null>(null);
  const decidable = new Set(listDecidable(piece.report.inserts));
  const columns: readonly Column<InsertReport>[] = [
    { head: 'no.', kind: 'number', isName: true, cell: ({ item }) => item.number },
    { head: 'what it must be', cell: ({ item }) => `${describeType(item)}; ${describeFace(item)}` },
    { head: 'stands', kind: 'short', cell: ({ state }) => <InsertMark state={state} /> },
    { head: 'found less designed', kind: 'short', cell: tellDeviation },
    { head: 'computed as placed', kind: 'wide', cell: (insert) => <Computed of={insert} /> },
    {
      head: 'why, and what was decided',
      kind: 'wide',
      cell: (insert) => (
        <span class={styles.line}>
          {insert.why.map((words) => (
            <span key={words}>{words}</span>
          ))}
          <Decision of={insert} />
          {decidable.has(insert) && (
            <span class="not-printed">
              <Button
                kind="quiet"
                name={`Decide about insert ${insert.item.number}`}
                onPress={() => {
                  deciding.value = insert.item.castIn.key;
                }}
              >
                Decide
              </Button>
            </span>
          )}
        </span>
      ),
    },
  ];
  const chosen = piece.report.inserts.find(({ item }) => item.castIn.key === deciding.value);
  return (
    <Section
      title="Inserts"
      lead="A fixing insert is not for lifting unless its maker rates it so. Ratios are of the connection with what was taped, the others as designed."
    >
      <Table
        caption="Inserts"
        columns={columns}
        rows={piece.report.inserts}
        keyOf={({ item }) => item.castIn.key}
        groupOf={({ item }) => (item.stage === 1 ? 'before the cage' : 'before the pour')}
      />
      {chosen !== undefined && (
        <DecideDialog
          yard={yard}
          undecided={{
            title: `Insert ${chosen.item.number} of ${piece.head.mark} no. ${piece.head.serial}`,
            why: chosen.why,
            what: chosen,
            insert: chosen,
            fact: factOf(piece, chosen.item),
            verdicts: ['accepted', 'to be moved', 'rejected'],
          }}
          onClose={() => {
            deciding.value = null;
          }}
        />
      )}
    </Section>
  );
}
