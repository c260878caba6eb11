import { useSignal } from '@preact/signals';
import type { LookedAt } from '../../../../assess/look-at-connection.ts';
import type { PositionBox } from '../../../../assess/zone/find-box.ts';
import { changeConnection } from '../../../../job/edit/plate/change-connection.ts';
import { findBoxStanding } from '../../../../job/position-box.ts';
import { showRatio } from '../../../../say/numbers.ts';
import { nameMode } from '../../../../say/words.ts';
import { tellZoneLimit } from '../../../../say/zone-words.ts';
import { Button } from '../../../parts/button.tsx';
import { QuantityField } from '../../../parts/field.tsx';
import { Notice } from '../../../parts/notice.tsx';
import { writeQuantity } from '../../../parts/units.ts';
import type { FoundBox } from '../../../worker/zone-questions.ts';
import { tell } from '../../state/messages.ts';
import type { Commit } from './use-connection.ts';
import styles from './zone-part.module.css';

/** Lengths that lie this close together [mm] are the same. */
const ROUNDING = 1e-6;

function tellSize({ within, tenths, size: { along, across } }: PositionBox): string {
  if (within === 0)
    return tenths === 0
      ? 'Not even a tenth of a mm holds for all inserts at once.'
      : `Not one whole mm holds for all inserts at once; ± ${writeQuantity('length', tenths)} does.`;
  const longer = along === across ? '' : `, or ± ${along} × ${across} mm along x and y of the drawing`;
  return `± ${writeQuantity('length', within)} holds for all inserts at once${longer}.`;
}

function Found({ box }: { readonly box: PositionBox }) {
  const { answer } = box.worst;
  const worst =
    answer.governing === null || answer.ratio === null
      ? ''
      : ` The least favourable of them: ${nameMode(answer.governing.mode)}, ${answer.governing.combination}, at ${showRatio(answer.ratio)}.`;
  return (
    <p>
      <strong>{tellSize(box)}</strong> Tried at {box.tried} places of all inserts at once: corners, and 500 drawn.
      {worst}
      {box.limit === null ? '' : ` What ends it: ${tellZoneLimit(box.limit)}.`}
    </p>
  );
}

/** Takes the box over in place of the tolerance of the rules, where that was agreed. */
function Take({
  looked: { connection, index },
  box,
  computedFrom,
  commit,
}: {
  readonly looked: LookedAt;
  readonly box: PositionBox;
  readonly computedFrom: string;
  readonly commit: Commit;
}) {
  const { mark, positionBox } = connection;
  const { positionZones, tolerances } = index.file.library.rules;
  const wanted = useSignal<number | null>(null);
  const put = (within_mm: number | null) => {
    const why = commit(
      within_mm === null
        ? `${mark}: tolerance as the rules say`
        : `${mark}: ± ${within_mm} mm of the position zone in place of the tolerance`,
      changeConnection(mark, (draft) => {
        draft.positionBox = within_mm === null ? null : { within_mm, computedFrom };
      }),
    );
    if (why !== null) tell('fault', why);
  };
  const standing = findBoxStanding(index, connection);
  const blanket = `± ${writeQuantity('length', tolerances.position_mm)}`;
  const drop = positionBox !== null && (
    <Button kind="quiet" onPress={() => put(null)}>
      Back to the tolerance of the rules
    </Button>
  );
  const isTighter = box.within < tolerances.position_mm;
  if (positionZones === null)
    return (
      <>
        {isTighter && (
          <Notice kind="caution" title={`The tolerance of the job, ${blanket}, is wider`}>
            Inserts that are each within it may together still not do. Keep them within the ± above, or have it agreed
            that the box stands.
          </Notice>
        )}
        <p>
          For information: the tolerance of the job, {blanket}, stands. The box may stand in its place where the
          specifier agreed to that, as the rules then say.
        </p>
        {drop}
      </>
    );
  const within = wanted.value ?? box.within;
  return (
    <>
      <p>
        {standing.kind === 'stands'
          ? `± ${writeQuantity('length', standing.within_mm)} stands in place of ${blanket}: agreed by ${positionZones.agreedBy}.`
          : `${blanket} of the rules stands. ${positionZones.agreedBy} agreed that the box may stand in its place.`}
        {standing.kind === 'outdated' &&
          ' A box was taken over before something was changed: it does not count any more. Take it over anew.'}
      </p>
      <div class={styles.take}>
        {box.within > 0 && (
          <>
            <QuantityField
              label="Each insert may be off by"
              hint={`At most ${writeQuantity('length', box.within)}, in whole mm.`}
              quantity="length"
              value={within}
              onChange={(value) => {
                // Typed in inches it is no whole number of mm: rounded down.
                const whole = Math.floor((value ?? 0) + ROUNDING);
                if (whole < 1 || whole > box.within) return `expected 1 to ${box.within} mm`;
                wanted.value = whole;
                return null;
              }}
            />
            <Button onPress={() => put(Math.min(within, box.within))}>Take ± {within} mm over</Button>
          </>
        )}
        {drop}
      </div>
    </>
  );
}

/** One plain ± for all inserts of a connection. */
export function BoxPart({
  looked,
  found,
  isBusy,
  commit,
}: {
  readonly looked: LookedAt;
  readonly found: FoundBox | null;
  readonly isBusy: boolean;
  readonly commit: Commit;
}) {
  if (found === null || isBusy)
    return <p aria-busy="true">Trying some hundreds of places of all inserts at once by the full check …</p>;
  const { box, computedFrom } = found;
  if (box.kind === 'none') return null;
  return (
    <>
      <h3>One ± for all inserts at once</h3>
      <Found box={box} />
      {looked.panel.handedOf === null ? (
        <Take looked={looked} box={box} computedFrom={computedFrom} commit={commit} />
      ) : (
        <Notice kind="note">A handed partner keeps the tolerance of the rules.</Notice>
      )}
    </>
  );
}
