import { useSignal } from '@preact/signals';
import { Link } from 'wouter-preact';
import type { LookedAt } from '../../../../assess/look-at-connection.ts';
import { listLocalOverrides } from '../../../../job/details/local-overrides.ts';
import type { Fixture } from '../../../../job/documents/fixture.ts';
import {
  addHoleWithInsert,
  addPlate,
  changeOwnPlate,
  placeConnection,
  removeHoleWithInsert,
} from '../../../../job/edit/plate/change-connection.ts';
import { makeDetailOf, makeOwnPlate, takeDetail } from '../../../../job/edit/plate/change-detail.ts';
import { Button } from '../../../parts/button.tsx';
import { Dialog } from '../../../parts/dialog.tsx';
import { drawUuid } from '../../../parts/draw-uuid.ts';
import { ChoiceField, QuantityField, TextField } from '../../../parts/field.tsx';
import { Fields } from '../../../parts/page.tsx';
import { addresses } from '../../state/addresses.ts';
import { tell } from '../../state/messages.ts';
import { useOffice } from '../../state/office.ts';
import { PlateEditor } from '../plate-editor/plate-editor.tsx';
import styles from './plate-part.module.css';
import type { Commit } from './use-connection.ts';

interface Part {
  readonly looked: LookedAt;
  readonly commit: Commit;
}

const say = (why: string | null) => {
  if (why !== null) tell('fault', why);
};

/** What a connection does other than its detail says, which going back to it takes away. */
const TAKEN_BACK: ReadonlySet<string> = new Set(['type', 'place', 'holes']);

function OfDetail({ looked, commit }: Part) {
  const { session } = useOffice();
  const { connection, detail, index } = looked;
  if (detail === null) return null;
  const { mark } = connection;
  const placed = session.shown.value.job.connections.filter((one) => one.detail === detail.id).length;
  const overrides = listLocalOverrides(index, connection);
  const canGoBack = overrides.some(({ kind }) => TAKEN_BACK.has(kind));
  return (
    <div class={styles.detail}>
      <p>
        Its plate is the standard detail <Link href={addresses.details(session.id)}>{detail.id}</Link>, {detail.name},
        placed {placed} times: change it there and all follow.
      </p>
      {overrides.length === 0 ? (
        <p>It is as the detail says.</p>
      ) : (
        <>
          <p>Here it is otherwise, or says more:</p>
          <ul class={styles.overrides}>
            {overrides.map(({ words }) => (
              <li key={words}>{words}</li>
            ))}
          </ul>
        </>
      )}
      <div class={styles.row}>
        {canGoBack && (
          <Button onPress={() => say(commit(`${mark}: back to the detail ${detail.id}`, takeDetail(mark, detail)))}>
            Back to the detail
          </Button>
        )}
        <Button onPress={() => say(commit(`${mark}: a plate of its own`, makeOwnPlate(mark, detail.fixture)))}>
          Make it its own plate
        </Button>
      </div>
    </div>
  );
}

function NewDetailDialog({
  looked: { connection, index },
  commit,
  fixture,
  onClose,
}: Part & { readonly fixture: Fixture; readonly onClose: () => void }) {
  const id = useSignal('');
  const name = useSignal('');
  const refused = useSignal<string | null>(null);
  const take = () => {
    const isTaken = index.details.has(id.value);
    refused.value = isTaken
      ? `a detail ${id.value} is there already; expected a new name`
      : commit(
          `${connection.mark}: a standard detail ${id.value} of its plate`,
          makeDetailOf(connection.mark, id.value, name.value, fixture),
        );
    if (refused.value === null) onClose();
  };
  return (
    <Dialog
      title="A standard detail of this plate"
      onClose={onClose}
      foot={
        <Button kind="main" isDisabled={id.value === '' || name.value === ''} onPress={take}>
          Make the detail
        </Button>
      }
    >
      <TextField
        label="Short name"
        value={id.value}
        fault={refused.value}
        placeholder="T3"
        onChange={(value) => {
          id.value = value;
          return null;
        }}
      />
      <TextField
        label="What it is"
        value={name.value}
        placeholder="Bracket, four bolts M16"
        onChange={(value) => {
          name.value = value;
          return null;
        }}
      />
    </Dialog>
  );
}

