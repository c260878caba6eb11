import { useComputed, useSignal } from '@preact/signals';
import { useRef } from 'preact/hooks';
import { useLocation } from 'wouter-preact';
import { arrangePanels } from '../../../../assess/arrange-panels.ts';
import { listContents, listPanelStatus, type PanelStatus } from '../../../../assess/panel-status.ts';
import { tellJob } from '../../../../say/next-step-words.ts';
import { Button } from '../../../parts/button.tsx';
import { FileDrop } from '../../../parts/files.tsx';
import { Empty } from '../../../parts/notice.tsx';
import { Page } from '../../../parts/page.tsx';
import { addresses } from '../../state/addresses.ts';
import { useCommands } from '../../state/commands.ts';
import { useOffice } from '../../state/office.ts';
import { importFor } from '../import/import-work.ts';
import { AddPanelDialog } from './add-panel-dialog.tsx';
import { ExportDialog } from './export-dialog.tsx';
import { ListTools } from './list-tools.tsx';
import { PanelDialog } from './panel-dialog.tsx';
import { PanelList } from './panel-list.tsx';
import styles from './panels.module.css';
import { choiceOf } from './panels-choice.ts';

/** What is over the screen. */
type Over = { readonly kind: 'none' | 'add' | 'export' } | { readonly kind: 'panel'; readonly mark: string };

/** The job as a list of panels: what each holds, what state it is in, what it needs next. */
export function PanelsScreen() {
  const { session, answers } = useOffice();
  const [, go] = useLocation();
  const over = useSignal<Over>({ kind: 'none' });
  const search = useRef<HTMLInputElement>(null);
  const choice = choiceOf(session.id);
  const contents = useComputed(() => listContents(session.shown.value));
  const panels = useComputed(() => listPanelStatus(contents.value, answers.byKey.value));
  const need = useComputed(() => tellJob(panels.value));
  // While answers come the order stays, that of the job at first, so that nothing moves under the hand.
  const settled = useRef<readonly string[] | null>(null);
  const arranged = useComputed(() => arrangePanels(panels.value, choice.value));
  const isComputing = answers.progress.value !== null;
  const rows = isComputing
    ? keepOrder(arranged.value, settled.current ?? panels.value.map(({ panel }) => panel.key))
    : arranged.value;
  if (!isComputing) settled.current = rows.map(({ panel }) => panel.key);
  const show = (what: Over) => {
    over.value = what;
  };
  const close = () => show({ kind: 'none' });
  useCommands('Panels', [
    { name: 'Add a panel', key: 'N', run: () => show({ kind: 'add' }) },
    { name: 'Search the list', key: '/', run: () => search.current?.focus() },
    { name: 'Export', key: 'Shift+E', run: () => show({ kind: 'export' }) },
  ]);
  const { value } = over;
  return (
    <Page
      title="Panels"
      lead={
        <span class={styles.need} role="status">
          {need}
        </span>
      }
      actions={
        <>
          <Button onPress={() => go(addresses.readFilesInto(session.id))}>Read files in</Button>
          <Button shortcut="Shift+E" name="Export" onPress={() => show({ kind: 'export' })}>
            Export
          </Button>
          <Button kind="main" shortcut="N" name="Add a panel" onPress={() => show({ kind: 'add' })}>
            Add a panel
          </Button>
        </>
      }
    >
      <FileDrop
        words="Let go: the files are read, and taken into this job when you say so"
        onFiles={(files) => {
          void importFor(session.id).take(files);
          go(addresses.readFilesInto(session.id));
        }}
      />
      <ListTools choice={choice} panels={panels.value} shown={rows.length} search={search} />
      {rows.length === 0 ? (
        <Empty title="No panel is like that">
          <p>No panel of {panels.value.length} fits what is searched for.</p>
          <Button
            onPress={() => {
              choice.value = { ...choice.value, words: '', state: null };
            }}
          >
            Show all
          </Button>
        </Empty>
      ) : (
        <PanelList
          job={session.id}
          rows={rows}
          answers={answers.byKey.value}
          onMore={(mark) => show({ kind: 'panel', mark })}
        />
      )}
      {value.kind === 'add' && <AddPanelDialog session={session} onClose={close} />}
      {value.kind === 'export' && <ExportDialog session={session} answers={answers.byKey.value} onClose={close} />}
      {value.kind === 'panel' && <PanelDialog session={session} mark={value.mark} onClose={close} />}
    </Page>
  );
}

/** Rows in an order that was shown before; what is new comes behind. */
function keepOrder(rows: readonly PanelStatus[], keys: readonly string[]): readonly PanelStatus[] {
  const places = new Map(keys.map((key, k) => [key, k]));
  const placeOf = ({ panel }: PanelStatus) => places.get(panel.key) ?? keys.length;
  return [...rows].sort((a, b) => placeOf(a) - placeOf(b));
}
