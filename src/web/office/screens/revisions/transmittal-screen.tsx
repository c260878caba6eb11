import { useLocation } from 'wouter-preact';
import { listPanelMoves, listRecipients, type PanelMove } from '../../../../say/transmittal.ts';
import { Button } from '../../../parts/button.tsx';
import { writeDay } from '../../../parts/day-field.tsx';
import { download, fileNameOf } from '../../../parts/download.ts';
import { Empty, Notice } from '../../../parts/notice.tsx';
import { Page, Section } from '../../../parts/page.tsx';
import { Table } from '../../../parts/table.tsx';
import { askJobWorker } from '../../../parts/worker-client.ts';
import { addresses } from '../../state/addresses.ts';
import { useOffice } from '../../state/office.ts';
import { useAsked } from '../../state/use-asked.ts';

const WORDS: Readonly<Record<PanelMove, string>> = { new: 'new', changed: 'changed', same: '·', absent: '' };
/** The same where a dot would say nothing. */
const CSV_WORDS: Readonly<Record<PanelMove, string>> = { ...WORDS, same: 'same' };

/** Who was handed which revision, and which panels each changed: to be printed, and as CSV. */
export function TransmittalScreen() {
  const { session } = useOffice();
  const [, go] = useLocation();
  const issued = session.issued.value;
  const letters = issued.map(({ letter }) => letter);
  const { value: panels, why } = useAsked(
    () => askJobWorker((worker) => worker.listRevisionPanels(session.id, letters)),
    [letters.join()],
  );
  const { project } = session.shown.value.job;
  const recipients = listRecipients(issued);
  const moves = listPanelMoves(panels ?? []);
  const name = fileNameOf(`${project.number ?? project.name}-transmittal`);
  const save = async (what: string, columns: readonly string[], rows: readonly Readonly<Record<string, string>>[]) => {
    download(`${name}-${what}.csv`, await askJobWorker((worker) => worker.writeTable(columns, rows)), 'text/csv');
  };
  const saveRecipients = () =>
    save(
      'recipients',
      ['name', 'firm', ...letters],
      recipients.map((row) => ({
        name: row.name,
        firm: row.firm ?? '',
        ...Object.fromEntries(letters.map((letter, k) => [letter, row.how[k] ?? ''])),
      })),
    );
  const savePanels = () =>
    save(
      'panels',
      ['panel', ...letters],
      moves.map(({ mark, moves: own }) => ({
        panel: mark,
        ...Object.fromEntries(letters.map((letter, k) => [letter, CSV_WORDS[own[k] ?? 'absent']])),
      })),
    );
  const headOf = (k: number) => `${issued[k]?.letter ?? ''}, ${issued[k]?.date ?? ''}`;
  return (
    <Page
      title="Transmittal list"
      lead={`${project.number === null ? '' : `${project.number} `}${project.name}`}
      actions={
        <>
          <Button onPress={() => go(addresses.revisions(session.id))}>Back to revisions</Button>
          <Button kind="main" isDisabled={issued.length === 0} onPress={() => print()}>
            Print
          </Button>
        </>
      }
    >
      {issued.length === 0 ? (
        <Empty title="Nothing was issued yet">
          <p>Once a revision is issued, this list says who was handed it and which panels it changed.</p>
        </Empty>
      ) : (
        <>
          <Section title="Revisions">
            <Table
              caption="Issued revisions"
              rows={issued}
              keyOf={({ letter }) => letter}
              columns={[
                { head: 'Revision', isName: true, cell: ({ letter }) => letter },
                { head: 'Status', kind: 'short', cell: ({ status }) => status },
                { head: 'Date', kind: 'short', cell: ({ date }) => writeDay(date) },
                { head: 'Note', kind: 'wide', cell: ({ note }) => note ?? '' },
                { head: 'Fingerprint', cell: ({ fingerprint }) => fingerprint.slice(0, 12) },
              ]}
            />
          </Section>
          <Section
            title="Recipients"
            actions={<Button onPress={() => void saveRecipients()}>Recipients as CSV</Button>}
          >
            {recipients.length === 0 ? (
              <p>No recipient is named in any revision.</p>
            ) : (
              <Table
                caption="Recipients by revision"
                rows={recipients}
                keyOf={({ name: who, firm }) => `${who} ${firm}`}
                columns={[
                  { head: 'Name', isName: true, cell: (row) => row.name },
                  { head: 'Firm', cell: (row) => row.firm ?? '' },
                  ...letters.map((_, k) => ({
                    head: headOf(k),
                    cell: (row: (typeof recipients)[number]) => row.how[k] ?? '–',
                  })),
                ]}
              />
            )}
          </Section>
          <Section
            title="Panels"
            lead="What each revision did to a panel, by what it holds and what it uses; a dot: the same as before."
            actions={<Button onPress={() => void savePanels()}>Panels as CSV</Button>}
          >
            {why !== null && <Notice kind="fault">{why}</Notice>}
            <Table
              caption="Panels by revision"
              rows={moves}
              keyOf={({ mark }) => mark}
              columns={[
                { head: 'Panel', isName: true, cell: ({ mark }) => mark },
                ...letters.map((_, k) => ({
                  head: headOf(k),
                  cell: ({ moves: own }: (typeof moves)[number]) => WORDS[own[k] ?? 'absent'],
                })),
              ]}
            />
          </Section>
        </>
      )}
    </Page>
  );
}