function OwnPlate({ looked, commit, fixture }: Part & { readonly fixture: Fixture }) {
  const isNaming = useSignal(false);
  const { connection, index, inserts } = looked;
  const { mark } = connection;
  const fitting = [...index.details.values()].filter((one) => one.fixture.holes.length >= inserts.length);
  return (
    <>
      <PlateEditor
        fixture={fixture}
        edit={(label, change) => commit(`${mark}: ${label}`, changeOwnPlate(mark, change))}
        insertOf={(hole) => connection.inserts.find((one) => one.hole === hole)?.insert ?? '–'}
        addWord="Add a hole with an insert"
        onAddHole={(at) => commit(`${mark}: hole and insert added`, addHoleWithInsert(mark, at, drawUuid()))}
        onRemoveHole={(hole) =>
          say(commit(`${mark}: hole ${hole} and its insert removed`, removeHoleWithInsert(mark, hole)))
        }
      />
      <div class={styles.row}>
        <Button
          onPress={() => {
            isNaming.value = true;
          }}
        >
          Make a detail of this plate
        </Button>
        {fitting.length > 0 && (
          <ChoiceField
            label="Or take a standard detail"
            value=""
            options={[
              { value: '', text: 'none: a plate of its own' },
              ...fitting.map(({ id, name }) => ({ value: id, text: `${id} – ${name}` })),
            ]}
            onChange={(id) => {
              const detail = index.details.get(id);
              return detail === undefined ? null : commit(`${mark}: detail ${id}`, takeDetail(mark, detail));
            }}
          />
        )}
      </div>
      {isNaming.value && (
        <NewDetailDialog
          looked={looked}
          commit={commit}
          fixture={fixture}
          onClose={() => {
            isNaming.value = false;
          }}
        />
      )}
    </>
  );
}

/** A first plate, to be typed on: so far beyond the inserts, so thick [mm]; holes as wide as the thread wants. */
const FIRST = { margin: 50, thickness: 12, hole: 2 };

/** Where the plate is and what it is. */
export function PlatePart({ looked, commit }: Part) {
  const { connection, fixture, detail, inserts } = looked;
  const { mark, origin_mm, turn_deg } = connection;
  const [x, y] = origin_mm;
  const isEdge = connection.face === 'edge';
  const bolt = Number.parseFloat(inserts[0]?.item?.thread.slice(1) ?? '');
  return (
    <>
      <Fields>
        <QuantityField
          label={isEdge ? 'Middle, along the edge' : 'Middle of the plate, x'}
          quantity="length"
          value={x}
          onChange={(value) =>
            value === null ? null : commit(`${mark}: moved`, placeConnection(mark, [value, y], turn_deg))
          }
        />
        <QuantityField
          label={isEdge ? 'Middle, from the outside face' : 'Middle of the plate, y'}
          quantity="length"
          value={y}
          onChange={(value) =>
            value === null ? null : commit(`${mark}: moved`, placeConnection(mark, [x, value], turn_deg))
          }
        />
        <QuantityField
          label="Turned"
          quantity="degrees"
          value={turn_deg}
          hint="Counter-clockwise, seen from its front; inserts go with it."
          onChange={(value) =>
            value === null ? null : commit(`${mark}: turned`, placeConnection(mark, [x, y], value))
          }
        />
      </Fields>
      {detail !== null && <OfDetail looked={looked} commit={commit} />}
      {detail === null && fixture !== null && <OwnPlate looked={looked} commit={commit} fixture={fixture} />}
      {fixture === null && (
        <div class={styles.row}>
          <p>No plate is given: loads on a group and moments cannot be shared out.</p>
          <Button
            isDisabled={Number.isNaN(bolt)}
            onPress={() =>
              say(commit(`${mark}: a plate`, addPlate(mark, FIRST.margin, FIRST.thickness, bolt + FIRST.hole)))
            }
          >
            Give a plate round its inserts
          </Button>
        </div>
      )}
    </>
  );
}
