import { useSignal } from '@preact/signals';
import type { LookedAt } from '../../../../assess/look-at-connection.ts';
import type { PositionZone } from '../../../../assess/zone/trace-position-zone.ts';
import { type FaceSide, sketchZone } from '../../../../drawing/sketch/zone-sketch.ts';
import { tellZoneLimit } from '../../../../say/zone-words.ts';
import { ChoiceField } from '../../../parts/field.tsx';
import { Notice } from '../../../parts/notice.tsx';
import { Table } from '../../../parts/table.tsx';
import { writeQuantity } from '../../../parts/units.ts';
import type { FoundBox } from '../../../worker/zone-questions.ts';
import { useOffice } from '../../state/office.ts';
import { useAsked } from '../../state/use-asked.ts';
import { BoxPart } from './box-part.tsx';
import { askBox, askZone } from './connection-client.ts';
import type { Commit } from './use-connection.ts';
import styles from './zone-part.module.css';
import { ZonePicture } from './zone-picture.tsx';

const SIDE_WORDS: Readonly<Record<FaceSide, string>> = {
  right: 'to the right',
  left: 'to the left',
  top: 'upward',
  bottom: 'downward',
};

function Traced({
  looked: { panel, connection },
  zone,
  found,
  who,
}: {
  readonly looked: LookedAt;
  readonly zone: PositionZone;
  readonly found: FoundBox | null;
  readonly who: string;
}) {
  const box = found?.box.kind === 'box' ? found.box : null;
  const sketch = sketchZone(panel, connection, zone, box);
  const { holes, step, window, checks } = zone;
  return (
    <div class={styles.zone}>
      <ZonePicture sketch={sketch} title={`Where ${who} of ${connection.mark} may sit, to scale`} />
      <div class={styles.words}>
        <Table
          caption="How far, and what ends it"
          rows={sketch.reaches}
          keyOf={({ side }) => side}
          columns={[
            { head: 'from the design', cell: ({ side }) => SIDE_WORDS[side], isName: true },
            {
              head: 'up to',
              cell: ({ reach }) => writeQuantity('length', Math.floor(10 * reach) / 10),
              kind: 'number',
            },
            {
              head: 'what ends it',
              cell: ({ limit }) =>
                limit === null
                  ? `nothing as far as was looked: ${writeQuantity('length', window)}`
                  : tellZoneLimit(limit),
              kind: 'wide',
            },
          ]}
        />
        <p>
          Strength in every combination, cover, what is in the way and the fit of the plate all hold within the line,
          known to a quarter of a mm; {checks} full checks.{' '}
          {holes.length === 0
            ? `Nothing fails inside it that is wider than ${writeQuantity('length', step)}.`
            : `${holes.length === 1 ? 'One place fails' : `${holes.length} places fail`} inside it: left open in the picture.`}
        </p>
      </div>
    </div>
  );
}

/** Where the inserts of a connection may sit, one with the others as designed or all together, and the box for all at once. */
export function ZonePart({ looked, commit }: { readonly looked: LookedAt; readonly commit: Commit }) {
  const { file } = useOffice().session;
  const { connection } = looked;
  const { mark } = connection;
  const chosen = useSignal('0');
  const at = Number(chosen.value);
  const isKnown = chosen.value === 'group' || at < connection.inserts.length;
  const subject = chosen.value === 'group' ? 'group' : isKnown ? at : 0;
  const zone = useAsked(() => askZone(mark, subject), [mark, subject, file]);
  const box = useAsked(() => askBox(mark), [mark, file]);
  const why = zone.why ?? box.why;
  if (why !== null) return <Notice kind="fault">{why}</Notice>;
  const who = subject === 'group' ? 'the group' : `insert ${connection.inserts[subject]!.insert}`;
  const isNone = zone.value?.kind === 'none';
  return (
    <div class={styles.words}>
      {connection.inserts.length > 1 && !isNone && (
        <ChoiceField
          label="What moves"
          value={isKnown ? chosen.value : '0'}
          options={[
            ...connection.inserts.map(({ insert }, i) => ({
              value: String(i),
              text: `insert ${insert}, the others as designed`,
            })),
            { value: 'group', text: 'all inserts together, their plate with them' },
          ]}
          onChange={(value) => {
            chosen.value = value;
            return null;
          }}
        />
      )}
      {zone.value === null && <p aria-busy="true">Tracing where {who} may sit …</p>}
      {zone.value?.kind === 'none' && (
        <Notice kind="note" title="No zone: as designed it does not hold">
          {tellZoneLimit(zone.value.limit)}
        </Notice>
      )}
      {zone.value?.kind === 'zone' && <Traced looked={looked} zone={zone.value} found={box.value} who={who} />}
      {!isNone && <BoxPart looked={looked} found={box.value} isBusy={box.isBusy} commit={commit} />}
    </div>
  );
}
