import { useSignal } from '@preact/signals';
import { useEffect, useMemo } from 'preact/hooks';
import { Link, useLocation } from 'wouter-preact';
import { removeCastIns } from '../../../../job/edit/commands/edit-face.ts';
import { Button } from '../../../parts/button.tsx';
import { Empty } from '../../../parts/notice.tsx';
import { writeQuantity } from '../../../parts/units.ts';
import { askJobWorker } from '../../../parts/worker-client.ts';
import { addresses } from '../../state/addresses.ts';
import { useCommands } from '../../state/commands.ts';
import { useOffice } from '../../state/office.ts';
import type { JobSession } from '../../state/session.ts';
import { useAsked } from '../../state/use-asked.ts';
import { CanvasView } from './desk/canvas-view.ts';
import { PanelDesk } from './desk/panel-desk.ts';
import { CanvasHand } from './drawing/canvas-hand.ts';
import { CanvasKeys } from './drawing/canvas-keys.ts';
import { EdgeStrip } from './drawing/edge-strip.tsx';
import { PanelCanvas } from './drawing/panel-canvas.tsx';
import styles from './panel-screen.module.css';
import { PlaceDialog } from './place/place-dialog.tsx';
import type { Placing } from './place/placing.ts';
import { Side } from './side/side.tsx';
import { type TabId, Tables } from './tables/tables.tsx';
import { listCommands, Toolbar } from './toolbar.tsx';

/** One panel: its drawing under the hand, what is selected beside it, everything as tables below. */
export function PanelScreen({ mark }: { readonly mark: string }) {
  const { session } = useOffice();
  if (!session.file.job.panels.some((panel) => panel.mark === mark))
    return (
      <Empty title={`There is no panel ${mark}`}>
        <p>It was removed or has another mark now.</p>
        <Link href={addresses.panels(session.id)}>All panels</Link>
      </Empty>
    );
  return <OpenPanel key={mark} session={session} mark={mark} />;
}

function OpenPanel({ session, mark }: { readonly session: JobSession; readonly mark: string }) {
  const [, go] = useLocation();
  const placing = useSignal<Placing | null>(null);
  const isChoosing = useSignal(false);
  const desk = useMemo(() => new PanelDesk(session, mark), [session, mark]);
  const view = useMemo(() => new CanvasView(), [desk]);
  const hand = useMemo(() => new CanvasHand(desk, placing, view.camera), [desk, view]);
  const keys = useMemo(
    () =>
      new CanvasKeys(desk, hand, {
        open: (connection) => go(addresses.connection(session.id, connection)),
        remove: () => removeSelected(desk),
        stopPlacing: () => {
          const was = placing.peek() !== null;
          placing.value = null;
          hand.leave();
          return was;
        },
      }),
    [desk, hand],
  );
  useEffect(() => () => desk.close(), [desk]);
  const tab = useSignal<TabId>('inserts');
  // Set out only while it is looked at: clashes of a full cage take their time.
  const isInForm = desk.sightKind.value === 'form' || tab.value === 'form';
  const setOut = useAsked(isInForm ? () => askJobWorker(async (worker) => worker.setOutView(mark)) : null, [
    session.file,
    mark,
    isInForm,
  ]);
  useEffect(() => {
    desk.numbers.value = setOut.value?.numbers ?? null;
  }, [desk, setOut.value]);
  const choose = () => {
    isChoosing.value = true;
  };
  useCommands(`Panel ${mark}`, listCommands(desk, view, choose));
  return (
    <div class={styles.screen}>
      <Head desk={desk} />
      <Toolbar desk={desk} view={view} onPlace={choose} />
      {placing.value !== null && (
        <div class={styles.placing} role="status">
          <span>{placing.value.words}</span>
          <Button
            kind="quiet"
            shortcut="Escape"
            onPress={() => {
              placing.value = null;
              hand.leave();
            }}
          >
            Leave it
          </Button>
        </div>
      )}
      <div class={styles.work}>
        <div class={styles.drawing}>
          <PanelCanvas desk={desk} view={view} hand={hand} keys={keys} placing={placing} />
          <EdgeStrip desk={desk} />
        </div>
        <Side desk={desk} />
      </div>
      <Tables desk={desk} open={tab} setOut={setOut} />
      {isChoosing.value && (
        <PlaceDialog
          desk={desk}
          placing={placing}
          onClose={() => {
            isChoosing.value = false;
          }}
        />
      )}
    </div>
  );
}

function removeSelected(desk: PanelDesk): void {
  const { ids, connection, isWhole } = desk.selection.peek();
  const what = isWhole && connection !== null ? connection : `Insert ${ids.join(', ')} of ${desk.mark}`;
  const why = desk.isHanded ? desk.handedWords : desk.commit(`${what} removed`, removeCastIns(desk.mark, new Set(ids)));
  if (why !== null) desk.refuse(why, null);
}

/** Which panel, and which face is looked at, in words. */
function Head({ desk }: { readonly desk: PanelDesk }) {
  const { panel } = desk.live.value;
  const { kind, box, isMirrored } = desk.sight.value;
  const up = panel.faceDown === 'outside' ? 'inside' : 'outside';
  const words =
    kind === 'drawn'
      ? `${panel.drawnFace === 'outside' ? 'Outside' : 'Inside'} face, as drawn`
      : `In the form, seen from above: ${panel.faceDown} face down, ${up} face up; datum corner ${panel.inForm.datum.replace('-', ' ')}${isMirrored ? '; the mirror image of the drawing' : ''}; numbers in the order of the walk`;
  const size = [box.maxX - box.minX, box.maxY - box.minY, panel.thickness_mm].map((one) =>
    writeQuantity('length', one),
  );
  return (
    <header class={styles.head}>
      <h1>
        <Link class={styles.back} href={addresses.panels(desk.session.id)}>
          Panels
        </Link>{' '}
        {desk.mark}
      </h1>
      <p class={styles.words}>
        <strong>{words}</strong> · {size.join(' × ')}
        {panel.handedOf === null ? '' : ` · handed partner of ${panel.handedOf}`}
      </p>
    </header>
  );
}
