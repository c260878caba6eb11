import { useLocation, useSearch } from 'wouter-preact';
import type { Pour } from '../../../../job/documents/pour.ts';
import { removePour } from '../../../../job/edit/commands/edit-pours.ts';
import { countOf } from '../../../../say/part-words.ts';
import { Button } from '../../../parts/button.tsx';
import { writeDay } from '../../../parts/day-field.tsx';
import { Page } from '../../../parts/page.tsx';
import { addresses } from '../../state/addresses.ts';
import { tell } from '../../state/messages.ts';
import type { JobSession } from '../../state/session.ts';
import { FolderView } from './folder-view.tsx';
import { PourPlanView } from './pour-plan-view.tsx';
import styles from './pour-view.module.css';
import { Readiness } from './readiness.tsx';
import type { PoursFound } from './use-pour-findings.ts';

/** One pour: how it is planned, or its folder as it will be printed. */
export function PourView({
  session,
  pour,
  found,
}: {
  readonly session: JobSession;
  readonly pour: Pour;
  readonly found: PoursFound;
}) {
  const [, go] = useLocation();
  const view = new URLSearchParams(useSearch()).get('view') === 'folder' ? 'folder' : 'plan';
  const here = addresses.pour(session.id, pour.id);
  const bed = session.shown.value.library.yard.beds.find(({ id }) => id === pour.bed);
  const remove = () => {
    if (session.commit(`Pour ${pour.id} removed`, removePour(pour.id)) !== null) return;
    go(addresses.pours(session.id));
    tell('note', `Pour ${pour.id} was removed.`, { text: 'Undo', run: () => session.undo() });
  };
  return (
    <Page
      title={`Pour ${pour.id}`}
      lead={
        <span class={styles.lead}>
          {`${writeDay(pour.date)}, ${bed?.name ?? pour.bed}, ${countOf(pour.pieces.length, 'piece')}`}
          <Readiness file={session.shown.value} pour={pour} found={found.byPour.get(pour.id)} />
        </span>
      }
      actions={
        <>
          <Button isOn={view === 'plan'} onPress={() => go(here)}>
            Plan
          </Button>
          <Button isOn={view === 'folder'} onPress={() => go(`${here}?view=folder`)}>
            Folder
          </Button>
          <Button kind="danger" onPress={remove}>
            Remove the pour
          </Button>
        </>
      }
    >
      {view === 'plan' ? (
        <PourPlanView session={session} pour={pour} found={found} />
      ) : (
        <FolderView session={session} pour={pour.id} />
      )}
    </Page>
  );
}
