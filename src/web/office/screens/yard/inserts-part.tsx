import { useSignal } from '@preact/signals';
import type { InsertReport } from '../../../../assess/yard/piece-report.ts';
import type { AsPlaced, PlacingAnswer } from '../../../../assess/yard/placing-answer.ts';
import { describeFace, describeType } from '../../../../drawing/sheets/words.ts';
import { showRatio } from '../../../../say/numbers.ts';
import { nameMode, STATE_WORDS } from '../../../../say/words.ts';
import { Button } from '../../../parts/button.tsx';
import { Section } from '../../../parts/page.tsx';
import { type ShownState, StateMark } from '../../../parts/state-mark.tsx';
import { type Column, Table } from '../../../parts/table.tsx';
import { writeQuantity } from '../../../parts/units.ts';
import { listDecidable } from '../../../pieces/decide.ts';
import type { OpenPiece } from '../../../pieces/read-piece.ts';
import type { Yard } from '../../../pieces/yard.ts';
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

function tellPlate({ plate }: AsPlaced): string | null {
  switch (plate.kind) {
    case 'shifted':
      return `plate goes on, shifted ${writeQuantity('length', plate.by)}`;
    case 'turned':
      return `plate goes on, turned ${plate.turn_deg.toFixed(1)}° and shifted ${writeQuantity('length', plate.by)}`;
    case 'does not go on':
      return `plate does not go on: ${writeQuantity('length', plate.lacks)} missing at ${plate.hole}`;
    case 'as designed':
    case 'no plate':
      return null;
  }
}

/** Whether it works where it is: strength, plate and what it meets together. */
const VERDICTS: Readonly<Record<PlacingAnswer['verdict'], ShownState>> = {
  works: 'passes',
  'does not work': 'fails',
  'not known': 'strength not checked',
};

/** The connection with its inserts as they are, beside what it was. */
function Computed({ of }: { readonly of: InsertReport }) {
  const { answer } = of;
  const placed = answer?.asPlaced ?? null;
  if (answer === null || placed === null) return <>–</>;
  const { verdict } = answer;
  const plate = tellPlate(placed);
  return (
    <span class={styles.line}>
      <StateMark state={VERDICTS[verdict]} words={verdict} />
      <span>
        {`${placed.connection}: strength ${STATE_WORDS[placed.after.state]}, ${showRatio(placed.before.ratio)} as designed, ${showRatio(placed.after.ratio)} as placed`}
        {placed.after.why !== null && ` (${nameMode(placed.after.why)})`}
      </span>
      {[plate, ...placed.findings].map((words) => words !== null && <span key={words}>{words}</span>)}
    </span>
  );
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
          piece={piece}
          insert={chosen}
          onClose={() => {
            deciding.value = null;
          }}
        />
      )}
    </Section>
  );
}
