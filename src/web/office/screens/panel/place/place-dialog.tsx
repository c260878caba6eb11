import { type Signal, useSignal } from '@preact/signals';
import type { Point } from '../../../../../engine/geometry/point.ts';
import type { HolePattern } from '../../../../../job/edit/commands/edit-face.ts';
import { Button } from '../../../../parts/button.tsx';
import { Dialog } from '../../../../parts/dialog.tsx';
import { ChoiceField, QuantityField } from '../../../../parts/field.tsx';
import type { PanelDesk } from '../desk/panel-desk.ts';
import { PatternPicture } from './pattern-picture.tsx';
import styles from './place.module.css';
import type { Placing } from './placing.ts';
import { putOpening, putWish, sizeOnFace, startPlacing, type What, type Wish } from './put-wish.ts';

const WHATS: readonly { readonly value: What; readonly text: string }[] = [
  { value: 'pattern', text: 'connection: plate with rows of inserts' },
  { value: 'detail', text: 'connection: a standard detail' },
  { value: 'single', text: 'connection: one insert, no plate drawn' },
  { value: 'loose', text: 'insert of no connection' },
  { value: 'opening', text: 'opening, a rectangle' },
];

const FIRST: HolePattern = { rows: 2, columns: 2, columnSpacing: 200, rowSpacing: 200, margin: 50, thickness: 15 };

/** Chooses what is to be placed; where it goes is clicked on the drawing, or typed here. */
export function PlaceDialog({
  desk,
  placing,
  onClose,
}: {
  readonly desk: PanelDesk;
  readonly placing: Signal<Placing | null>;
  readonly onClose: () => void;
}) {
  const { panel, index } = desk.live.value;
  const { catalogue, details } = index.file.library;
  const faced =
    desk.sightKind.value === 'drawn' ? panel.drawnFace : panel.faceDown === 'outside' ? 'inside' : 'outside';
  const wish = useSignal<Wish>({
    what: 'pattern',
    item: index.castInsOf(panel.mark).find(({ item }) => item !== null)?.item ?? catalogue.items[0]?.id ?? '',
    detail: details.details[0]?.id ?? '',
    face: faced,
    edge: 0,
    pattern: FIRST,
    size: [1000, 1000],
  });
  const typed = useSignal<Point>([0, 0]);
  const fault = useSignal<string | null>(null);
  const { what, item, detail, face, edge, pattern, size } = wish.value;
  const set = (change: Partial<Wish>) => {
    wish.value = { ...wish.value, ...change };
    fault.value = null;
    return null;
  };
  const setPattern = (change: Partial<HolePattern>) => set({ pattern: { ...wish.value.pattern, ...change } });
  const isOpening = what === 'opening';
  const point = () => {
    const started = startPlacing(desk, wish.value, placing);
    if (typeof started === 'string') fault.value = started;
    else onClose();
  };
  const put = () => {
    const at = face === 'edge' && !isOpening ? typed.value : desk.sight.value.fromRead(typed.value);
    const why = isOpening ? putOpening(desk, at, sizeOnFace(desk, size)) : putWish(desk, wish.value, at);
    fault.value = why;
    if (why === null) onClose();
  };
  return (
    <Dialog
      title={`Place on ${desk.mark}`}
      onClose={onClose}
      foot={
        <>
          <Button onPress={put}>Place at the typed place</Button>
          <Button kind="main" onPress={point}>
            Point at the place
          </Button>
        </>
      }
    >
      <ChoiceField label="What" value={what} options={WHATS} onChange={(value) => set({ what: value })} />
      {!isOpening && (
        <div class={styles.fields}>
          {what === 'detail' ? (
            <ChoiceField
              label="Standard detail"
              value={detail}
              options={details.details.map(({ id, name }) => ({ value: id, text: `${id} – ${name}` }))}
              onChange={(id) => set({ detail: id })}
            />
          ) : (
            <ChoiceField
              label="Insert type"
              value={item}
              options={catalogue.items.map(({ id }) => ({ value: id, text: id }))}
              onChange={(id) => set({ item: id })}
            />
          )}
          <ChoiceField
            label="Face"
            value={face}
            options={[
              { value: 'outside', text: 'outside' },
              { value: 'inside', text: 'inside' },
              { value: 'edge', text: 'edge' },
            ]}
            onChange={(value) => set({ face: value })}
          />
          {face === 'edge' && (
            <ChoiceField
              label="Edge"
              value={String(edge)}
              options={panel.outline_mm.map((_, k) => ({ value: String(k), text: `edge ${k}` }))}
              onChange={(value) => set({ edge: Number(value) })}
            />
          )}
        </div>
      )}
      {what === 'pattern' && (
        <div class={styles.split}>
          <div class={styles.fields}>
            <Count label="Columns" value={pattern.columns} onChange={(columns) => setPattern({ columns })} />
            <Count label="Rows" value={pattern.rows} onChange={(rows) => setPattern({ rows })} />
            <Length
              label="Between columns"
              value={pattern.columnSpacing}
              onChange={(columnSpacing) => setPattern({ columnSpacing })}
            />
            <Length
              label="Between rows"
              value={pattern.rowSpacing}
              onChange={(rowSpacing) => setPattern({ rowSpacing })}
            />
            <Length label="Hole to plate side" value={pattern.margin} onChange={(margin) => setPattern({ margin })} />
            <Length
              label="Plate thickness"
              value={pattern.thickness}
              onChange={(thickness) => setPattern({ thickness })}
            />
          </div>
          <PatternPicture pattern={pattern} />
        </div>
      )}
      <div class={styles.fields}>
        <Length
          label={isOpening ? 'Corner nearest the origin, x' : face === 'edge' ? 'Along the edge' : 'Middle, x'}
          value={typed.value[0]}
          onChange={(x) => {
            typed.value = [x, typed.value[1]];
          }}
        />
        <Length
          label={isOpening ? 'and y' : face === 'edge' ? 'From the outside face' : 'Middle, y'}
          value={typed.value[1]}
          onChange={(y) => {
            typed.value = [typed.value[0], y];
          }}
        />
        {isOpening && (
          <>
            <Length label="Along x" value={size[0]} onChange={(x) => set({ size: [x, size[1]] })} />
            <Length label="Along y" value={size[1]} onChange={(y) => set({ size: [size[0], y] })} />
          </>
        )}
      </div>
      {fault.value !== null && (
        <p class={styles.fault} role="alert">
          {fault.value}
        </p>
      )}
      {!isOpening && what !== 'loose' && (
        <p class={styles.hint}>No action is given to it yet: until one is, its strength is not checked.</p>
      )}
    </Dialog>
  );
}

function Length({
  label,
  value,
  onChange,
}: {
  readonly label: string;
  readonly value: number;
  readonly onChange: (value: number) => void;
}) {
  return (
    <QuantityField
      label={label}
      quantity="length"
      value={value}
      onChange={(next) => {
        if (next !== null) onChange(next);
        return null;
      }}
    />
  );
}

const MOST = 12;

function Count({
  label,
  value,
  onChange,
}: {
  readonly label: string;
  readonly value: number;
  readonly onChange: (value: number) => void;
}) {
  return (
    <QuantityField
      label={label}
      quantity="number"
      value={value}
      onChange={(next) => {
        if (next === null || !Number.isInteger(next) || next < 1 || next > MOST)
          return `expected a whole number from 1 to ${MOST}`;
        onChange(next);
        return null;
      }}
    />
  );
}
