import { useSignal } from '@preact/signals';
import { drawPlateSketch } from '../../../../drawing/sketch/plate-sketch.ts';
import type { Connection } from '../../../../job/documents/connection.ts';
import type { Detail } from '../../../../job/documents/details.ts';
import { addDetail, removeDetail } from '../../../../job/edit/plate/change-detail.ts';
import { makeRectangle } from '../../../../job/edit/plate/rectangle.ts';
import { countOf } from '../../../../say/part-words.ts';
import { Button } from '../../../parts/button.tsx';
import { DrawingView } from '../../../parts/drawing-view.tsx';
import { Empty } from '../../../parts/notice.tsx';
import { Page } from '../../../parts/page.tsx';
import { tell } from '../../state/messages.ts';
import { useOffice } from '../../state/office.ts';
import { DetailEditor } from './detail-editor.tsx';
import styles from './details-screen.module.css';

/** Paper of the small drawings [mm]. */
const PAPER = { width: 44, height: 32 };

/** A name like `T3` that no detail has. */
function nextId(details: readonly Detail[]): string {
  const taken = new Set(details.map(({ id }) => id));
  let number = details.length + 1;
  while (taken.has(`T${number}`)) number += 1;
  return `T${number}`;
}

/** What a new detail begins with, to be typed on. */
function startDetail(id: string): Detail {
  const hole = { diameter_mm: 18, slot_mm: 0, slotAngle_deg: 0, takesShear: true };
  return {
    id,
    name: 'New plate, two bolts',
    item: null,
    fixture: {
      outline_mm: makeRectangle({ middle: [0, 0], width: 200, height: 100 }),
      thickness_mm: 15,
      yield_MPa: null,
      holes: [
        { ...hole, id: '1', at_mm: [-60, 0] },
        { ...hole, id: '2', at_mm: [60, 0] },
      ],
      attachment_mm: null,
    },
  };
}

function tellPlaced(placed: readonly Connection[]): string {
  const panels = new Set(placed.map(({ panel }) => panel));
  return placed.length === 0
    ? 'not placed yet'
    : `placed ${placed.length === 1 ? 'once' : `${placed.length} times`} on ${countOf(panels.size, 'panel')}`;
}

/** Standard details: one source, placed many times; changed here, all follow. */
export function DetailsScreen() {
  const { session } = useOffice();
  const { job, library } = session.shown.value;
  const { details } = library.details;
  const chosen = useSignal<string | null>(null);
  const detail = details.find(({ id }) => id === chosen.value) ?? details[0];
  const placedOf = (id: string) => job.connections.filter((one) => one.detail === id);
  const add = (made: Detail, label: string) => {
    const why = session.commit(label, addDetail(made));
    if (why === null) chosen.value = made.id;
    else tell('fault', why);
  };
  const create = () => {
    const id = nextId(details);
    add(startDetail(id), `Detail ${id} added`);
  };
  const copy = (source: Detail) => {
    const id = nextId(details);
    add({ ...source, id, name: `${source.name}, copy`.slice(0, 400) }, `Detail ${id} copied from ${source.id}`);
  };
  const remove = (gone: Detail) => {
    const placed = placedOf(gone.id);
    if (placed.length > 0) {
      tell(
        'fault',
        `Detail ${gone.id} is in use: ${placed.map(({ mark, panel }) => `${mark} on ${panel}`).join(', ')}. Give those another plate first.`,
      );
      return;
    }
    const why = session.commit(`Detail ${gone.id} removed`, removeDetail(gone.id));
    if (why === null) tell('good', `Detail ${gone.id} is removed`, { text: 'Undo', run: () => session.undo() });
    else tell('fault', why);
  };
  return (
    <Page
      title="Standard details"
      lead="One source, placed many times: change a detail and every connection of it follows. What a connection does otherwise is kept and shown."
      actions={
        <>
          <Button onPress={create}>New detail</Button>
          {detail !== undefined && (
            <>
              <Button onPress={() => copy(detail)}>Copy {detail.id}</Button>
              <Button onPress={() => remove(detail)}>Remove {detail.id}</Button>
            </>
          )}
        </>
      }
    >
      {detail === undefined ? (
        <Empty title="No standard detail yet">
          <p>
            A detail is a plate with its holes that many connections share. Begin a new one here, or make one of the
            plate of a connection.
          </p>
          <Button kind="main" onPress={create}>
            New detail
          </Button>
        </Empty>
      ) : (
        <div class={styles.body}>
          <nav class={styles.list} aria-label="Standard details">
            {details.map((one) => (
              <button
                key={one.id}
                type="button"
                class={styles.item}
                aria-current={one.id === detail.id}
                onClick={() => {
                  chosen.value = one.id;
                }}
              >
                <span aria-hidden="true">
                  <DrawingView drawing={drawPlateSketch(one.fixture, PAPER, false)} title={one.name} />
                </span>
                <span>
                  <span class={styles.name}>{one.id}</span>
                  <span>{one.name}</span>
                  <span class={styles.small}>
                    {one.item ?? 'any insert'}, {tellPlaced(placedOf(one.id))}
                  </span>
                </span>
              </button>
            ))}
          </nav>
          <DetailEditor
            key={detail.id}
            detail={detail}
            placed={placedOf(detail.id)}
            onRenamed={(id) => {
              chosen.value = id;
            }}
          />
        </div>
      )}
    </Page>
  );
}
