import { useSignal } from '@preact/signals';
import { Link, useLocation } from 'wouter-preact';
import type { BedPiece, BedPlan } from '../../../../assess/set-out/plan-bed.ts';
import type { Piece, Pour } from '../../../../job/documents/pour.ts';
import { addPieces, changePiece, listUnplanned, removePiece } from '../../../../job/edit/commands/edit-pours.ts';
import { nameFaceDown } from '../../../../say/pour-words.ts';
import { Button } from '../../../parts/button.tsx';
import { download, fileNameOf } from '../../../parts/download.ts';
import { ChoiceField, QuantityField, TextField } from '../../../parts/field.tsx';
import { Notice } from '../../../parts/notice.tsx';
import { type Column, Table } from '../../../parts/table.tsx';
import { writeQuantity, writeValue } from '../../../parts/units.ts';
import { askJobWorker } from '../../../parts/worker-client.ts';
import { addresses } from '../../state/addresses.ts';
import { tell } from '../../state/messages.ts';
import type { JobSession } from '../../state/session.ts';
import { tellError } from '../../state/use-asked.ts';
import styles from './pour-view.module.css';

/** Writes the set-out of a panel into a file and gives it to the person, with what could not be shown in it. */
async function saveSetOut(mark: string, format: 'dxf' | 'svg'): Promise<void> {
  try {
    const made = await askJobWorker(async (worker) => worker.setOutFile(mark, format));
    if (made.kind === 'not drawn') {
      tell('fault', `Panel ${mark} cannot be drawn: ${made.why}`);
      return;
    }
    download(`${fileNameOf(mark)}.${format}`, made.text, format === 'dxf' ? 'image/vnd.dxf' : 'image/svg+xml');
    for (const note of made.notes) tell('note', `${mark}: ${note}`);
  } catch (error) {
    tell('fault', `Panel ${mark} cannot be drawn: ${tellError(error)}`);
  }
}

/** The pieces of a pour, each with its place, and what can be done with it. */
export function PieceTable({
  session,
  plan,
  pour,
}: {
  readonly session: JobSession;
  readonly plan: BedPlan;
  readonly pour: Pour;
}) {
  const [, go] = useLocation();
  const refused = useSignal<string | null>(null);
  const adding = useSignal('');
  const file = session.shown.value;
  const letter = file.job.revision?.letter ?? null;
  const panels = new Map(file.job.panels.map((panel) => [panel.mark, panel]));
  const unplanned = new Set(listUnplanned(file));
  const nameOf = ({ piece }: BedPiece) => `${piece.panel} no. ${piece.serial}`;
  const change = (row: BedPiece, what: string, values: Partial<Piece>) =>
    session.commit(`Pour ${pour.id}, ${nameOf(row)}: ${what}`, changePiece(pour.id, row.index, values));
  const remove = (row: BedPiece) => {
    const isLast = pour.pieces.length === 1;
    refused.value = session.commit(
      `Pour ${pour.id}: ${nameOf(row)} taken out${isLast ? ', and with it the pour' : ''}`,
      removePiece(pour.id, row.index),
    );
    if (refused.value !== null) return;
    if (isLast) go(addresses.pours(session.id));
    tell('note', `${nameOf(row)} was taken out of pour ${pour.id}.`, { text: 'Undo', run: () => session.undo() });
  };
  const columns: readonly Column<BedPiece>[] = [
    {
      head: 'panel',
      isName: true,
      cell: ({ piece }) => <Link href={addresses.panel(session.id, piece.panel)}>{piece.panel}</Link>,
    },
    {
      head: 'piece no.',
      cell: (row) => (
        <TextField
          isInTable
          label={`Number of ${nameOf(row)}`}
          value={row.piece.serial}
          onChange={(serial) => change(row, `number ${serial}`, { serial })}
        />
      ),
    },
    {
      head: `from ${plan.bed.names.start}`,
      kind: 'number',
      cell: (row) => (
        <QuantityField
          isInTable
          label={`Place of ${nameOf(row)} along the bed`}
          quantity="length"
          value={row.piece.along_mm}
          whenEmpty="no place yet"
          onChange={(along_mm) => change(row, 'place on the bed', { along_mm })}
        />
      ),
    },
    {
      head: 'length × width',
      kind: 'number',
      cell: ({ length, width }) => `${writeValue('length', length)} × ${writeQuantity('length', width)}`,
    },
    {
      head: 'lies',
      cell: ({ piece }) => {
        const panel = panels.get(piece.panel);
        return panel === undefined ? '' : nameFaceDown(panel.faceDown);
      },
    },
    {
      head: 'planned by revision',
      cell: (row) =>
        row.piece.revision === null || row.piece.revision === letter ? (
          `the job’s (${letter ?? 'not issued'})`
        ) : (
          <Button
            name={`${row.piece.revision}, plan anew: ${nameOf(row)} by the job’s revision`}
            onPress={() => {
              refused.value = change(row, 'planned anew', { revision: null });
            }}
          >
            {row.piece.revision}, plan anew
          </Button>
        ),
    },
    {
      head: 'set-out and more',
      cell: (row) => (
        <div class={styles.tools}>
          <Button
            kind="quiet"
            name={`Set-out of ${row.piece.panel} as DXF`}
            onPress={() => void saveSetOut(row.piece.panel, 'dxf')}
          >
            DXF
          </Button>
          <Button
            kind="quiet"
            name={`Set-out of ${row.piece.panel} as SVG`}
            onPress={() => void saveSetOut(row.piece.panel, 'svg')}
          >
            SVG
          </Button>
          <Button kind="quiet" name={`Take out ${nameOf(row)}`} onPress={() => remove(row)}>
            Take out
          </Button>
        </div>
      ),
    },
  ];
  const options = [
    { value: '', text: 'choose a panel' },
    ...file.job.panels.map(({ mark }) => ({ value: mark, text: unplanned.has(mark) ? mark : `${mark}, once more` })),
  ];
  return (
    <>
      <Table
        caption={`Pieces of pour ${pour.id}`}
        columns={columns}
        rows={plan.pieces}
        keyOf={({ index, piece }) => `${index} ${piece.panel} ${piece.serial}`}
      />
      {refused.value !== null && (
        <Notice kind="fault" title="Not done">
          {refused.value}
        </Notice>
      )}
      <div class={styles.add}>
        <ChoiceField
          label="One more piece"
          value={adding.value}
          options={options}
          onChange={(mark) => {
            adding.value = mark;
            return null;
          }}
        />
        <Button
          isDisabled={adding.value === ''}
          onPress={() => {
            const mark = adding.value;
            refused.value = session.commit(`Pour ${pour.id}: ${mark} added`, addPieces(pour.id, [mark]));
            if (refused.value === null) adding.value = '';
          }}
        >
          Add it
        </Button>
      </div>
    </>
  );
}
