import { useSignal } from '@preact/signals';
import type { Point } from '../../../../engine/geometry/point.ts';
import type { Fixture } from '../../../../job/documents/fixture.ts';
import { findRectangle, makeRectangle } from '../../../../job/edit/plate/rectangle.ts';
import { Button } from '../../../parts/button.tsx';
import { QuantityField } from '../../../parts/field.tsx';
import { Fields } from '../../../parts/page.tsx';
import { HolesTable } from './holes-table.tsx';
import { OutlineFields } from './outline-fields.tsx';
import styles from './plate-editor.module.css';
import type { EditPlate } from './plate-edits.ts';

/** What a new attachment is of the plate's width and height, until it is typed. */
const SHARE = 0.4;

function Attachment({ fixture, edit }: { readonly fixture: Fixture; readonly edit: EditPlate }) {
  const { attachment_mm, outline_mm } = fixture;
  const add = () => {
    const around = findRectangle(outline_mm);
    const [xs, ys] = [outline_mm.map(([x]) => x), outline_mm.map(([, y]) => y)];
    const extent = around ?? {
      middle: [(Math.min(...xs) + Math.max(...xs)) / 2, (Math.min(...ys) + Math.max(...ys)) / 2] as const,
      width: Math.max(...xs) - Math.min(...xs),
      height: Math.max(...ys) - Math.min(...ys),
    };
    const shape = makeRectangle({
      ...extent,
      width: Math.round(extent.width * SHARE),
      height: Math.round(extent.height * SHARE),
    });
    edit('Attachment added to the plate', (draft) => {
      draft.attachment_mm = shape;
    });
  };
  return (
    <div class={styles.group}>
      <h3>What is welded on</h3>
      {attachment_mm === null ? (
        <p>Not given: the plate is taken as rigid and its bending is not checked.</p>
      ) : (
        <OutlineFields
          name="attachment"
          outline={attachment_mm}
          onChange={(outline) =>
            edit('Shape of the attachment', (draft) => {
              draft.attachment_mm = outline;
            })
          }
        />
      )}
      <div class={styles.row}>
        {attachment_mm === null ? (
          <Button onPress={add}>Give its outline</Button>
        ) : (
          <Button
            kind="quiet"
            onPress={() =>
              edit('Attachment taken off', (draft) => {
                draft.attachment_mm = null;
              })
            }
          >
            Take the attachment off
          </Button>
        )}
      </div>
    </div>
  );
}

/** A plate with its holes, in its own axes, every value with its unit. */
export function PlateEditor({
  fixture,
  edit,
  insertOf,
  addWord,
  onAddHole,
  onRemoveHole,
}: {
  readonly fixture: Fixture;
  readonly edit: EditPlate;
  readonly insertOf: ((hole: string) => string) | null;
  /** What the button says that adds a hole. */
  readonly addWord: string;
  readonly onAddHole: (at: Point) => string | null;
  readonly onRemoveHole: (hole: string) => void;
}) {
  const x = useSignal<number | null>(null);
  const y = useSignal<number | null>(null);
  const refused = useSignal<string | null>(null);
  const add = () => {
    refused.value = onAddHole([x.value ?? 0, y.value ?? 0]);
  };
  return (
    <>
      <div class={styles.group}>
        <h3>Plate</h3>
        <OutlineFields
          name="plate"
          outline={fixture.outline_mm}
          onChange={(outline) =>
            edit('Shape of the plate', (draft) => {
              draft.outline_mm = outline;
            })
          }
        />
        <Fields>
          <QuantityField
            label="Thickness"
            quantity="length"
            value={fixture.thickness_mm}
            onChange={(value) =>
              value === null
                ? null
                : edit('Thickness of the plate', (draft) => {
                    draft.thickness_mm = value;
                  })
            }
          />
          <QuantityField
            label="Yield strength of its steel"
            quantity="stress"
            value={fixture.yield_MPa}
            whenEmpty="not given"
            hint="Without it the bending of the plate is not checked."
            onChange={(value) =>
              edit('Steel of the plate', (draft) => {
                draft.yield_MPa = value;
              })
            }
          />
        </Fields>
      </div>
      <Attachment fixture={fixture} edit={edit} />
      <div class={styles.group}>
        <h3>Holes</h3>
        <HolesTable fixture={fixture} edit={edit} insertOf={insertOf} onRemove={onRemoveHole} />
        <div class={styles.row}>
          <QuantityField
            label="x of a new hole"
            quantity="length"
            value={x.value}
            whenEmpty="0"
            onChange={(value) => {
              x.value = value;
              return null;
            }}
            fault={refused.value}
          />
          <QuantityField
            label="y of a new hole"
            quantity="length"
            value={y.value}
            whenEmpty="0"
            onChange={(value) => {
              y.value = value;
              return null;
            }}
          />
          <Button onPress={add}>{addWord}</Button>
        </div>
      </div>
    </>
  );
}
