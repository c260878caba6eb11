import { useSignal } from '@preact/signals';
import type { Paper } from '../../../../drawing/sheets/paper.ts';
import { countOf } from '../../../../say/part-words.ts';
import { Button } from '../../../parts/button.tsx';
import { tellCall } from '../../../parts/call.ts';
import { download, fileNameOf } from '../../../parts/download.ts';
import { DrawingView } from '../../../parts/drawing-view.tsx';
import { ChoiceField } from '../../../parts/field.tsx';
import { Notice } from '../../../parts/notice.tsx';
import { writePdfInWorker } from '../../../parts/pdf-client.ts';
import { PrintSheets } from '../../../parts/print-sheets.tsx';
import { askJobWorker } from '../../../parts/worker-client.ts';
import type { FolderView as MadeFolder } from '../../../worker/folder-view.ts';
import { tell } from '../../state/messages.ts';
import { calls } from '../../state/office-calls.ts';
import type { JobSession } from '../../state/session.ts';
import { tellError, useAsked } from '../../state/use-asked.ts';
import styles from './folder-view.module.css';
import { PageDesk } from './page-desk.tsx';

type Made = Extract<MadeFolder, { readonly kind: 'made' }>;

/** No state of the job to tell changes since. */
const NOTHING = '';

async function makeFolder(session: JobSession, pour: string, paper: Paper['name'], since: string): Promise<MadeFolder> {
  if (since === NOTHING)
    return askJobWorker(async (worker) => worker.folder({ pour, paper, earlier: null, job: session.id }));
  const called = await calls.openRevision(session.id, since);
  if (called.kind !== 'answered') throw new Error(`Revision ${since} cannot be opened. ${tellCall(called) ?? ''}`);
  const { file } = called.value;
  return askJobWorker(async (worker) => worker.folder({ pour, paper, earlier: file, job: session.id }));
}

/** What the sheets are of: an issued revision, or a draft. */
function Standing({ session, made }: { readonly session: JobSession; readonly made: Made }) {
  const { revision } = session.file.job;
  const issued = session.issued.value.find(({ fingerprint }) => fingerprint.startsWith(made.fingerprint));
  if (issued !== undefined)
    return (
      <Notice kind="good" title={`As issued: revision ${issued.letter}, ${issued.status}`}>
        These sheets are of the very state that was issued; the fingerprint on each of them says so.
      </Notice>
    );
  const status = revision === null ? 'not issued' : `revision ${revision.letter}, ${revision.status}`;
  return (
    <Notice kind="note" title={`A draft, shown on the sheets as: ${status}`}>
      This state was not issued here. Two prints of one draft are told apart by the fingerprint alone: issue a revision
      before anybody pours from them.
    </Notice>
  );
}

/** The folder of a pour as it will be printed, to look through, to print and to take along. */
export function FolderView({ session, pour }: { readonly session: JobSession; readonly pour: string }) {
  const paper = useSignal<Paper['name']>('A3');
  const since = useSignal(NOTHING);
  const isWriting = useSignal(false);
  const isPrinting = useSignal(false);
  const { file } = session;
  const asked = useAsked(
    () => makeFolder(session, pour, paper.value, since.value),
    [file, pour, paper.value, since.value],
  );
  const made = asked.value?.kind === 'made' ? asked.value : null;
  const canUse = made !== null && !asked.isBusy;
  const save = async ({ order, fingerprint }: Made) => {
    isWriting.value = true;
    try {
      const bytes = await writePdfInWorker(order);
      const { number, name } = file.job.project;
      const letter = file.job.revision?.letter ?? 'draft';
      const title = fileNameOf(`${number ?? name} pour ${pour} ${letter} ${fingerprint}`);
      download(`${title}.pdf`, new Uint8Array(bytes), 'application/pdf');
    } catch (error) {
      tell('fault', `The PDF was not written: ${tellError(error)}`);
    }
    isWriting.value = false;
  };
  const letters = session.issued.value.map(({ letter, date }) => ({
    value: letter,
    text: `revision ${letter}, ${date}`,
  }));
  return (
    <>
      <div class={`${styles.bar} not-printed`}>
        <div class={styles.choice}>
          <ChoiceField<Paper['name']>
            label="Paper"
            value={paper.value}
            options={[
              { value: 'A3', text: 'A3' },
              { value: 'A4', text: 'A4' },
            ]}
            onChange={(value) => {
              paper.value = value;
              return null;
            }}
          />
        </div>
        <div class={styles.choice}>
          <ChoiceField
            label="What changed since"
            value={since.value}
            options={[
              { value: NOTHING, text: letters.length === 0 ? 'nothing is issued yet' : 'not told' },
              ...letters,
            ]}
            onChange={(value) => {
              since.value = value;
              return null;
            }}
          />
        </div>
        <Button
          kind="main"
          isDisabled={!canUse || isWriting.value}
          onPress={() => {
            if (made !== null) void save(made);
          }}
        >
          {isWriting.value ? 'Writing the PDF …' : 'Download the PDF'}
        </Button>
        <Button
          isDisabled={!canUse}
          onPress={() => {
            isPrinting.value = true;
          }}
        >
          Print
        </Button>
      </div>
      {asked.why !== null && (
        <Notice kind="fault" title="The folder could not be made">
          {asked.why}
        </Notice>
      )}
      {asked.value?.kind === 'not drawn' && (
        <Notice kind="fault" title="The folder cannot be drawn">
          {asked.value.why}
        </Notice>
      )}
      {made !== null && (
        <div class={styles.said}>
          <Standing session={session} made={made} />
          {!made.isReady && (
            <Notice
              kind="caution"
              title={`Do not pour: ${countOf(made.findings.length, 'stop')}, which the cover shows`}
            >
              <ul class={styles.stops}>
                {made.findings.slice(0, 4).map((text) => (
                  <li key={text}>{text}</li>
                ))}
                {made.findings.length > 4 && <li>{made.findings.length - 4} more</li>}
              </ul>
            </Notice>
          )}
        </div>
      )}
      <div role="status" aria-busy={asked.isBusy}>
        <dl class={styles.facts}>
          <div class={styles.fact}>
            <dt>Fingerprint</dt>
            <dd>{made?.fingerprint ?? '…'}</dd>
          </div>
          <div class={styles.fact}>
            <dt>Revision</dt>
            <dd>{file.job.revision === null ? 'none' : `${file.job.revision.letter} ${file.job.revision.status}`}</dd>
          </div>
          <div class={styles.fact}>
            <dt>Pages</dt>
            <dd>{asked.isBusy ? 'drawing the sheets …' : (made?.order.pages.length ?? '–')}</dd>
          </div>
        </dl>
      </div>
      <PageDesk pages={made?.order.pages ?? []} />
      {isPrinting.value && made !== null && (
        <PrintSheets
          paper={paper.value === 'A3' ? 'a3' : 'a4'}
          sheets={made.order.pages.map(({ drawing, bookmark }) => (
            <div key={bookmark} class={styles.printed}>
              <DrawingView drawing={drawing} title={bookmark ?? ''} isPaper />
            </div>
          ))}
          onDone={() => {
            isPrinting.value = false;
          }}
        />
      )}
    </>
  );
}
