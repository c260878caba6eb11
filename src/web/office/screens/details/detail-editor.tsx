import { drawPlateSketch } from '../../../../drawing/sketch/plate-sketch.ts';
import type { Connection } from '../../../../job/documents/connection.ts';
import type { Detail } from '../../../../job/documents/details.ts';
import { nextNumber } from '../../../../job/edit/plate/change-connection.ts';
import { changeDetail } from '../../../../job/edit/plate/change-detail.ts';
import { DrawingView } from '../../../parts/drawing-view.tsx';
import { ChoiceField, TextField } from '../../../parts/field.tsx';
import { Section } from '../../../parts/page.tsx';
import { writeQuantity } from '../../../parts/units.ts';
import { tell } from '../../state/messages.ts';
import { useOffice } from '../../state/office.ts';
import { PlateEditor } from '../plate-editor/plate-editor.tsx';
import styles from './details-screen.module.css';
import { PendingBar } from './pending-bar.tsx';
import { PlacedTable } from './placed-table.tsx';
import { usePending } from './use-pending.ts';

/** Paper of the drawing [mm]. */
const PAPER = { width: 110, height: 80 };

/** Stands for "none" where a name is chosen; names are never empty. */
const NONE = '';

/** One standard detail: its plate, its type of insert, where it is placed. Changes of plate and type are seen through before they are taken. */
export function DetailEditor({
  detail,
  placed,
  onRenamed,
}: {
  readonly detail: Detail;
  readonly placed: readonly Connection[];
  readonly onRenamed: (id: string) => void;
}) {
  const { session } = useOffice();
  const pending = usePending(session, detail);
  const shown = pending.value.value?.detail ?? detail;
  const { items } = session.shown.value.library.catalogue;
  const rename = (id: string) => {
    const why = session.commit(
      `Detail ${detail.id} is ${id} now`,
      changeDetail(detail.id, (draft) => {
        draft.id = id;
      }),
    );
    if (why === null) onRenamed(id);
    return why;
  };
  const say = (why: string | null) => {
    if (why !== null) tell('fault', why);
  };
  return (
    <div class={styles.editor}>
      <div class={styles.top}>
        <figure class={styles.picture}>
          <DrawingView
            drawing={drawPlateSketch(shown.fixture, PAPER, true)}
            title={`Plate of detail ${detail.id}, to scale`}
          />
        </figure>
        <div class={styles.names}>
          <TextField label="Short name" value={detail.id} onChange={rename} />
          <TextField
            label="What it is"
            value={detail.name}
            onChange={(name) =>
              session.commit(
                `Detail ${detail.id}: what it is`,
                changeDetail(detail.id, (draft) => {
                  draft.name = name;
                }),
              )
            }
          />
          <ChoiceField
            label="Insert of its connections"
            value={shown.item ?? NONE}
            options={[
              { value: NONE, text: 'not said by the detail' },
              ...items.map(({ id, thread, length_mm }) => ({
                value: id,
                text: `${id} – ${thread} × ${writeQuantity('length', length_mm)}`,
              })),
            ]}
            onChange={(id) =>
              pending.change(`insert ${id}`, (draft) => {
                draft.item = id === NONE ? null : id;
              })
            }
          />
        </div>
      </div>
      <div class={styles.fields}>
        <PlateEditor
          fixture={shown.fixture}
          edit={(label, change) => pending.change(label, (draft) => change(draft.fixture))}
          insertOf={null}
          addWord="Add a hole"
          onAddHole={(at) =>
            pending.change('hole added', ({ fixture: { holes } }) => {
              const model = holes.at(-1);
              if (model !== undefined)
                holes.push({ ...model, id: nextNumber(holes.map(({ id }) => id)), at_mm: [at[0], at[1]] });
            })
          }
          onRemoveHole={(hole) =>
            say(
              pending.change(`hole ${hole} removed`, ({ fixture }) => {
                fixture.holes = fixture.holes.filter(({ id }) => id !== hole);
              }),
            )
          }
        />
      </div>
      <Section title="Where it is placed">
        <PlacedTable placed={placed} />
      </Section>
      <PendingBar pending={pending} marks={placed.map(({ mark }) => mark)} />
    </div>
  );
}
