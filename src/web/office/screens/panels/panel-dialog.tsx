import { useSignal } from '@preact/signals';
import { useLocation } from 'wouter-preact';
import { addPartner, copyPanel, findHold, nextName, removePanel } from '../../../../job/edit/commands/edit-panels.ts';
import { Button } from '../../../parts/button.tsx';
import { Dialog } from '../../../parts/dialog.tsx';
import { drawUuid } from '../../../parts/draw-uuid.ts';
import { TextField } from '../../../parts/field.tsx';
import { Notice } from '../../../parts/notice.tsx';
import { addresses } from '../../state/addresses.ts';
import { tell } from '../../state/messages.ts';
import type { JobSession } from '../../state/session.ts';
import styles from './panel-dialog.module.css';

/** What can be done with a panel as a whole. */
export function PanelDialog({
  session,
  mark,
  onClose,
}: {
  readonly session: JobSession;
  readonly mark: string;
  readonly onClose: () => void;
}) {
  const [, go] = useLocation();
  const failed = useSignal<string | null>(null);
  const notes = useSignal<readonly string[]>([]);
  const { file } = session;
  const taken = new Set(file.job.panels.map((panel) => panel.mark));
  const copyMark = useSignal(nextName(mark, taken));
  const partnerMark = useSignal(`${mark}-H`);
  const panel = file.job.panels.find((one) => one.mark === mark);
  if (panel === undefined) return null;
  const { handedOf } = panel;
  const hold = findHold(file, mark);
  const partner = file.job.panels.find((one) => one.handedOf === mark);
  const undo = { text: 'Undo', run: () => session.undo() };

  const copy = () => {
    failed.value = session.commit(
      `Panel ${mark} copied as ${copyMark.value}`,
      copyPanel(mark, copyMark.value, drawUuid),
    );
    if (failed.value !== null) return;
    tell('good', `${copyMark.value} is a copy of ${mark}.`, undo);
    onClose();
  };
  const hand = () => {
    const made = addPartner(file, mark, partnerMark.value);
    if (!made.ok) {
      failed.value = made.text;
      return;
    }
    failed.value = session.commit(`Handed partner ${partnerMark.value} of ${mark} made`, made.recipe);
    if (failed.value !== null) return;
    tell('good', `${partnerMark.value} is the handed partner of ${mark}: it follows every edit of ${mark}.`, undo);
    if (made.notes.length === 0) onClose();
    else notes.value = made.notes;
  };
  const remove = () => {
    failed.value = session.commit(`Panel ${mark} removed`, removePanel(mark));
    if (failed.value !== null) return;
    tell('note', `${mark} is removed, with all that is in it.`, undo);
    onClose();
  };

  if (notes.value.length > 0)
    return (
      <Dialog
        title={`${partnerMark.value}, handed partner of ${mark}`}
        onClose={onClose}
        foot={
          <Button kind="main" onPress={onClose}>
            Seen
          </Button>
        }
      >
        <Notice kind="caution" title="Not the same thing mirrored">
          <ul class={styles.notes}>
            {notes.value.map((note) => (
              <li key={note}>{note}</li>
            ))}
          </ul>
        </Notice>
      </Dialog>
    );
  return (
    <Dialog title={`Panel ${mark}`} onClose={onClose}>
      {failed.value !== null && <Notice kind="fault">{failed.value}</Notice>}
      <Button kind="main" onPress={() => go(addresses.panel(session.id, handedOf ?? mark))}>
        {handedOf === null ? `Open ${mark}` : `Edit ${handedOf}`}
      </Button>
      {handedOf !== null && (
        <p>
          {mark} is the handed partner of {handedOf}: its mirror image, made anew at each edit of {handedOf}. It cannot
          be edited itself.
        </p>
      )}
      <section class={styles.part}>
        <h3>A copy</h3>
        <p>With its inserts and connections; they get names that are free.</p>
        <div class={styles.line}>
          <TextField
            label="Mark of the copy"
            value={copyMark.value}
            onChange={(value) => {
              copyMark.value = value;
              return null;
            }}
          />
          <Button onPress={copy}>Copy</Button>
        </div>
      </section>
      {handedOf === null && (
        <section class={styles.part}>
          <h3>A handed partner</h3>
          {partner === undefined ? (
            <>
              <p>The mirror image, for the other hand: it follows every edit of {mark}.</p>
              <div class={styles.line}>
                <TextField
                  label="Mark of the partner"
                  value={partnerMark.value}
                  onChange={(value) => {
                    partnerMark.value = value;
                    return null;
                  }}
                />
                <Button onPress={hand}>Make it</Button>
              </div>
            </>
          ) : (
            <p>
              <a href={addresses.panel(session.id, partner.mark)}>{partner.mark}</a> is its handed partner and follows
              it.
            </p>
          )}
        </section>
      )}
      <section class={styles.part}>
        <h3>Remove</h3>
        {hold === null ? (
          <p>With all that is cast into it, its connections, and its pieces in pours. It can be undone.</p>
        ) : (
          <p>It cannot be removed: {hold}.</p>
        )}
        <Button kind="danger" isDisabled={hold !== null} onPress={remove}>
          Remove {mark}
        </Button>
      </section>
    </Dialog>
  );
}
