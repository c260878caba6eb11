import { useSignal } from '@preact/signals';
import { addPour, listUnplanned, nextPourId } from '../../../../job/edit/commands/edit-pours.ts';
import { Button } from '../../../parts/button.tsx';
import { DayField, findToday } from '../../../parts/day-field.tsx';
import { Dialog } from '../../../parts/dialog.tsx';
import { CheckField, ChoiceField, TextField } from '../../../parts/field.tsx';
import { Notice } from '../../../parts/notice.tsx';
import type { JobSession } from '../../state/session.ts';
import styles from './add-pour-dialog.module.css';

/** Asks for bed, day and panels of a new pour. */
export function AddPourDialog({
  session,
  marks,
  onClose,
  onAdded,
}: {
  readonly session: JobSession;
  /** Panels that are chosen at first. */
  readonly marks: readonly string[];
  readonly onClose: () => void;
  readonly onAdded: (id: string) => void;
}) {
  const { file } = session;
  const { beds } = file.library.yard;
  const id = useSignal(nextPourId(file));
  const bed = useSignal(beds[0]?.id ?? '');
  const date = useSignal(findToday());
  const chosen = useSignal<ReadonlySet<string>>(new Set(marks));
  const refused = useSignal<string | null>(null);
  const unplanned = new Set(listUnplanned(file));
  const panels = [...file.job.panels].sort((a, b) => Number(unplanned.has(b.mark)) - Number(unplanned.has(a.mark)));
  const take = () => {
    if (chosen.value.size === 0) {
      refused.value = 'No panel is chosen; a pour casts at least one.';
      return;
    }
    const inOrder = file.job.panels.flatMap(({ mark }) => (chosen.value.has(mark) ? [mark] : []));
    refused.value = session.commit(
      `Pour ${id.value} added`,
      addPour({ id: id.value, bed: bed.value, date: date.value }, inOrder),
    );
    if (refused.value === null) onAdded(id.value);
  };
  return (
    <Dialog
      title="Add a pour"
      onClose={onClose}
      foot={
        <>
          <Button onPress={onClose}>Cancel</Button>
          <Button kind="main" onPress={take}>
            Add the pour
          </Button>
        </>
      }
    >
      <TextField
        label="Name"
        value={id.value}
        onChange={(value) => {
          if (file.job.pours.some((pour) => pour.id === value)) return `There is a pour ${value} already.`;
          if (value === '') return 'A pour needs a name.';
          id.value = value;
          return null;
        }}
      />
      <ChoiceField
        label="Bed"
        value={bed.value}
        options={beds.map((one) => ({ value: one.id, text: `${one.name} (${one.form})` }))}
        onChange={(value) => {
          bed.value = value;
          return null;
        }}
      />
      <DayField
        label="Day"
        value={date.value}
        onChange={(value) => {
          date.value = value;
          return null;
        }}
      />
      <fieldset class={styles.set}>
        <legend class={styles.legend}>Panels that are cast, those in no pour first</legend>
        <div class={styles.panels}>
          {panels.map(({ mark }) => (
            <CheckField
              key={mark}
              label={unplanned.has(mark) ? mark : `${mark}, once more`}
              isOn={chosen.value.has(mark)}
              onChange={(isOn) => {
                const next = new Set(chosen.value);
                if (isOn) next.add(mark);
                else next.delete(mark);
                chosen.value = next;
              }}
            />
          ))}
        </div>
      </fieldset>
      {refused.value !== null && (
        <Notice kind="fault" title="Not added">
          {refused.value}
        </Notice>
      )}
    </Dialog>
  );
}
